import type { CombinedDecision, CombinedEventCode, CombinedOutcome, Timing } from '#rules';
import { Field, ID, Int, ObjectType } from '@nestjs/graphql';
import { CombinedEventEnum, TimingEnum } from '../platform/objects/combined-words.js';
import { Instant } from '../platform/scalars/instant.js';
import { Uuid } from '../platform/scalars/uuid.js';
import { WindText } from '../platform/scalars/wind-reading.js';

@ObjectType({ description: 'What an entrant did in one event, and how it stood after it.' })
export class CombinedResult {
  @Field(() => CombinedEventEnum)
  event: CombinedEventCode;

  @Field(() => String, { nullable: true, description: 'VALID, NM, DNS, DNF or DQ; null: to come.' })
  outcome: CombinedOutcome | 'VALID' | null;

  @Field(() => String, { nullable: true, description: 'The time, or the height or distance in metres.' })
  mark: string | null;

  @Field(() => TimingEnum, { nullable: true, description: 'Of a time.' })
  timing: Timing | null;

  @Field(() => WindText, { nullable: true })
  wind: string | null;

  @Field(() => Int, { nullable: true, description: 'Null: to come.' })
  points: number | null;

  @Field({ description: 'Entered in the journal of the combined event, and not counted from a competition.' })
  isEntered: boolean;

  @Field(() => Uuid, { nullable: true, description: 'The entry that it is from; null: from a competition.' })
  entry: string | null;

  @Field({ description: 'The competition that it is counted from is not signed off: it may still change.' })
  isProvisional: boolean;

  @Field(() => Int, { nullable: true, description: 'Of all events up to this one; null: it has not begun.' })
  runningTotal: number | null;

  @Field(() => Int, {
    nullable: true,
    description: 'If it ended with this event; null: it has not begun, or the entrant was out.',
  })
  placeAfter: number | null;
}

@ObjectType({
  description: 'What the winds of a total mean for records and lists. Points and places do not change.',
})
export class CombinedWind {
  @Field(() => String, {
    nullable: true,
    description: 'The mean in m/s; null: not known, or no event with wind so far.',
  })
  mean: string | null;

  @Field(() => Boolean, { nullable: true, description: 'As it stands; null: a wind is not known.' })
  isLegal: boolean | null;

  @Field({ description: 'One sentence.' })
  reason: string;

  @Field({ description: 'The rule, of the day of the meet.' })
  rule: string;
}

@ObjectType()
export class CombinedRow {
  @Field(() => ID)
  entrant: string;

  @Field()
  bib: string;

  @Field()
  name: string;

  @Field(() => String, { nullable: true })
  club: string | null;

  @Field(() => Int, { nullable: true, description: 'Null: no result yet, out of the event, or a guest.' })
  place: number | null;

  @Field({ description: 'The place is shared.' })
  isEqual: boolean;

  @Field(() => Int)
  total: number;

  @Field(() => String, {
    nullable: true,
    description: 'DNS: started nothing. DNF: did not start an event or gave up. GUEST.',
  })
  status: 'DNS' | 'DNF' | 'GUEST' | null;

  @Field(() => String, {
    nullable: true,
    description: 'What parts it from the row before: first, points, more events, best events, equal.',
  })
  decidedBy: CombinedDecision | null;

  @Field({ description: 'Why it stands there, in one sentence.' })
  reason: string;

  @Field(() => String, { nullable: true, description: 'The rule behind it.' })
  reasonRule: string | null;

  @Field(() => [CombinedResult], { complexity: 10, description: 'By event, in the order of the programme.' })
  results: CombinedResult[];

  @Field(() => CombinedWind)
  wind: CombinedWind;

  @Field({
    description:
      'Every event is done and the winds allow that the total counts for records and lists, as far as they decide it.',
  })
  isWindValidForRecords: boolean;
}

@ObjectType({ description: 'Places after one event, were it to end there.' })
export class CombinedStageRow {
  @Field(() => ID)
  entrant: string;

  @Field(() => Int, { nullable: true })
  points: number | null;

  @Field(() => Int)
  total: number;

  @Field(() => Int, { nullable: true })
  place: number | null;

  @Field()
  isEqual: boolean;
}

@ObjectType()
export class CombinedStage {
  @Field(() => CombinedEventEnum)
  event: CombinedEventCode;

  @Field(() => [CombinedStageRow], {
    complexity: 20,
    description: 'By total; then who is out. Guests are left out.',
  })
  rows: CombinedStageRow[];
}

@ObjectType({
  description: 'How a combined event stands, competitions that are running counted as they stand.',
})
export class CombinedStanding {
  @Field(() => Int, { description: 'Of the combined event.' })
  version: number;

  @Field({ description: 'By which rule set and edition.' })
  rules: string;

  @Field({ description: 'Signed off.' })
  isOfficial: boolean;

  @Field({ description: 'Not signed off: events are to come or running, and the standing may change.' })
  isProvisional: boolean;

  @Field({
    description: 'Everybody who is in it has a result in every event, and what is linked is signed off.',
  })
  isComplete: boolean;

  @Field({ description: 'Something waits for the referee.' })
  isDisputed: boolean;

  @Field({
    description: 'Signed off, and something it is counted from has changed since: it should be opened again.',
  })
  differsFromSigned: boolean;

  @Field(() => Instant, { nullable: true, description: 'When the latest entry was recorded here.' })
  changedAt: Date | null;

  @Field(() => [CombinedRow], {
    complexity: 20,
    description: 'By place; then who waits, who is out, and guests.',
  })
  rows: CombinedRow[];

  @Field(() => [CombinedStage], { complexity: 10, description: 'After each event that has begun.' })
  stages: CombinedStage[];
}
