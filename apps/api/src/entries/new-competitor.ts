import { athletes, clubs, type CompetitionRow, type CompetitorRow, type Tx } from '#persistence';
import { parseMark } from '#rules';
import { notFound } from '../platform/errors/outcomes.js';
import { refusal, type Refusal } from '../platform/errors/user-error.types.js';
import { isGiven } from '../platform/inputs/given.js';
import { uuidV7 } from '../platform/inputs/uuid-v7.js';
import { MAX_COMPETITORS, type CompetitorEnterInput } from './entries.inputs.js';

type NewCompetitor = Omit<CompetitorRow, 'position'>;

/** What can be said of an entry without looking anything up. */
export function shapeProblem(
  { athleteId, listedName, clubId, listedClub, seedMark }: CompetitorEnterInput,
  { unit }: CompetitionRow,
): Refusal | null {
  if (isGiven(athleteId) === isGiven(listedName)) {
    return refusal({
      code: 'ATHLETE_OR_NAME',
      path: ['athleteId'],
      message: 'An entry names an athlete on record or a name, one of the two.',
      remedy: 'Send `athleteId` or `listedName`.',
    });
  }
  if (isGiven(clubId) && isGiven(listedClub)) {
    return refusal({
      code: 'ONE_CLUB',
      path: ['listedClub'],
      message: 'An entry is for one club.',
      remedy: 'Send `clubId` or `listedClub`, or neither.',
    });
  }
  return isGiven(seedMark) && parseMark(seedMark)?.unit !== unit ? WRONG_UNIT : null;
}

const WRONG_UNIT = refusal({
  code: 'WRONG_UNIT',
  path: ['seedMark'],
  message: 'The mark is not in the unit of the competition.',
  remedy: 'Send it as it was measured, in that unit; or leave it out.',
});

/** The line as it was asked for; the club of an athlete who names none is looked up by whoever stores it. */
export function newCompetitor(input: CompetitorEnterInput, organisationId: string): NewCompetitor {
  return {
    organisationId,
    id: input.id ?? uuidV7(),
    competitionId: input.competitionId,
    athleteId: input.athleteId ?? null,
    listedName: input.listedName ?? null,
    listedClub: input.listedClub ?? null,
    clubId: input.clubId ?? null,
    bib: input.bib,
    flight: input.flight ?? null,
    guest: input.isGuest,
    implementGrams: input.implementGrams ?? null,
    seedMark: isGiven(input.seedMark) ? (parseMark(input.seedMark)?.value ?? null) : null,
    written: null,
    isUnmatched: false,
  };
}

/** What the start list or the records say against it. The caller holds the competition's lock. */
export async function entryProblem(
  tx: Tx,
  wanted: NewCompetitor,
  list: readonly CompetitorRow[],
): Promise<Refusal | null> {
  const { organisationId, athleteId, clubId, bib } = wanted;
  if (list.length >= MAX_COMPETITORS) return LIST_FULL;
  if (list.some((line) => line.bib === bib)) return BIB_TAKEN;
  if (athleteId !== null && list.some((line) => line.athleteId === athleteId)) return ALREADY_ENTERED;
  if (athleteId !== null && !(await athletes.find(tx, organisationId, athleteId)))
    return notFound('athlete', ['athleteId']);
  if (clubId !== null && !(await clubs.find(tx, organisationId, clubId))) return notFound('club', ['clubId']);
  return null;
}

export function nextPosition(list: readonly CompetitorRow[]): number {
  return 1 + Math.max(0, ...list.map(({ position }) => position));
}

const LIST_FULL = refusal({
  code: 'LIST_FULL',
  message: `A competition has at most ${MAX_COMPETITORS} competitors.`,
  remedy: 'Make another competition, such as a second group.',
});

const BIB_TAKEN = refusal({
  code: 'BIB_TAKEN',
  path: ['bib'],
  message: 'Another competitor of this competition has the bib.',
  remedy: 'Send another one.',
});

const ALREADY_ENTERED = refusal({
  code: 'ALREADY_ENTERED',
  path: ['athleteId'],
  message: 'The athlete is on the start list already.',
  remedy: 'Leave the entry as it is, or withdraw it first.',
});
