import { Injectable } from '@nestjs/common';
import type { CompetitionRow } from '#persistence';
import { CompetitionMemory } from '../platform/competition/competition-memory.js';
import type { LoadedCompetition } from '../platform/competition/loaded.js';
import type { Identity } from '../platform/identity/identity.js';
import type { NeededNow } from './needed.types.js';
import type { CompetitionProgress, ResultTable } from './results.types.js';
import { neededView, progressView, tableView } from './table-view.js';
import type { Audience } from './view.js';

/** What is shown of one competition at one version, made when it is first asked for. */
export class Shown {
  private readonly tables = new Map<Audience, ResultTable>();
  private readonly progress = new Map<Audience, CompetitionProgress>();
  private needed: NeededNow[] | undefined;

  constructor(readonly loaded: LoadedCompetition) {}

  table(audience: Audience): ResultTable {
    return madeOnce(this.tables, audience, () => tableView(this.loaded, audience));
  }

  progressFor(audience: Audience): CompetitionProgress {
    return madeOnce(this.progress, audience, () => progressView(this.loaded, audience));
  }

  neededNow(): NeededNow[] {
    return (this.needed ??= neededView(this.loaded));
  }
}

function madeOnce<K, V>(made: Map<K, V>, key: K, make: () => V): V {
  const known = made.get(key);
  if (known !== undefined) return known;
  const fresh = make();
  made.set(key, fresh);
  return fresh;
}

/** One view for each version of a competition, shared by everybody who reads it. */
@Injectable()
export class TableMemory {
  private readonly shown = new WeakMap<LoadedCompetition, Shown>();

  constructor(private readonly memory: CompetitionMemory) {}

  /** The newest version known to this process, which may be newer than `row`. */
  async of(row: CompetitionRow): Promise<Shown> {
    const loaded = await this.memory.current(row.organisationId, row.id);
    if (!loaded) throw new Error(`Competition ${row.id} went away while it was read.`);
    return this.shownOf(loaded);
  }

  shownOf(loaded: LoadedCompetition): Shown {
    const known = this.shown.get(loaded);
    if (known) return known;
    const fresh = new Shown(loaded);
    this.shown.set(loaded, fresh);
    return fresh;
  }
}

/** Whole names for those who work at the meet. */
export function audienceOf(viewer: Identity, row: CompetitionRow): Audience {
  return viewer.mayDirect(row.meetId) || viewer.capacityIn(row) !== null ? 'crew' : 'public';
}
