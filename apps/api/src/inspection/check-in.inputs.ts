import { Field, ID, InputType } from '@nestjs/graphql';
import { IsBoolean, IsOptional } from 'class-validator';
import { ObjectId } from '../platform/inputs/object-id.js';
import { OwnId } from '../platform/inputs/own-id.js';
import { Text } from '../platform/inputs/text.js';
import { Instant } from '../platform/scalars/instant.js';

@InputType({ description: 'A competitor has reported, or is not there after all.' })
export class CompetitorCheckInInput {
  @OwnId()
  id?: string | null;

  @Field(() => ID)
  @ObjectId('Competitor')
  competitorId: string;

  @Field({ description: 'False: looked for and not there. That alone is no DNS: see competitorStartSet.' })
  @IsBoolean()
  isPresent: boolean;

  @Field(() => String, { nullable: true, description: 'Such as why somebody comes late.' })
  @IsOptional()
  @Text(1, 500)
  note?: string | null;

  @Field(() => String, { nullable: true, description: 'What the device is called, for the record.' })
  @IsOptional()
  @Text(1, 100)
  device?: string | null;

  @Field(() => Instant, { nullable: true, description: 'When it was entered, by the clock of the device.' })
  @IsOptional()
  deviceAt?: Date | null;
}
