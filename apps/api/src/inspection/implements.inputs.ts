import type { ThrowEventCode } from '#rules';
import { THROW_EVENT_CODES } from '#rules';
import { Field, ID, InputType, Int } from '@nestjs/graphql';
import { IsIn, IsInt, IsOptional, Max, Min } from 'class-validator';
import { ObjectId } from '../platform/inputs/object-id.js';
import { OwnId } from '../platform/inputs/own-id.js';
import { Text } from '../platform/inputs/text.js';
import { EventEnum } from '../platform/objects/words.js';

@InputType()
export class ImplementRegisterInput {
  @OwnId()
  id?: string | null;

  @Field(() => ID, { description: 'The meet at which it is registered.' })
  @ObjectId('Meet')
  meetId: string;

  @Field(() => EventEnum, { description: 'A throw.' })
  @IsIn(THROW_EVENT_CODES)
  event: ThrowEventCode;

  @Field(() => Int, { description: 'As what it is registered, such as 1000 for a discus of 1 kg.' })
  @IsInt()
  @Min(1)
  @Max(99_999)
  grams: number;

  @Field({ description: 'As it is written on it, or on the sticker put on it. Better no names of people.' })
  @Text(1, 64)
  label: string;

  @Field(() => ID, { nullable: true, description: 'A club’s own.' })
  @IsOptional()
  @ObjectId('Club')
  clubId?: string | null;

  @Field(() => ID, {
    nullable: true,
    description:
      'The competitor’s own: of the athlete behind a line of a start list of this meet. With neither club nor competitor it is of the pool of the meet.',
  })
  @IsOptional()
  @ObjectId('Competitor')
  competitorId?: string | null;
}
