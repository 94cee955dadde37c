import { Injectable } from '@nestjs/common';
import type { CompetitionRow } from '#persistence';
import type { LoadedCompetition } from '../platform/competition/loaded.js';
import type { Identity } from '../platform/identity/identity.js';
import type { NeededNow } from './needed.types.js';
import type { CompetitionProgress, ResultTable, RoundOrder } from './results.types.js';
import { audienceOf, TableMemory } from './table-memory.js';
import { ordersView } from './table-view.js';
import type { Audience } from './view.js';

export type { NeededNow } from './needed.types.js';
export type { CompetitionProgress, ResultTable, TableRow } from './results.types.js';

/** A competition at one version, as whoever asks may see it. */
export interface ShownCompetition {
  readonly loaded: LoadedCompetition;
  readonly audience: Audience;
  readonly table: ResultTable;
  readonly orders: readonly RoundOrder[];
}

/** A competition at one version, as everybody may see it. */
export interface PubliclyShown {
  /** Keeps whole names and more: only what is public may be taken from it. */
  readonly loaded: LoadedCompetition;
  readonly table: ResultTable;
  readonly progress: CompetitionProgress;
  readonly needed: readonly NeededNow[];
}

/** What other capabilities show of results: the same tables that are read through the API. */
@Injectable()
export class ResultsService {
  constructor(private readonly tables: TableMemory) {}

  async shown(row: CompetitionRow, viewer: Identity): Promise<ShownCompetition> {
    const shown = await this.tables.of(row);
    const audience = audienceOf(viewer, row);
    return {
      loaded: shown.loaded,
      audience,
      table: shown.table(audience),
      orders: ordersView(shown.loaded),
    };
  }

  async toEverybody(row: CompetitionRow): Promise<PubliclyShown> {
    const shown = await this.tables.of(row);
    const { loaded } = shown;
    return {
      loaded,
      table: shown.table('public'),
      progress: shown.progressFor('public'),
      needed: shown.neededNow(),
    };
  }
}
