import type { EventCode } from '#rules';
import { Field, Float, Int, ObjectType } from '@nestjs/graphql';
import { EventEnum } from '../platform/objects/words.js';
import { CalendarDate } from '../platform/scalars/calendar-date.js';
import { NotebookAthlete } from '../technique/notebook.types.js';
import { Interval, RefusedAnswer } from './answers.types.js';
import { Effect } from './fault.types.js';

@ObjectType({ description: 'A point that is worked on or on a checklist, and when it was last looked for.' })
export class PointToAssess {
  @Field(() => EventEnum)
  event: EventCode;

  @Field()
  code: string;

  @Field(() => CalendarDate, { nullable: true, description: 'Null: never.' })
  lastLookedFor: string | null;
}

@ObjectType({ description: 'One athlete of the squad. There is no order by marks, and no mark.' })
export class SquadLine {
  @Field(() => NotebookAthlete)
  athlete: NotebookAthlete;

  @Field(() => CalendarDate, { nullable: true })
  lastThrowOn: string | null;

  @Field(() => CalendarDate, { nullable: true })
  lastObservedOn: string | null;

  @Field(() => Int, { description: 'Throws in the four weeks up to the day: a count, and never a target.' })
  throwsInFourWeeks: number;

  @Field({ description: 'Threw since somebody last looked, two weeks ago or longer.' })
  isDue: boolean;

  @Field(() => [PointToAssess], {
    complexity: 5,
    description: 'Not looked for in the four weeks up to the day.',
  })
  notAssessed: readonly PointToAssess[];
}

@ObjectType({ description: 'What one athlete’s throws say of a point, alone and with the squad behind it.' })
export class SquadEffect {
  @Field(() => NotebookAthlete)
  athlete: NotebookAthlete;

  @Field(() => Effect)
  own: Effect;

  @Field(() => Float, {
    nullable: true,
    description: 'Drawn towards the squad’s as far as the own one is unsure, in per cent.',
  })
  pooledPercent: number | null;

  @Field(() => Interval, { nullable: true })
  pooledInterval: Interval | null;
}

@ObjectType({ description: 'One point across the athletes whom the viewer coaches. Children are left out.' })
export class SquadFault {
  @Field()
  code: string;

  @Field(() => Int, { description: 'Of how many athletes the analysis is there.' })
  done: number;

  @Field(() => Int, { description: 'Ask again until it is all.' })
  total: number;

  @Field(() => Int)
  childrenLeftOut: number;

  @Field(() => Float, { nullable: true, description: 'Of the squad together, in per cent.' })
  meanPercent: number | null;

  @Field(() => Interval, { nullable: true })
  meanInterval: Interval | null;

  @Field(() => RefusedAnswer, { nullable: true })
  refused: RefusedAnswer | null;

  @Field(() => [SquadEffect], { complexity: 20 })
  athletes: readonly SquadEffect[];
}
