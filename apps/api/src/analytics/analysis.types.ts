import { createUnionType, Field, Float, ID, Int, ObjectType } from '@nestjs/graphql';
import { CalendarDate } from '../platform/scalars/calendar-date.js';
import type { Analysed } from './analytics.service.js';
import { Answered, Interval } from './answers.types.js';
import { FaultFindings, FaultOverTime, FocusOutcome, SeenShare } from './fault.types.js';
import { ImplementFindings, ImplementProgress } from './implement.types.js';

@ObjectType({ description: 'How many throws in a week from Monday on: a count, and never a target.' })
export class WeekCount {
  @Field(() => CalendarDate)
  from: string;

  @Field(() => Int)
  throws: number;

  @Field(() => Int)
  inCompetition: number;

  @Field(() => Int)
  days: number;
}

@ObjectType({
  description: 'Competitions against the practice of the two weeks before, as a ratio of middle marks.',
})
export class TransferAnswer extends Answered {
  @Field(() => Float, { nullable: true })
  ratio: number | null;

  @Field(() => Interval, { nullable: true })
  interval: Interval | null;

  @Field(() => Float, { nullable: true })
  p: number | null;

  @Field(() => Int, { nullable: true })
  pairs: number | null;

  @Field({ description: 'Some practice marks were paced, not measured.' })
  hasEstimatedMarks: boolean;
}

@ObjectType()
export class FoulReasonCount {
  @Field({ description: 'As officials say it, or `unknown`.' })
  reason: string;

  @Field(() => Int)
  count: number;

  @Field(() => [ID])
  attempts: readonly string[];
}

@ObjectType({
  description:
    'A point that may be looked at next. What is said goes with the point; nothing shows that one brings about the other.',
})
export class NextPoint {
  @Field()
  code: string;

  @Field()
  name: string;

  @Field()
  point: string;

  @Field(() => String, { nullable: true })
  caution: string | null;

  @Field(() => Int, {
    nullable: true,
    description: 'From 1; points of one group cannot be told apart. Null: held back.',
  })
  group: number | null;

  @Field(() => String, {
    nullable: true,
    description: 'Why it is not put forward: STAGE_NOT_REACHED or ARM_OR_SHOULDER_IN_GROWTH.',
  })
  heldBack: string | null;

  @Field(() => Float, { description: 'Centimetres per throw that were associated with the point.' })
  expectedCm: number;

  @Field(() => Float)
  sdCm: number;

  @Field(() => Float, {
    description: 'At least so many, with a chance of four in five: the order goes by this.',
  })
  cautiousCm: number;

  @Field(() => Float)
  chanceOfTop: number;
}

@ObjectType({ isAbstract: true })
abstract class AnyAnalysis {
  @Field({ description: 'Another word whenever anything was added that this rests on.' })
  dataVersion: string;

  @Field(() => Int)
  analysisVersion: number;

  @Field({ description: 'A first answer with few draws: a thorough one is being made; ask again.' })
  isFirstAnswer: boolean;

  @Field(() => Int)
  draws: number;

  @Field(() => Int, { description: 'How many throws it rests on.' })
  throws: number;

  @Field(() => [WeekCount], { complexity: 50 })
  weeks: readonly WeekCount[];

  @Field({
    description:
      'The newest marks lie far below those before. Ask how the athlete feels; it is no finding, and no diagnosis.',
  })
  askHowTheAthleteFeels: boolean;
}

@ObjectType({ description: 'What the data of an athlete say in one event. Private.' })
export class AthleteAnalysis extends AnyAnalysis {
  @Field(() => [ImplementFindings], { complexity: 4, description: 'What is thrown most comes first.' })
  implements: readonly ImplementFindings[];

  @Field(() => [FaultFindings], {
    complexity: 12,
    description: 'Points that somebody looked for, in the order of the throw.',
  })
  faults: readonly FaultFindings[];

  @Field(() => [NextPoint], { complexity: 12 })
  next: readonly NextPoint[];

  @Field(() => [FoulReasonCount], { complexity: 6 })
  foulsByReason: readonly FoulReasonCount[];

  @Field(() => TransferAnswer)
  transfer: TransferAnswer;

  @Field(() => [FocusOutcome], { complexity: 4 })
  focuses: readonly FocusOutcome[];
}

@ObjectType({ description: 'One thing to try.' })
export class PointToTry {
  @Field()
  code: string;

  @Field({ description: 'Said as something to do.' })
  point: string;
}

@ObjectType({ description: 'How often a point is seen.' })
export class PointOverTime {
  @Field()
  code: string;

  @Field()
  name: string;

  @Field()
  point: string;

  @Field(() => SeenShare)
  seen: SeenShare;

  @Field(() => [FaultOverTime], { complexity: 8 })
  overTime: readonly FaultOverTime[];
}

@ObjectType({
  description:
    'For a child: own progress with each implement and one thing to try. There is nothing in it that compares, forecasts or prices.',
})
export class ChildAnalysis extends AnyAnalysis {
  @Field(() => [ImplementProgress], { complexity: 4 })
  implements: readonly ImplementProgress[];

  @Field(() => PointToTry, { nullable: true, description: 'Null: nothing stands out. Just throw.' })
  tryNext: PointToTry | null;

  @Field(() => [PointOverTime], { complexity: 12, description: 'For the coach; empty for others.' })
  points: readonly PointOverTime[];

  @Field(() => [FocusOutcome], { complexity: 4, description: 'For the coach; empty for others.' })
  focuses: readonly FocusOutcome[];
}

export const NotebookAnalysis = createUnionType({
  name: 'NotebookAnalysis',
  description: 'By the age of the athlete: younger than fourteen, or of unknown age, is a child.',
  types: () => [AthleteAnalysis, ChildAnalysis] as const,
  resolveType: (value: object) => ('tryNext' in value ? ChildAnalysis : AthleteAnalysis),
});

/** As the viewer may see it. */
export function analysisObject(
  { analysis, dataVersion, throws }: Analysed,
  isCoach: boolean,
): AthleteAnalysis | ChildAnalysis {
  const { suddenDrop, ...rest } = analysis;
  const common = { dataVersion, throws: throws.length, askHowTheAthleteFeels: suddenDrop };
  if (rest.kind === 'whole') return { ...rest, ...common };
  const { faults, focuses, ...child } = rest;
  return { ...child, ...common, points: isCoach ? faults : [], focuses: isCoach ? focuses : [] };
}
