import type { LoadedCompetition } from '../platform/competition/loaded.js';
import { distanceOrders, distanceProgress, distanceTable } from './distance-view.js';
import { neededInDistance, neededInVertical } from './needed-view.js';
import type { NeededNow } from './needed.types.js';
import type { CompetitionProgress, ResultTable, RoundOrder } from './results.types.js';
import { verticalProgress } from './vertical-progress-view.js';
import { verticalTable } from './vertical-view.js';
import type { Audience } from './view.js';

/* What is shown of a competition, by its kind. Computed once a version and shown many times: see `TableMemory`. */

/** The table of one version. */
export function tableView(loaded: LoadedCompetition, audience: Audience): ResultTable {
  const { state, row } = loaded;
  const standing =
    loaded.kind === 'vertical' ? verticalTable({ loaded, audience }) : distanceTable({ loaded, audience });
  return {
    version: row.version,
    rules: `${row.rules} ${row.edition}`,
    isOfficial: state.signedOff,
    isDisputed: state.questions.length > 0,
    changedAt: loaded.changedAt,
    ...standing,
  };
}

/** Where the competition is and who is called. */
export function progressView(loaded: LoadedCompetition, audience: Audience): CompetitionProgress {
  return loaded.kind === 'vertical'
    ? verticalProgress({ loaded, audience })
    : distanceProgress({ loaded, audience });
}

/** What each competitor needs now, in the order of competition. */
export function neededView(loaded: LoadedCompetition): NeededNow[] {
  return loaded.kind === 'vertical' ? neededInVertical(loaded) : neededInDistance(loaded);
}

/** Who takes part in each round, in order; there are no rounds where there is a bar. */
export function ordersView(loaded: LoadedCompetition): RoundOrder[] {
  return loaded.kind === 'vertical' ? [] : distanceOrders(loaded);
}
