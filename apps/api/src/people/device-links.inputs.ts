import { Field, ID, InputType, Int } from '@nestjs/graphql';
import { IsBoolean, IsInt, IsOptional, Max, Min } from 'class-validator';
import { ObjectId } from '../platform/inputs/object-id.js';
import { OwnId } from '../platform/inputs/own-id.js';
import { Text } from '../platform/inputs/text.js';
import { Instant } from '../platform/scalars/instant.js';
import { Uuid } from '../platform/scalars/uuid.js';
import { Why } from './people.inputs.js';

@InputType()
export class DeviceLinkCreateInput {
  @OwnId()
  id?: string | null;

  @Field(() => ID, { description: 'The competition or the calling group at which the device records.' })
  @ObjectId(['Competition', 'CallingGroup'])
  on: string;

  @Field({
    description:
      'What its devices are called in the journal, such as "Circle 2 tablet"; no name of a person.',
  })
  @Text(1, 64)
  label: string;

  @Field(() => Instant, { nullable: true, description: 'Not before; absent: at once.' })
  from?: Date | null;

  @Field(() => Instant, {
    description: 'Not after. Neither the link nor a device that came in by it works then.',
  })
  until: Date;

  @Field(() => Int, { defaultValue: 1, description: 'How many devices may come in by it, 1 to 50.' })
  @IsInt()
  @Min(1)
  @Max(50)
  devices: number;

  @Field({
    defaultValue: false,
    description: 'For the tablet at the wind gauge: it gives winds and nothing else.',
  })
  @IsBoolean()
  isWindsOnly: boolean;
}

@InputType()
export class DeviceLinkRevokeInput {
  @Field(() => Uuid)
  linkId: string;

  @Why()
  reason: string;
}

@InputType()
export class DeviceLinkExchangeInput {
  @Field({ description: 'What follows `#link=` in the address.' })
  @Text(1, 200)
  link: string;

  @Field(() => Uuid, {
    description: 'Made by the device and kept: the same device gets its token again, and is counted once.',
  })
  deviceId: string;

  @IsOptional()
  @Field(() => String, {
    nullable: true,
    description: 'Added to the label of the link, to tell devices apart.',
  })
  @Text(1, 30)
  name?: string | null;
}
