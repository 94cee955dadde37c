import { competitions, type CallingGroupRow, type CompetitionRow, type Tx } from '#persistence';
import { isTrial } from '#rules';
import type { LoadedCompetition } from '../platform/competition/loaded.js';
import { refusal, type Refusal } from '../platform/errors/user-error.types.js';

/** Locks competitions in the order of their ids, as everybody who locks several. Those that there are. */
export async function lockAll(
  tx: Tx,
  organisationId: string,
  ids: readonly string[],
): Promise<CompetitionRow[]> {
  const locked: CompetitionRow[] = [];
  for (const id of [...new Set(ids)].sort()) {
    const row = await competitions.lock(tx, organisationId, id);
    if (row) locked.push(row);
  }
  return locked;
}

/** Why these competitions cannot be called together in this group; `null`: they can. `rows` are locked. */
export function membersProblem(
  group: Pick<CallingGroupRow, 'id' | 'meetId'>,
  ids: readonly string[],
  rows: readonly CompetitionRow[],
): Refusal | null {
  const found = ids.map((id) => rows.find((row) => row.id === id));
  for (const [at, row] of found.entries()) {
    const path = ['competitionIds', String(at)];
    if (!row || row.meetId !== group.meetId) return refusal({ ...NOT_IN_MEET, path });
    if (ids.indexOf(row.id) !== at) return refusal({ ...NAMED_TWICE, path });
    if (row.callingGroupId !== null && row.callingGroupId !== group.id)
      return refusal({ ...CALLED_ELSEWHERE, path });
    if (row.event !== found[0]!.event) return refusal({ ...EVENT_MIXED, path });
    if (row.vertical && row.unit !== found[0]!.unit) return refusal({ ...UNIT_MIXED, path });
  }
  return null;
}

/** Whether a competition has begun, so that its order stands. */
export function hasBegun({ row, state }: LoadedCompetition): boolean {
  return row.status === 'official' || state.journal.some(({ entry }) => isTrial(entry.kind));
}

const NOT_IN_MEET = {
  code: 'NOT_FOUND',
  message: 'There is no such competition in this meet.',
  remedy: 'Send competitions of the meet.',
};

const NAMED_TWICE = {
  code: 'NAMED_TWICE',
  message: 'The competition is named twice.',
  remedy: 'Name each competition once.',
};

const CALLED_ELSEWHERE = {
  code: 'CALLED_ELSEWHERE',
  message: 'The competition is in another calling group; nobody can be called at two places at once.',
  remedy: 'Take it out of the other group first.',
};

const EVENT_MIXED = {
  code: 'EVENT_MIXED',
  message: 'A group shares one circle, runway or bar, so its competitions are of one event.',
  remedy: 'Make a group for each event.',
};

const UNIT_MIXED = {
  code: 'UNIT_MIXED',
  message: 'At one bar all heights are in one unit.',
  remedy: 'Send competitions that are measured in the same unit.',
};

/** After the first trial of any of its competitions. */
export const STARTED = refusal({
  code: 'COMPETITION_STARTED',
  message:
    'The first trial of the group has been recorded: who is called together, and in which order, stands.',
  rule: 'the order is drawn before the competition (WA TR25.5, from memory)',
  remedy: 'Record who did not start or retired; the referee may change the order of a round.',
});

export const ORDER_INCOMPLETE = refusal({
  code: 'ORDER_INCOMPLETE',
  path: ['competitorIds'],
  message: 'The order does not name everybody of the group exactly once.',
  remedy: 'Send every competitor of its competitions once.',
});
