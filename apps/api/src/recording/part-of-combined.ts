import { combinedEvents, type Tx } from '#persistence';
import type { AnyEntry } from '#rules';
import type { LoadedCompetition } from '../platform/competition/loaded.js';

/**
 * The competition as an order of call is decided in it: in a combined event every round may be called otherwise. That
 * a competition is part of one lies beside it and can change without it, so it is looked up for this entry alone.
 */
export async function asPartOfCombined(
  tx: Tx,
  loaded: LoadedCompetition,
  entry: AnyEntry,
): Promise<LoadedCompetition> {
  if (entry.kind !== 'order' || loaded.kind !== 'distance') return loaded;
  const { row, state } = loaded;
  const combined = await combinedEvents.isLinked(tx, row.organisationId, row.id);
  return { ...loaded, state: { ...state, setup: { ...state.setup, combined } } };
}
