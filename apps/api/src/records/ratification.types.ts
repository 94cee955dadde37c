import type { RecordDecisionRow } from '#persistence';
import { formatMark, type Measuring, type RatificationProblemCode } from '#rules';
import { Field, Int, ObjectType } from '@nestjs/graphql';
import { UserError } from '../platform/errors/user-error.types.js';
import { Competition } from '../platform/objects/competition.type.js';
import { Instant } from '../platform/scalars/instant.js';
import { MarkText } from '../platform/scalars/mark.js';
import { Uuid } from '../platform/scalars/uuid.js';
import { dashed, MeasuringEnum, RatifiedKindEnum, RecordDecisionEnum } from './record-words.js';

@ObjectType({
  description: 'What a referee decided about a mark as a record. Nothing of it is ever changed.',
})
export class RecordDecision {
  @Field(() => Uuid)
  id: string;

  @Field(() => Uuid)
  attempt: string;

  @Field(() => RatifiedKindEnum)
  kind: 'club-record' | 'meet-record';

  @Field(() => RecordDecisionEnum)
  decision: RecordDecisionRow['decision'];

  @Field({ description: 'The last one, and the mark is still the one that was decided about.' })
  holds: boolean;

  @Field(() => MarkText)
  mark: string;

  @Field(() => String, { nullable: true })
  wind: string | null;

  @Field(() => Int, { nullable: true })
  implementGrams: number | null;

  @Field(() => String, { nullable: true, description: 'How the implement was found after the attempt.' })
  recheck: string | null;

  @Field(() => MeasuringEnum, { nullable: true })
  measuring: Measuring | null;

  @Field(() => [String], { description: 'What spoke against it and was known.' })
  despite: readonly RatificationProblemCode[];

  @Field()
  reason: string;

  @Field({ description: 'With which right: referee or director.' })
  authority: string;

  @Field({ description: 'Whose token.' })
  decidedBy: string;

  @Field(() => Instant)
  decidedAt: Date;
}

@ObjectType()
export class RecordRatifyPayload {
  @Field(() => RecordDecision, { nullable: true })
  decision: RecordDecision | null;

  @Field({ description: 'The request had been carried out before.' })
  isReplay: boolean;

  @Field(() => Competition, { nullable: true })
  competition: Competition | null;

  @Field(() => [UserError], { description: 'All that speaks against it, at once.' })
  userErrors: UserError[];
}

export function decisionObject(
  row: RecordDecisionRow,
  unit: Parameters<typeof formatMark>[1],
  holds: boolean,
): RecordDecision {
  return {
    id: row.id,
    attempt: row.attemptId,
    kind: dashed(row.kind),
    decision: row.decision,
    holds,
    mark: formatMark(row.mark, unit),
    wind: row.wind,
    implementGrams: row.implementGrams,
    recheck: row.recheck,
    measuring: row.measuring,
    despite: row.despite,
    reason: row.reason,
    authority: row.authority,
    decidedBy: row.decidedBy,
    decidedAt: new Date(row.decidedAt),
  };
}
