import type { CompetitionRow, CompetitionStatus, Sex, Unit } from '#persistence';
import {
  formatMark,
  resolvePlan,
  ruleSet,
  type EventCode,
  type Plan as ResolvedPlan,
  type RuleSetCode,
  type Stage,
} from '#rules';
import { Field, ID, Int, ObjectType } from '@nestjs/graphql';
import { isWithheld } from '../competition/visible.js';
import { globalId } from '../inputs/global-id.js';
import { Instant } from '../scalars/instant.js';
import { MarkText } from '../scalars/mark.js';
import { Plan } from './plan.type.js';
import { VerticalTerms, verticalTermsObject } from './vertical-terms.type.js';
import { CompetitionStatusEnum, EventEnum, RuleSetEnum, SexEnum, StageEnum, UnitEnum } from './words.js';

@ObjectType({ description: 'Whoever reaches the standard goes on, and the best others until so many do.' })
export class Qualifying {
  @Field(() => MarkText)
  standard: string;

  @Field(() => Int)
  fill: number;
}

@ObjectType({ description: 'What is ranked: one event of one category in one stage.' })
export class Competition {
  /** Not a field: for resolvers that add to a competition. */
  row: CompetitionRow;

  @Field(() => ID)
  id: string;

  @Field()
  title: string;

  @Field(() => EventEnum)
  event: EventCode;

  @Field(() => RuleSetEnum)
  rules: RuleSetCode;

  @Field()
  edition: string;

  @Field()
  isIndoor: boolean;

  @Field(() => StageEnum)
  stage: Stage;

  @Field(() => Qualifying, { nullable: true })
  qualifying: Qualifying | null;

  @Field(() => Plan, {
    nullable: true,
    description: 'Nothing in high jump and pole vault, which have no rounds.',
  })
  plan: ResolvedPlan | null;

  @Field(() => VerticalTerms, {
    nullable: true,
    description: 'Of a high jump or pole vault, and only there.',
  })
  vertical: VerticalTerms | null;

  @Field(() => UnitEnum)
  unit: Unit;

  @Field(() => SexEnum, { nullable: true })
  categorySex: Sex | null;

  @Field(() => String, { nullable: true, description: 'Such as U18, or 45+.' })
  categoryAge: string | null;

  @Field(() => String, {
    nullable: true,
    description: 'By which age categories it is meant; nothing: those of the rule set.',
  })
  categoryScheme: string | null;

  @Field(() => Int, { nullable: true })
  implementGrams: number | null;

  @Field(() => CompetitionStatusEnum)
  status: CompetitionStatus;

  @Field(() => Int, { description: 'Rises with everything that a reader could see; never falls.' })
  version: number;

  @Field(() => Instant, { nullable: true })
  startsAt: Date | null;

  @Field({ description: 'Nothing of it is shown now to those who do not work at it.' })
  isWithheld: boolean;

  @Field(() => Instant, {
    nullable: true,
    description: 'When that ends; nothing while it is withheld: when somebody lets it go.',
  })
  withheldUntil: Date | null;
}

export function competitionObject(row: CompetitionRow): Competition {
  return {
    row,
    id: globalId('Competition', row.id),
    title: row.title,
    event: row.event,
    rules: row.rules,
    edition: row.edition,
    isIndoor: row.indoor,
    stage: row.stage,
    qualifying: row.qualifying && {
      standard: formatMark(row.qualifying.standard, row.unit),
      fill: row.qualifying.fill,
    },
    plan: row.vertical ? null : planOf(row),
    vertical: row.vertical && verticalTermsObject(row.vertical, row.unit),
    unit: row.unit,
    categorySex: row.categorySex,
    categoryAge: row.categoryAge,
    categoryScheme: row.categoryScheme,
    implementGrams: row.implementGrams,
    status: row.status,
    version: row.version,
    startsAt: row.startsAt === null ? null : new Date(row.startsAt),
    isWithheld: isWithheld(row),
    withheldUntil: row.withheldUntil === null ? null : new Date(row.withheldUntil),
  };
}

/** The plan in force. What is stored was checked when the competition was made. */
function planOf(row: Pick<CompetitionRow, 'rules' | 'edition' | 'stage' | 'plan'>): ResolvedPlan {
  const resolved = resolvePlan(ruleSet(row.rules, row.edition), row.stage, row.plan);
  if (!resolved.ok) throw new Error(`A stored plan makes no plan: ${resolved.problems[0]?.message ?? ''}`);
  return resolved.plan;
}
