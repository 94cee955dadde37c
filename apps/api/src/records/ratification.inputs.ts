import { RATIFICATION_PROBLEM_CODES, type Measuring, type RatificationProblemCode } from '#rules';
import { Field, ID, InputType } from '@nestjs/graphql';
import { ArrayMaxSize, ArrayUnique, IsIn, IsOptional, IsString } from 'class-validator';
import { ObjectId } from '../platform/inputs/object-id.js';
import { OwnId } from '../platform/inputs/own-id.js';
import { Text } from '../platform/inputs/text.js';
import { MarkText } from '../platform/scalars/mark.js';
import { Uuid } from '../platform/scalars/uuid.js';
import { MeasuringEnum, RatifiedKindEnum, RecheckEnum, RecordDecisionEnum } from './record-words.js';

@InputType({ description: 'What the referee decides about a mark as a record.' })
export class RecordRatifyInput {
  @OwnId()
  id?: string | null;

  @Field(() => ID)
  @ObjectId('Competition')
  competitionId: string;

  @Field(() => Uuid)
  @IsString()
  attemptId: string;

  @Field(() => RatifiedKindEnum)
  kind: 'club-record' | 'meet-record';

  @Field(() => RecordDecisionEnum)
  decision: 'ratified' | 'refused' | 'withdrawn';

  @Field(() => MarkText, { description: 'The mark that is decided about; another one by now is refused.' })
  mark: string;

  @Field(() => RecheckEnum, { nullable: true, description: 'Of a throw; absent: nobody looked.' })
  recheck?: 'passed' | 'failed' | 'incomplete' | null;

  @Field(() => MeasuringEnum, { nullable: true })
  measuring?: Measuring | null;

  @Field(() => [String], {
    defaultValue: [],
    description: `What speaks against it and is known: ${RATIFICATION_PROBLEM_CODES.join(', ')}. Kept with the decision.`,
  })
  @IsOptional()
  @ArrayMaxSize(RATIFICATION_PROBLEM_CODES.length)
  @ArrayUnique()
  @IsIn(RATIFICATION_PROBLEM_CODES, { each: true })
  despite: RatificationProblemCode[];

  @Field()
  @Text(1, 500)
  reason: string;
}
