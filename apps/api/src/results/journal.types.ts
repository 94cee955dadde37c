import { Field, Int, ObjectType } from '@nestjs/graphql';
import { connectionType } from '../platform/connections/connection.js';
import { Instant } from '../platform/scalars/instant.js';
import { Json } from '../platform/scalars/json.js';
import { Uuid } from '../platform/scalars/uuid.js';

@ObjectType({ description: 'One line of a competition’s journal. Nothing in it is ever changed or removed.' })
export class JournalEntry {
  @Field(() => Uuid)
  id: string;

  @Field(() => Int, { description: 'From 1, without gaps.' })
  sequence: number;

  @Field({
    description:
      'attempt, wind, correction, move, order, implement-query; at a bar jump, jump-off, jump-correction, jump-move, jump-order, bar, uprights, jump-off-declined; in both reversal, replacement, ruling, start, interruption, all-clear, …',
  })
  kind: string;

  @Field(() => Json, {
    description: 'What was entered: marks and heights in whole units of the competition, winds in tenths.',
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
export class JournalEntryConnection extends connectionType(JournalEntry, 'JournalEntry') {}

@ObjectType({ description: 'Something that waits for the referee.' })
export class OpenQuestion {
  @Field(() => Uuid, { description: 'The held entry, or the trial.' })
  entry: string;

  @Field({
    description: '"held", "protest", or "implement": what the trial was made with did not pass afterwards.',
  })
  about: string;

  @Field(() => String, { nullable: true })
  holdCode: string | null;

  @Field(() => Json, { description: 'What was entered.' })
  body: unknown;
}
