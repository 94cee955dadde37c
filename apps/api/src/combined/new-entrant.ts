import { athletes, clubs, type CombinedEntrantRow, type Reads, type Tx } from '#persistence';
import { notFound } from '../platform/errors/outcomes.js';
import { refusal, type Refusal } from '../platform/errors/user-error.types.js';
import { isGiven } from '../platform/inputs/given.js';
import type { CombinedEntrantEnterInput } from './combined-setup.inputs.js';

/** As many as a sheet may hold. */
const MAX_ENTRANTS = 2000;

/** What can be said of an entry without looking anything up. */
export function shapeProblem(input: CombinedEntrantEnterInput): Refusal | null {
  const { athleteId, listedName, clubId, listedClub } = input;
  if (isGiven(athleteId) === isGiven(listedName)) {
    return refusal({
      code: 'ATHLETE_OR_NAME',
      path: ['athleteId'],
      message: 'An entry names an athlete on record or a name, one of the two.',
      remedy: 'Send `athleteId` or `listedName`.',
    });
  }
  if (!isGiven(clubId) || !isGiven(listedClub)) return null;
  return refusal({
    code: 'ONE_CLUB',
    path: ['listedClub'],
    message: 'An entry is for one club.',
    remedy: 'Send `clubId` or `listedClub`, or neither.',
  });
}

/** An entrant is for the club of the day, also when the athlete has moved on later: it is kept with the entry. */
export async function clubAtEntry(
  at: Reads,
  organisationId: string,
  { clubId, listedClub, athleteId }: CombinedEntrantEnterInput,
): Promise<string | null> {
  if (isGiven(clubId)) return clubId;
  if (isGiven(listedClub) || !isGiven(athleteId)) return null;
  return (await athletes.find(at, organisationId, athleteId))?.clubId ?? null;
}

/** What the list or the records say against it. The caller holds the combined event's lock. */
export async function entrantProblem(
  tx: Tx,
  { organisationId, athleteId, clubId, bib }: Omit<CombinedEntrantRow, 'position'>,
  list: readonly CombinedEntrantRow[],
): Promise<Refusal | null> {
  if (list.length >= MAX_ENTRANTS) return LIST_FULL;
  if (list.some((line) => line.bib === bib)) return BIB_TAKEN;
  if (athleteId !== null && list.some((line) => line.athleteId === athleteId)) return ALREADY_ENTERED;
  if (athleteId !== null && !(await athletes.find(tx, organisationId, athleteId)))
    return notFound('athlete', ['athleteId']);
  if (clubId !== null && !(await clubs.find(tx, organisationId, clubId))) return notFound('club', ['clubId']);
  return null;
}

export function nextPosition(list: readonly CombinedEntrantRow[]): number {
  return 1 + Math.max(0, ...list.map(({ position }) => position));
}

const LIST_FULL = refusal({
  code: 'LIST_FULL',
  message: `A combined event has at most ${MAX_ENTRANTS} entrants.`,
  remedy: 'Make another one.',
});

const BIB_TAKEN = refusal({
  code: 'BIB_TAKEN',
  path: ['bib'],
  message: 'Another entrant of this combined event has the bib.',
  remedy: 'Send another one.',
});

const ALREADY_ENTERED = refusal({
  code: 'ALREADY_ENTERED',
  path: ['athleteId'],
  message: 'The athlete is in the combined event already.',
  remedy: 'Leave the entry as it is, or withdraw it first.',
});
