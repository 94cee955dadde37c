import type { Sex } from '#persistence';
import type {
  CombinedEventCode,
  CombinedProgrammeCode,
  CombinedTies,
  RuleSetCode,
  ScoringSex,
  Timing,
} from '#rules';
import { Field, ID, InputType } from '@nestjs/graphql';
import { IsBoolean, IsOptional } from 'class-validator';
import { ObjectId } from '../platform/inputs/object-id.js';
import { OwnId } from '../platform/inputs/own-id.js';
import { Text } from '../platform/inputs/text.js';
import {
  CombinedEventEnum,
  CombinedProgrammeEnum,
  CombinedTiesEnum,
  TimingEnum,
} from '../platform/objects/combined-words.js';
import { RuleSetEnum, SexEnum } from '../platform/objects/words.js';

@InputType()
export class CombinedEventCreateInput {
  @OwnId()
  id?: string | null;

  @Field(() => ID)
  @ObjectId('Meet')
  meetId: string;

  @Field({ description: 'Such as "Heptathlon women".' })
  @Text(1, 200)
  title: string;

  @Field(() => CombinedProgrammeEnum)
  programme: CombinedProgrammeCode;

  @Field(() => SexEnum, {
    nullable: true,
    description: 'Whose scoring tables are used; needed for the throws pentathlon, which both have.',
  })
  scoringSex?: Sex | null;

  @Field(() => SexEnum, { nullable: true })
  categorySex?: Sex | null;

  @Field(() => String, { nullable: true })
  @IsOptional()
  @Text(1, 40)
  categoryAge?: string | null;

  @Field(() => RuleSetEnum, { nullable: true, description: 'Absent: the meet’s.' })
  rules?: RuleSetCode | null;

  @Field(() => String, { nullable: true, description: 'Absent: the meet’s, or the newest of other rules.' })
  @IsOptional()
  @Text(1, 40)
  edition?: string | null;

  @Field(() => CombinedTiesEnum, {
    nullable: true,
    description: 'If the regulations of the meet say so; absent: as the rule set has it.',
  })
  ties?: CombinedTies | null;

  @Field(() => TimingEnum, { defaultValue: 'electronic' })
  timing: Timing;
}

@InputType()
export class CombinedEntrantEnterInput {
  @OwnId()
  id?: string | null;

  @Field(() => ID)
  @ObjectId('CombinedEvent')
  combinedEventId: string;

  @Field(() => ID, { nullable: true, description: 'An athlete on record; else send `listedName`.' })
  @IsOptional()
  @ObjectId('Athlete')
  athleteId?: string | null;

  @Field(() => String, {
    nullable: true,
    description: 'A name as it was written down; else send `athleteId`.',
  })
  @IsOptional()
  @Text(1, 200)
  listedName?: string | null;

  @Field(() => ID, { nullable: true, description: 'Absent: the athlete’s club.' })
  @IsOptional()
  @ObjectId('Club')
  clubId?: string | null;

  @Field(() => String, {
    nullable: true,
    description: 'A club as it was written down; not together with `clubId`.',
  })
  @IsOptional()
  @Text(1, 200)
  listedClub?: string | null;

  @Field({ description: 'Unique in the combined event; the same in the competitions it is counted from.' })
  @Text(1, 64)
  bib: string;

  @Field({ defaultValue: false, description: 'Competes out of the ranking.' })
  @IsBoolean()
  isGuest: boolean;
}

@InputType()
export class CombinedEntrantWithdrawInput {
  @Field(() => ID)
  @ObjectId('CombinedEntrant')
  entrantId: string;
}

@InputType({ description: 'From which competition of the meet a field event is counted.' })
export class CombinedComponentLinkInput {
  @Field(() => ID)
  @ObjectId('CombinedEvent')
  combinedEventId: string;

  @Field(() => CombinedEventEnum)
  event: CombinedEventCode;

  @Field(() => ID, { nullable: true, description: 'Null: from none any more; marks are entered instead.' })
  @IsOptional()
  @ObjectId('Competition')
  competitionId?: string | null;
}

/** Whose tables may be asked for; the third sex of the API has none. */
export function scoringSexIn(sex: Sex | null | undefined): ScoringSex | null {
  return sex === 'W' || sex === 'M' ? sex : null;
}
