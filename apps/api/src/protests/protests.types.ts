import type { ProtestState, ProtestStepRow } from '#persistence';
import {
  DISQUALIFICATION_GROUNDS,
  nextSteps,
  RESULT_STATES,
  standingOfProtest,
  type DisqualificationGround,
  type ProtestGround,
  type ProtestOutcome,
  type ProtestStanding,
  type ProtestStepKind,
  type ResultState as ResultStateFound,
  type ResultStateCode,
  type Timeliness,
} from '#rules';
import { Field, ID, Int, ObjectType } from '@nestjs/graphql';
import { protestOf } from '../platform/competition/proceedings.js';
import { UserError } from '../platform/errors/user-error.types.js';
import { enumOf } from '../platform/inputs/enums.js';
import { globalId } from '../platform/inputs/global-id.js';
import { Competition } from '../platform/objects/competition.type.js';
import { Instant } from '../platform/scalars/instant.js';
import { Uuid } from '../platform/scalars/uuid.js';
import { ProtestFormEnum, ProtestGroundEnum, ProtestOutcomeEnum } from './protests.inputs.js';

const ResultStateEnum = enumOf<ResultStateCode>(
  'ResultStateCode',
  RESULT_STATES,
  'RUNNING: trials are to come. UNOFFICIAL: complete, not announced. POSTED: announced, may be protested. UNDER_PROTEST: somebody has. OFFICIAL: signed. AMENDED: opened again and signed anew.',
);
const ProtestStandingEnum = enumOf<ProtestStanding>(
  'ProtestStanding',
  ['lodged', 'upheld', 'dismissed', 'appealed', 'withdrawn'],
  'LODGED and APPEALED wait for a decision.',
);
const ProtestStepEnum = enumOf<ProtestStepKind>(
  'ProtestStepKind',
  ['decision', 'appeal', 'appeal-decision', 'withdrawal'],
  'What is done about a protest.',
);
const TimelinessEnum = enumOf<Timeliness>(
  'Timeliness',
  ['in time', 'late', 'not taken'],
  'NOT_TAKEN: the rule set takes no protest on this ground.',
);
const DepositEnum = enumOf<NonNullable<ProtestStepRow['deposit']>>(
  'DepositState',
  ['paid', 'returned', 'forfeited'],
  'What became of a deposit.',
);
const DisqualificationGroundEnum = enumOf<DisqualificationGround>(
  'DisqualificationGround',
  DISQUALIFICATION_GROUNDS,
  'Why somebody may be disqualified, as far as rule books name it.',
);

@ObjectType({ description: 'Where a result is on its way from the field to the archive.' })
export class ResultState {
  @Field(() => ResultStateEnum)
  state: ResultStateCode;

  @Field(() => Instant, { nullable: true })
  since: Date | null;

  @Field(() => Instant, {
    nullable: true,
    description: 'When what stands was announced; nothing when it was not, or something has changed since.',
  })
  postedAt: Date | null;

  @Field(() => Instant, {
    nullable: true,
    description:
      'Until when it may be protested that rules were misapplied; it counts from the announcement, or else from the signature.',
  })
  protestsUntil: Date | null;

  @Field({ description: 'A protest, or a trial under protest, waits for a decision.' })
  isUnderProtest: boolean;

  @Field({ description: 'It was official and is open again.' })
  isReopened: boolean;

  @Field(() => Int, { description: 'How many times it was signed; after the first it was amended.' })
  revision: number;
}

@ObjectType({ description: 'What was done about a protest, by whom and why.' })
export class ProtestStep {
  @Field(() => Uuid)
  id: string;

  @Field(() => ProtestStepEnum)
  kind: ProtestStepKind;

  @Field(() => ProtestOutcomeEnum, { nullable: true })
  outcome: ProtestOutcome | null;

  @Field()
  by: string;

  @Field(() => Instant)
  at: Date;

  @Field()
  reason: string;

  @Field(() => String, { nullable: true })
  rule: string | null;

  @Field(() => DepositEnum, { nullable: true })
  deposit: ProtestStepRow['deposit'];

  @Field(() => TimelinessEnum, { description: 'Of an appeal.' })
  timeliness: Timeliness;

  @Field({ description: 'Whose token.' })
  actor: string;

  @Field(() => String, { nullable: true })
  device: string | null;

  @Field(() => Instant)
  recordedAt: Date;
}

@ObjectType({
  description: 'A protest with everything that was done about it. For those who work at the competition.',
})
export class Protest {
  @Field(() => Uuid)
  id: string;

  @Field(() => ProtestStandingEnum)
  standing: ProtestStanding;

  @Field(() => ProtestFormEnum)
  form: 'oral' | 'written';

