import { Args, ID, Int, Parent, ResolveField, Resolver, Subscription } from '@nestjs/graphql';
import { CompetitionMemory } from '../platform/competition/competition-memory.js';
import { maySee } from '../platform/competition/visible.js';
import { badUserInput } from '../platform/errors/api-error.js';
import { Identity } from '../platform/identity/identity.js';
import { Public, Viewer } from '../platform/identity/rights.js';
import { globalId } from '../platform/inputs/global-id.js';
import { ReadId } from '../platform/inputs/object-id.js';
import { LiveSource } from '../platform/live/live-source.js';
import { LiveCompetition } from './live.types.js';
import { NeededNow } from './needed.types.js';
import { CompetitionProgress, ResultTable, RoundOrder } from './results.types.js';
import { audienceOf, TableMemory } from './table-memory.js';
import { ordersView } from './table-view.js';
import type { Audience } from './view.js';

/** What a competition shows to everybody who listens, whole at every version: nothing has to be put together. */
@Resolver(() => LiveCompetition)
export class LiveResolver {
  constructor(
    private readonly memory: CompetitionMemory,
    private readonly tables: TableMemory,
  ) {}

  @Subscription(() => LiveCompetition, {
    description:
      'The competition now, and again at every version; of several that come quickly, the newest. Ends when it may no longer be seen.',
  })
  @Public()
  async competitionTable(
    @Args('id', { type: () => ID }, new ReadId('Competition')) id: string,
    @Viewer() viewer: Identity,
    @Args('sinceVersion', {
      type: () => Int,
      nullable: true,
      description: 'What the client has already: only what is newer is sent.',
    })
    sinceVersion?: number | null,
  ): Promise<LiveSource> {
    const { organisationId } = viewer;
    const loaded = await this.memory.current(organisationId, id);
    if (!loaded || !maySee(loaded.meet, loaded.row, viewer))
      throw badUserInput('There is no such competition, or it is not published and not yours.');
    const audience = audienceOf(viewer, loaded.row);
    const reader = readerOf(audience, organisationId, id);
    const read = async () => {
      const now = await this.memory.current(organisationId, id);
      if (!now || !maySee(now.meet, now.row, reader)) return null;
      const { version, status } = now.row;
      const shown = this.tables.shownOf(now);
      const value: LiveCompetition = { shown, audience, id: globalId('Competition', id), version, status };
      return { version, value };
    };
    const isStillOf = (identity: Identity): boolean =>
      maySee(loaded.meet, loaded.row, identity) && audienceOf(identity, loaded.row) === audience;
    return new LiveSource(
      { organisationId, competitionId: id },
      audience,
      reader,
      isStillOf,
      sinceVersion ?? null,
      read,
    );
  }

  @ResolveField(() => ResultTable)
  table(@Parent() { shown, audience }: LiveCompetition): ResultTable {
    return shown.table(audience);
  }

  @ResolveField(() => CompetitionProgress, { description: 'Who is up, who is next, which round.' })
  progress(@Parent() { shown, audience }: LiveCompetition): CompetitionProgress {
    return shown.progressFor(audience);
  }

  @ResolveField(() => [NeededNow], {
    description: 'What each competitor needs now, in the order of competition.',
  })
  needed(@Parent() { shown }: LiveCompetition): NeededNow[] {
    return shown.neededNow();
  }

  @ResolveField(() => [RoundOrder], {
    description: 'Who takes part in each round, in order, as things stand.',
  })
  orders(@Parent() { shown }: LiveCompetition): RoundOrder[] {
    return ordersView(shown.loaded);
  }
}

/** Nobody in particular, who may see just what the audience may. */
function readerOf(audience: Audience, organisationId: string, competitionId: string): Identity {
  const crew = { role: 'official', on: competitionId, from: null, until: null } as const;
  return audience === 'crew'
    ? new Identity(competitionId, organisationId, [crew])
    : new Identity(null, organisationId, []);
}
