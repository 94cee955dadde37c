import { Field, InputType } from '@nestjs/graphql';
import { IsOptional } from 'class-validator';
import { Instant } from '../scalars/instant.js';
import { Uuid } from '../scalars/uuid.js';
import { Text } from './text.js';

/** What every entry of any journal brings along, beside the journal that it is entered in. */
@InputType({ isAbstract: true })
export abstract class JournalInput {
  @Field(() => Uuid, {
    description:
      'Made by the device and kept before the first send. The same id again gets the same answer, marked as replayed; so sending again is always safe.',
  })
  entryId: string;

  @Field(() => String, { nullable: true, description: 'What the device is called, for the journal.' })
  @IsOptional()
  @Text(1, 100)
  device?: string | null;

  @Field(() => Instant, { nullable: true, description: 'When it was entered, by the clock of the device.' })
  @IsOptional()
  deviceAt?: Date | null;
}
