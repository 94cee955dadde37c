import type { Variant } from '#technique';
import { Field, Float, ID, Int, ObjectType } from '@nestjs/graphql';
import { CalendarDate } from '../platform/scalars/calendar-date.js';
import { VariantEnum } from '../technique/words.js';
import { Answered, Interval } from './answers.types.js';

@ObjectType({ description: 'A mark that nothing beats, in centimetres.' })
export class OwnBest {
  @Field(() => Int)
  cm: number;

  @Field(() => ID)
  attempt: string;

  @Field(() => CalendarDate)
  onDate: string;
}

@ObjectType({ description: 'What one day with one implement came to, in centimetres.' })
export class ProgressPoint {
  @Field(() => CalendarDate)
  onDate: string;

  @Field(() => ID)
  occasion: string;

  @Field()
  inCompetition: boolean;

  @Field(() => Int)
  bestCm: number;

  @Field(() => Float)
  medianCm: number;

  @Field(() => Int)
  count: number;
}

@ObjectType({ description: 'How the marks lie, in centimetres.' })
export class MarksAnswer extends Answered {
  @Field(() => Int, { nullable: true })
  count: number | null;

  @Field(() => Int, { nullable: true })
  fouls: number | null;

  @Field(() => Float, { nullable: true })
  meanCm: number | null;

  @Field(() => Float, { nullable: true })
  sdCm: number | null;

  @Field(() => Float, { nullable: true })
  medianCm: number | null;

  @Field(() => Float, { nullable: true })
  lowerQuartileCm: number | null;

  @Field(() => Float, { nullable: true })
  upperQuartileCm: number | null;
}

@ObjectType({ description: 'How the middle marks of competitions rise or fall.' })
export class TrendAnswer extends Answered {
  @Field(() => Float, { nullable: true })
  cmPer30Days: number | null;

  @Field(() => Interval, { nullable: true })
  interval: Interval | null;

  @Field(() => Float, { nullable: true })
  p: number | null;

  @Field(() => Int, { nullable: true })
  points: number | null;
}

@ObjectType({ description: 'How far marks of one series lie from each other.' })
export class ConsistencyAnswer extends Answered {
  @Field(() => Float, { nullable: true })
  sdCm: number | null;

  @Field(() => Float, { nullable: true })
  cvPercent: number | null;

  @Field(() => Interval, { nullable: true, description: 'Of cvPercent.' })
  interval: Interval | null;
}

@ObjectType({ description: 'k of n, with an interval that allows for how alike throws of one series are.' })
export class ShareAnswer extends Answered {
  @Field(() => Int, { nullable: true })
  k: number | null;

  @Field(() => Int, { nullable: true })
  n: number | null;

  @Field(() => Float, { nullable: true })
  share: number | null;

  @Field(() => Interval, { nullable: true })
  interval: Interval | null;
}

@ObjectType()
export class RoundMean {
  @Field(() => Int)
  round: number;

  @Field(() => Float)
  aboveSeriesMeanCm: number;

  @Field(() => Float)
  p: number;
}

@ObjectType({ description: 'Whether some rounds go further than others.' })
export class RoundsAnswer extends Answered {
  @Field(() => Float, { nullable: true })
  cmPerRound: number | null;

  @Field(() => Float, { nullable: true })
  p: number | null;

  @Field(() => [RoundMean], { complexity: 6 })
  means: readonly RoundMean[];
}

@ObjectType({ description: 'What the last trial was worth against those before it.' })
export class LastAttemptAnswer extends Answered {
  @Field(() => Float, { nullable: true })
  meanCm: number | null;

  @Field(() => Float, { nullable: true })
  p: number | null;

  @Field(() => Int, { nullable: true })
  n: number | null;
}

@ObjectType({ description: 'Own progress with one implement; a change of implement is another line.' })
export class ImplementProgress {
  @Field({ description: 'Event, mass in grams and variant: what a line of progress is about.' })
  implement: string;

  @Field(() => Int, { nullable: true })
  implementGrams: number | null;

  @Field(() => VariantEnum)
  variant: Variant;

  @Field(() => Int)
  throws: number;

  @Field(() => OwnBest, { nullable: true })
  best: OwnBest | null;

  @Field(() => OwnBest, { nullable: true })
  bestInCompetition: OwnBest | null;

  @Field(() => [ProgressPoint], { complexity: 40 })
  progress: readonly ProgressPoint[];
}

@ObjectType({ description: 'What is known of one implement.' })
export class ImplementFindings extends ImplementProgress {
  @Field(() => MarksAnswer)
  marks: MarksAnswer;

  @Field(() => TrendAnswer)
  trend: TrendAnswer;

  @Field(() => ConsistencyAnswer)
  consistency: ConsistencyAnswer;

  @Field(() => ShareAnswer)
  foulRate: ShareAnswer;

  @Field(() => RoundsAnswer)
  rounds: RoundsAnswer;

  @Field(() => LastAttemptAnswer)
  lastAttempt: LastAttemptAnswer;

  @Field(() => ShareAnswer, { description: 'How often the first trial of a competition was valid.' })
  openingTrial: ShareAnswer;
}
