import { Field, ID, InputType, Int } from '@nestjs/graphql';
import { IsInt, IsOptional, Max, Min } from 'class-validator';
import { ObjectId } from '../platform/inputs/object-id.js';
import { Text } from '../platform/inputs/text.js';
import { Uuid } from '../platform/scalars/uuid.js';
import { enumOf } from '../platform/inputs/enums.js';
import { CalledFirst, Despite, ExpectedVersion, Reason } from '../platform/inputs/entry-fields.js';
import { EntryInput, RulingDecisionEnum, StartStatusEnum } from './entry.inputs.js';

/** Outside in words, inside the letters that follow the q of a result. */
export const AdmittingBodyEnum = enumOf<'referee' | 'jury' | 'draw'>(
  'AdmittingBody',
  ['referee', 'jury', 'draw'],
  'Who lets a competitor through a cut that the marks did not: shown as qR, qJ, qD.',
);

@InputType({ description: 'The decision on a held entry or a protested trial.' })
export class EntryRuleInput extends EntryInput {
  @Field(() => Uuid, { description: 'The id of the held entry or of the protested trial.' })
  targetEntryId: string;

  @Field(() => RulingDecisionEnum)
  decision: 'count' | 'dismiss';

  @Reason()
  reason: string;
}

@InputType({ description: 'A competitor does not start, or does after all.' })
export class CompetitorStartSetInput extends EntryInput {
  @Field(() => ID)
  @ObjectId('Competitor')
  competitorId: string;

  @Field(() => StartStatusEnum)
  status: 'started' | 'DNS';
}

@InputType()
export class CompetitorDisqualifyInput extends EntryInput {
  @Field(() => ID)
  @ObjectId('Competitor')
  competitorId: string;

  @Field({ description: 'The rule that was broken, as it stands beside DQ.' })
  @Text(1, 50)
  rule: string;

  @Reason()
  reason: string;
}

@InputType()
export class CompetitorReinstateInput extends EntryInput {
  @Field(() => ID)
  @ObjectId('Competitor')
  competitorId: string;

  @Reason()
  reason: string;
}

@InputType({ description: 'Let through a cut, or to the final, although the marks did not.' })
export class CompetitorAdmitInput extends EntryInput {
  @Field(() => ID)
  @ObjectId('Competitor')
  competitorId: string;

  @Field(() => Int, {
    nullable: true,
    description: 'The round of the cut; none from a qualification to the final.',
  })
  @IsOptional()
  @IsInt()
  @Min(1)
  @Max(12)
  afterRound?: number | null;

  @Field(() => AdmittingBodyEnum)
  by: 'referee' | 'jury' | 'draw';

  @Reason()
  reason: string;
}

@InputType({
  description: 'Who is called first in one round; those who are not named follow in their order.',
})
export class RoundOrderSetInput extends EntryInput {
  @Field(() => Int)
  @IsInt()
  @Min(1)
  @Max(12)
  round: number;

  @CalledFirst()
  competitorIds: string[];

  @Reason()
  reason: string;
}

@InputType()
export class CompetitionSignOffInput extends EntryInput {
  @Field(() => String, {
    nullable: true,
    description: 'Why trials are outstanding (darkness, weather), when some are.',
  })
  @IsOptional()
  @Text(1, 500)
  incomplete?: string | null;

  @Despite()
  despite?: string | null;

  @ExpectedVersion('The version whose table was signed.')
  expectedVersion: number;
}

@InputType()
export class CompetitionReopenInput extends EntryInput {
  @Reason()
  reason: string;
}
