import { competitions, type Tx } from '#persistence';
import { isTrial, type AnyEntry, type Stop } from '#rules';
import type { CompetitionMemory } from '../platform/competition/competition-memory.js';
import type { LoadedCompetition } from '../platform/competition/loaded.js';

/**
 * The competition as a trial is decided in it: what stops one competition of a calling group stops the place, so a
 * trial in another one is held as well. The stop itself stays an entry of the competition that it was entered in.
 */
export async function asPartOfGroup(
  tx: Tx,
  memory: CompetitionMemory,
  loaded: LoadedCompetition,
  entry: AnyEntry,
): Promise<LoadedCompetition> {
  const { callingGroupId, organisationId, id } = loaded.row;
  if (callingGroupId === null || !isTrial(entry.kind)) return loaded;
  const members = await competitions.ofCallingGroups(tx, organisationId, [callingGroupId]);
  const elsewhere: Stop[] = [];
  for (const member of members) {
    if (member.id !== id) elsewhere.push(...(await memory.locked(tx, member)).state.safety.stops);
  }
  return elsewhere.length === 0 ? loaded : stoppedBy(loaded, elsewhere);
}

function stoppedBy(loaded: LoadedCompetition, elsewhere: readonly Stop[]): LoadedCompetition {
  const safety = { ...loaded.state.safety, stops: [...loaded.state.safety.stops, ...elsewhere] };
  return loaded.kind === 'vertical'
    ? { ...loaded, state: { ...loaded.state, safety } }
    : { ...loaded, state: { ...loaded.state, safety } };
}
