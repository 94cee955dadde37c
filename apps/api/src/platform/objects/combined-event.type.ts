import type { CombinedEventRow, CompetitionStatus, Sex } from '#persistence';
import type { CombinedProgrammeCode, CombinedTies, RuleSetCode, ScoringSex, Timing } from '#rules';
import { Field, ID, Int, ObjectType } from '@nestjs/graphql';
import { globalId } from '../inputs/global-id.js';
import { CombinedProgrammeEnum, CombinedTiesEnum, TimingEnum } from './combined-words.js';
import { CompetitionStatusEnum, RuleSetEnum, SexEnum } from './words.js';

@ObjectType({ description: 'A decathlon, heptathlon or other combined event of a meet.' })
export class CombinedEvent {
  /** Not a field: for resolvers that add to a combined event. */
  row: CombinedEventRow;

  @Field(() => ID)
  id: string;

  @Field()
  title: string;

  @Field(() => CombinedProgrammeEnum)
  programme: CombinedProgrammeCode;

  @Field(() => SexEnum, { description: 'Whose scoring tables are used.' })
  scoringSex: ScoringSex;

  @Field(() => SexEnum, { nullable: true })
  categorySex: Sex | null;

  @Field(() => String, { nullable: true, description: 'Such as U18, or 45+.' })
  categoryAge: string | null;

  @Field(() => RuleSetEnum)
  rules: RuleSetCode;

  @Field()
  edition: string;

  @Field(() => CombinedTiesEnum)
  ties: CombinedTies;

  @Field(() => TimingEnum, { description: 'As a rule; each time says how it was taken.' })
  timing: Timing;

  @Field(() => CompetitionStatusEnum)
  status: CompetitionStatus;

  @Field(() => Int, {
    description:
      'Rises with every change of the combined event itself. The competitions it is counted from have versions of their own.',
  })
  version: number;
}

export function combinedEventObject(row: CombinedEventRow): CombinedEvent {
  return {
    row,
    id: globalId('CombinedEvent', row.id),
    title: row.title,
    programme: row.programme,
    scoringSex: row.scoredBy,
    categorySex: row.categorySex,
    categoryAge: row.categoryAge,
    rules: row.rules,
    edition: row.edition,
    ties: row.ties,
    timing: row.timing,
    status: row.status,
    version: row.version,
  };
}