  @Field(() => ProtestGroundEnum)
  ground: ProtestGround;

  @Field()
  lodgedBy: string;

  @Field(() => Instant)
  lodgedAt: Date;

  @Field(() => ID, { nullable: true, description: 'For whom.' })
  competitor: string | null;

  @Field(() => Uuid, { nullable: true, description: 'The entry of the trial it is about.' })
  trial: string | null;

  @Field()
  reason: string;

  @Field(() => String, { nullable: true })
  deposit: string | null;

  @Field()
  isDepositPaid: boolean;

  @Field(() => TimelinessEnum, { description: 'As it was found when it came in.' })
  timeliness: Timeliness;

  @Field(() => Instant, { nullable: true, description: 'Until when it would have been in time.' })
  windowUntil: Date | null;

  @Field(() => [ProtestStep])
  steps: ProtestStep[];

  @Field(() => [ProtestStepEnum], { description: 'What may be done about it now.' })
  next: readonly ProtestStepKind[];

  @Field({ description: 'Whose token.' })
  actor: string;

  @Field(() => String, { nullable: true })
  device: string | null;

  @Field(() => Instant)
  recordedAt: Date;
}

@ObjectType({ description: 'Until when something may be protested, by the rule set of the competition.' })
export class ProtestTime {
  @Field(() => ProtestGroundEnum)
  ground: ProtestGround;

  @Field(() => Int, { nullable: true, description: 'After the announcement; nothing: see `isTaken`.' })
  minutes: number | null;

  @Field({ description: 'False: no protest is taken on this ground. True without minutes: at any time.' })
  isTaken: boolean;

  @Field()
  rule: string;

  @Field({ description: 'The text of the rule was read, at least in part; otherwise from memory.' })
  isConfirmed: boolean;
}

@ObjectType({ description: 'What somebody may be disqualified for, with the rule to be named.' })
export class DisqualificationRule {
  @Field(() => DisqualificationGroundEnum)
  ground: DisqualificationGround;

  @Field()
  rule: string;

  @Field({ description: 'The text of the rule was read, at least in part; otherwise from memory.' })
  isConfirmed: boolean;
}

@ObjectType({ isAbstract: true })
export abstract class ProceedingPayload {
  @Field({ description: 'The same had been sent before; nothing was done again.' })
  isReplay: boolean;

  @Field(() => Competition, { nullable: true })
  competition: Competition | null;

  @Field(() => [UserError])
  userErrors: UserError[];
}

@ObjectType()
export class ResultPostPayload extends ProceedingPayload {}

@ObjectType({ isAbstract: true })
export abstract class ProtestPayload extends ProceedingPayload {
  @Field(() => Protest, { nullable: true })
  protest: Protest | null;
}

@ObjectType()
export class ProtestLodgePayload extends ProtestPayload {}
@ObjectType()
export class ProtestDecidePayload extends ProtestPayload {}
@ObjectType()
export class ProtestAppealPayload extends ProtestPayload {}
@ObjectType()
export class ProtestWithdrawPayload extends ProtestPayload {}

export function resultStateObject(found: ResultStateFound): ResultState {
  const { state, since, postedAt, protestsUntil, isUnderProtest, isReopened, revision } = found;
  const instant = (ms: number | null) => (ms === null ? null : new Date(ms));
  return {
    ...{ state, isUnderProtest, isReopened, revision },
    since: instant(since),
    postedAt: instant(postedAt),
    protestsUntil: instant(protestsUntil),
  };
}

export function protestObject(row: ProtestState): Protest {
  const { id, form, ground, lodgedBy, reason, deposit, timeliness, actor, device } = row;
  const protest = protestOf(row);
  return {
    ...{ id, form, ground, lodgedBy, reason, deposit, timeliness, actor, device },
    standing: standingOfProtest(protest),
    next: nextSteps(protest),
    lodgedAt: new Date(row.lodgedAt),
    competitor: row.competitorId === null ? null : globalId('Competitor', row.competitorId),
    trial: row.attemptId,
    isDepositPaid: row.depositPaid,
    windowUntil: row.windowUntil === null ? null : new Date(row.windowUntil),
    steps: row.steps.map(stepObject),
    recordedAt: new Date(row.recordedAt),
  };
}

function stepObject(row: ProtestStepRow): ProtestStep {
  const { id, kind, outcome, doneBy: by, reason, rule, deposit, timeliness, actor, device } = row;
  return {
    ...{ id, kind, outcome, by, reason, rule, deposit, timeliness, actor, device },
    at: new Date(row.doneAt),
    recordedAt: new Date(row.recordedAt),
  };
}
