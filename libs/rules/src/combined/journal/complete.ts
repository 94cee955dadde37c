import type { CombinedEventCode } from '../scoring-table.js';
import { isOutAt } from './project.js';
import type { CombinedEventState } from './state.js';

/** How far an event of the programme is. */
export type ComponentProgress = 'to come' | 'running' | 'complete';

/** Complete: everybody who is in it has a result, and the competition it is counted from is official. */
export function componentProgress(state: CombinedEventState, event: CombinedEventCode): ComponentProgress {
  const index = state.setup.table.events.indexOf(event);
  if (![...state.results.values()].some((line) => (line[index] ?? null) !== null)) return 'to come';
  return isWhole(state, event) ? 'complete' : 'running';
}

/** Nothing is to come: every event is complete for everybody who is still in it. */
export function isComplete(state: CombinedEventState): boolean {
  const { table, entrants } = state.setup;
  return entrants.length > 0 && table.events.every((event) => isWhole(state, event));
}

function isWhole(state: CombinedEventState, event: CombinedEventCode): boolean {
  const { table, entrants, linked } = state.setup;
  const index = table.events.indexOf(event);
  const isDone = (key: string): boolean =>
    isOutAt(state.out.get(key), index) || (state.results.get(key)?.[index] ?? null) !== null;
  return (linked.get(event)?.isOfficial ?? true) && entrants.every(({ key }) => isDone(key));
}
