import type { FocusWindow } from '#technique';
import { Field, Float, Int, ObjectType } from '@nestjs/graphql';
import { CalendarDate } from '../platform/scalars/calendar-date.js';
import { Uuid } from '../platform/scalars/uuid.js';
import { enumOf } from '../platform/inputs/enums.js';
import { FocusHowEnum } from '../technique/words.js';
import { Answered, Interval, RefusedAnswer } from './answers.types.js';

const FocusWindowEnum = enumOf<FocusWindow>(
  'FocusWindow',
  ['during', 'week-after', 'after-break', 'in-competition'],
  'When a change is looked for: while it is worked on, in the week after, after a break of two weeks, and in competitions since.',
);

@ObjectType({ description: 'In how many of the throws that were looked at for it a point was seen.' })
export class SeenShare extends Answered {
  @Field(() => Int, { nullable: true })
  k: number | null;

  @Field(() => Int, { nullable: true })
  n: number | null;

  @Field(() => Float, { nullable: true })
  share: number | null;

  @Field(() => Interval, { nullable: true })
  interval: Interval | null;

  @Field(() => Int, { nullable: true, description: 'Throws that were looked at for something else only.' })
  notAssessed: number | null;

  @Field()
  sentence: string;
}

@ObjectType({
  description:
    'How marks with a point differ from marks without it in the same series, in per cent. It says what goes together, and not what does what.',
})
export class Effect extends Answered {
  @Field(() => Float, { nullable: true })
  percent: number | null;

  @Field(() => Interval, { nullable: true })
  interval: Interval | null;

  @Field(() => Float, {
    nullable: true,
    description: 'Of no difference, by laying out the notes of each series anew.',
  })
  p: number | null;

  @Field({ description: 'All ways to lay out the notes were counted.' })
  isExact: boolean;

  @Field(() => Int)
  draws: number;

  @Field(() => Int, { nullable: true })
  informativeSeries: number | null;

  @Field(() => Int, { nullable: true })
  throwsWith: number | null;

  @Field(() => Int, { nullable: true })
  throwsWithout: number | null;

  @Field({ description: 'It could be nothing.' })
  notYetKnown: boolean;

  @Field(() => Int, { nullable: true, description: 'About how many more throws it would take to know.' })
  furtherThrows: number | null;

  @Field()
  sentence: string;
}

@ObjectType({ description: 'How fouls go with a point.' })
export class Fouls extends Answered {
  @Field(() => Float, { nullable: true, description: 'Fouls per throw more with the point.' })
  riskDifference: number | null;

  @Field(() => Float, { nullable: true })
  oddsRatio: number | null;

  @Field(() => Interval, { nullable: true, description: 'Of the odds ratio.' })
  interval: Interval | null;

  @Field(() => Float, { nullable: true })
  p: number | null;

  @Field(() => Int, { nullable: true })
  throwsWith: number | null;

  @Field(() => Int, { nullable: true })
  throwsWithout: number | null;

  @Field()
  sentence: string;
}

@ObjectType()
export class FaultOverTime {
  @Field({ description: 'A month, as YYYY-MM.' })
  month: string;

  @Field(() => SeenShare)
  seen: SeenShare;
}

@ObjectType({ description: 'What is known of one point.' })
export class FaultFindings {
  @Field()
  code: string;

  @Field()
  name: string;

  @Field({ description: 'What to try, said as something to do.' })
  point: string;

  @Field()
  phase: string;

  @Field(() => String, { nullable: true, description: 'To be shown wherever the point is.' })
  caution: string | null;

  @Field()
  isArmOrShoulder: boolean;

  @Field()
  isTaught: boolean;

  @Field(() => SeenShare)
  seen: SeenShare;

  @Field(() => [FaultOverTime], { complexity: 8 })
  overTime: readonly FaultOverTime[];

  @Field(() => Effect, { description: 'Of throws that were noted before the mark was known.' })
  distance: Effect;

  @Field(() => Effect, { description: 'Of all throws: whoever knows the mark sees faults in short throws.' })
  distanceOfAll: Effect;

  @Field(() => Effect, { description: 'With the round taken out.' })
  roundTakenOut: Effect;

  @Field(() => Effect, { description: 'Per step of severity.' })
  perSeverity: Effect;

  @Field(() => Fouls)
  fouls: Fouls;

  @Field(() => Float, {
    nullable: true,
    description: 'Share of wrong leads expected among all at least as striking.',
  })
  q: number | null;

  @Field({ description: 'Worth trying out in practice; never proof.' })
  worthTesting: boolean;

  @Field(() => [String], { description: 'Points that come and go with it: they are answered for together.' })
  movesWith: readonly string[];
}

@ObjectType()
export class FocusChange {
  @Field(() => FocusWindowEnum)
  window: FocusWindow;

  @Field(() => SeenShare)
  seen: SeenShare;

  @Field(() => Float, { nullable: true, description: 'Share now less share before; negative is fewer.' })
  difference: number | null;

  @Field(() => Interval, { nullable: true })
  interval: Interval | null;

  @Field(() => RefusedAnswer, { nullable: true })
  refused: RefusedAnswer | null;
}

@ObjectType({ description: 'Whether what was worked on changed, and held.' })
export class FocusOutcome {
  @Field(() => Uuid)
  focusId: string;

  @Field()
  code: string;

  @Field(() => FocusHowEnum)
  how: 'task' | 'drill' | 'full-throw';

  @Field(() => String, { nullable: true })
  what: string | null;

  @Field(() => CalendarDate)
  from: string;

  @Field(() => CalendarDate, { nullable: true })
  to: string | null;

  @Field(() => SeenShare, { description: 'In the four weeks before.' })
  before: SeenShare;

  @Field(() => [FocusChange], { complexity: 4 })
  windows: readonly FocusChange[];
}
