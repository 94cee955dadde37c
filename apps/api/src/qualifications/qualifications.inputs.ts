import { Field, ID, InputType } from '@nestjs/graphql';
import { ArrayMaxSize, ArrayMinSize, IsBoolean, IsOptional, IsString } from 'class-validator';
import { DrawSeed } from '../platform/inputs/draw-seed.js';
import { ObjectId } from '../platform/inputs/object-id.js';
import { OwnId } from '../platform/inputs/own-id.js';
import { Text } from '../platform/inputs/text.js';
import { Uuid } from '../platform/scalars/uuid.js';

const MOST_GROUPS = 20;

@InputType()
export class QualificationCreateInput {
  @OwnId()
  id?: string | null;

  @Field(() => ID)
  @ObjectId('Meet')
  meetId: string;

  @Field()
  @Text(1, 200)
  title: string;

  @Field(() => [ID], {
    description:
      'The groups in their order: qualifications of one event, with one standard and one number to fill up to.',
  })
  @ArrayMinSize(1)
  @ArrayMaxSize(MOST_GROUPS)
  @ObjectId('Competition', { each: true })
  competitionIds: string[];

  @Field(() => ID, { nullable: true, description: 'The final, if it is set up already.' })
  @IsOptional()
  @ObjectId('Competition')
  finalId?: string | null;
}

@InputType()
export class QualificationDissolveInput {
  @Field(() => Uuid)
  @IsString()
  qualificationId: string;
}

@InputType()
export class QualificationFinalDrawInput {
  @OwnId()
  id?: string | null;

  @Field(() => Uuid)
  @IsString()
  qualificationId: string;

  @DrawSeed()
  seed: string;

  @Field(() => ID, {
    nullable: true,
    description: 'The final, where the qualification does not name it yet.',
  })
  @IsOptional()
  @ObjectId('Competition')
  finalId?: string | null;

  @Field(() => String, {
    nullable: true,
    description:
      'Sets the final up under this title, with the rule set’s own plan; instead of `finalId`. Not for high jump and pole vault, whose heights have to be announced.',
  })
  @IsOptional()
  @Text(1, 200)
  finalTitle?: string | null;

  @Field(() => String, {
    nullable: true,
    description: 'Why it is drawn before all groups are signed off, or drawn again; needed then.',
  })
  @IsOptional()
  @Text(1, 500)
  reason?: string | null;

  @Field({ defaultValue: false, description: 'Only says what would be drawn: nothing is stored.' })
  @IsBoolean()
  isPreview: boolean;
}
