import { Field, Int, ObjectType } from '@nestjs/graphql';
import { connectionType } from '../platform/connections/connection.js';
import { Instant } from '../platform/scalars/instant.js';
import { Json } from '../platform/scalars/json.js';
import { Uuid } from '../platform/scalars/uuid.js';

@ObjectType({
  description: 'One line of a combined event’s journal. Nothing in it is ever changed or removed.',
})
export class CombinedJournalEntry {
  @Field(() => Uuid)
  id: string;

  @Field(() => Int, { description: 'From 1, without gaps.' })
  sequence: number;

  @Field({ description: 'result, correction, reversal, ruling, start, sign-off or reopening.' })
  kind: string;

  @Field(() => Json, {
    description: 'What was entered: times and marks in whole hundredths, winds in tenths.',
  })
  body: unknown;

  @Field({ description: 'What was decided when it came in: accepted or held.' })
  standing: string;

  @Field(() => String, { nullable: true, description: 'Why it was held.' })
  holdCode: string | null;

  @Field({ description: 'With which right: official, referee or director.' })
  authority: string;

  @Field({ description: 'Whose token.' })
  actor: string;

  @Field(() => String, { nullable: true })
  device: string | null;

  @Field(() => Instant, { nullable: true, description: 'By the clock of the device, believed by nobody.' })
  deviceAt: Date | null;

  @Field(() => Instant)
  recordedAt: Date;
}

@ObjectType()
export class CombinedJournalEntryConnection extends connectionType(
  CombinedJournalEntry,
  'CombinedJournalEntry',
) {}

@ObjectType({ description: 'A held entry that waits for the referee.' })
export class CombinedOpenQuestion {
  @Field(() => Uuid)
  entry: string;

  @Field()
  holdCode: string;

  @Field(() => Json, { description: 'What was entered.' })
  body: unknown;
}
