import { Args, ID, Parent, ResolveField, Resolver } from '@nestjs/graphql';
import type { Identity } from '../platform/identity/identity.js';
import { Viewer } from '../platform/identity/rights.js';
import { Competition } from '../platform/objects/competition.type.js';
import { NeededNow } from './needed.types.js';
import { CompetitionProgress, ResultTable, RoundOrder } from './results.types.js';
import { audienceOf, TableMemory } from './table-memory.js';
import { ordersView } from './table-view.js';

/** What a competition shows to everybody who may see it. */
@Resolver(() => Competition)
export class ResultsResolver {
  constructor(private readonly tables: TableMemory) {}

  @ResolveField(() => ResultTable, {
    description: 'The standing with every trial and the reason of every place.',
  })
  async table(@Parent() { row }: Competition, @Viewer() viewer: Identity): Promise<ResultTable> {
    return (await this.tables.of(row)).table(audienceOf(viewer, row));
  }

  @ResolveField(() => CompetitionProgress, { description: 'Who is up, who is next, which round.' })
  async progress(@Parent() { row }: Competition, @Viewer() viewer: Identity): Promise<CompetitionProgress> {
    return (await this.tables.of(row)).progressFor(audienceOf(viewer, row));
  }

  @ResolveField(() => [NeededNow], {
    description:
      'What each competitor needs now, in the order of competition; or only the one that is named.',
  })
  async needed(
    @Parent() { row }: Competition,
    @Args('competitorId', { type: () => ID, nullable: true }) competitorId?: string | null,
  ): Promise<NeededNow[]> {
    const needed = (await this.tables.of(row)).neededNow();
    return typeof competitorId === 'string'
      ? needed.filter((one) => one.competitor === competitorId)
      : needed;
  }

  @ResolveField(() => [RoundOrder], {
    description:
      'Who takes part in each round, in order, as things stand. Empty in high jump and pole vault: the progress says who is called.',
  })
  async orders(@Parent() { row }: Competition): Promise<RoundOrder[]> {
    return ordersView((await this.tables.of(row)).loaded);
  }
}
