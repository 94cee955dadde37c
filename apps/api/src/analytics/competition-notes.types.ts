import { Field, ID, Int, ObjectType } from '@nestjs/graphql';
import { NotebookAthlete } from '../technique/notebook.types.js';
import { ThrowObservation } from '../technique/practice.types.js';
import { HistoryThrow } from './history.types.js';

@ObjectType({ description: 'A round of an athlete’s series, with what was seen of it.' })
export class NotedTrial {
  @Field(() => Int)
  round: number;

  @Field(() => HistoryThrow, { nullable: true, description: 'Null: noted, and not recorded yet.' })
  trial: HistoryThrow | null;

  @Field(() => [ThrowObservation], { complexity: 2 })
  observations: readonly ThrowObservation[];
}

@ObjectType()
export class NotedSeries {
  @Field(() => NotebookAthlete)
  athlete: NotebookAthlete;

  @Field(() => ID)
  competitorId: string;

  @Field(() => [NotedTrial], { complexity: 6 })
  trials: readonly NotedTrial[];
}

@ObjectType({
  description: 'What was seen at a competition, beside the series; of those whom the viewer may see.',
})
export class CompetitionNotes {
  @Field(() => ID)
  competitionId: string;

  @Field()
  title: string;

  @Field(() => [NotedSeries], { complexity: 6 })
  series: readonly NotedSeries[];
}
