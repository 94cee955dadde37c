import type { CompetitionRow } from '#persistence';
import { flightsNeeded, ruleSet, type DrawEntry, type DrawProblem, type DrawTerms } from '#rules';
import { refusal, type Refusal } from '../platform/errors/user-error.types.js';
import { isGiven } from '../platform/inputs/given.js';
import type { RosterLine } from '../platform/roster/roster.js';
import type { StartListDrawInput } from './draws.inputs.js';

/** The terms as the rules take them, or why they are none. */
export function termsOf(
  input: StartListDrawInput,
  competition: CompetitionRow,
  roster: readonly RosterLine[],
): DrawTerms | { readonly refusal: Refusal } {
  const refused = contradiction(input, competition, roster);
  if (refused) return { refusal: refused };
  const flights = flightCount(input, competition, roster.length);
  if (flights === null) return { refusal: FLIGHT_SIZE };
  return { seed: input.seed, method: input.method, flights, clubmatesApart: input.areClubmatesApart };
}

function contradiction(
  { flights, flightSize, method }: StartListDrawInput,
  { vertical }: CompetitionRow,
  roster: readonly RosterLine[],
): Refusal | null {
  if (roster.length === 0) return EMPTY;
  if (isGiven(flights) && isGiven(flightSize)) return FLIGHTS_OR_SIZE;
  if (flightSize && flightSize.min > flightSize.max) return FLIGHT_SIZE;
  if (vertical && isGiven(flights) && flights > 1) return ONE_BAR;
  const hasMark = roster.some(({ competitor }) => competitor.seedMark !== null);
  return method === 'lot' || hasMark ? null : NO_SEED_MARKS;
}

/** Null: the sizes fit no number of flights. */
function flightCount(
  { flights, flightSize }: StartListDrawInput,
  { rules, edition, vertical }: CompetitionRow,
  competitors: number,
): number | null {
  if (isGiven(flights)) return flights;
  if (vertical) return 1;
  return flightsNeeded(competitors, flightSize ?? ruleSet(rules, edition).flightSize.value);
}

/** Who is drawn, by bib. Only what the draw uses goes in: what goes in is kept for good, and public. */
export function entriesOf(
  roster: readonly RosterLine[],
  { method, flights, clubmatesApart }: DrawTerms,
): DrawEntry[] {
  const usesClubs = clubmatesApart && method !== 'seed marks' && flights > 1;
  return roster.map(({ competitor: { bib, seedMark }, club }) => ({
    key: bib,
    seedMark: method === 'lot' ? null : seedMark,
    club: usesClubs ? club : null,
  }));
}

/** A, B, C, …; numbers where letters run out; one flight has no label. */
export function labelsOf(flights: number): (string | null)[] {
  if (flights === 1) return [null];
  const letters = 'ABCDEFGHIJKLMNOPQRSTUVWXYZ';
  return Array.from({ length: flights }, (_, at) => (flights > 26 ? String(at + 1) : letters[at]!));
}

/** What the rules say against the terms, at the field that it is about. */
export function problemRefusal({ field, code, message }: DrawProblem): Refusal {
  const path = field === 'entries' ? ['competitionId'] : [field];
  return refusal({ code, path, message, remedy: 'Change it, and draw again.' });
}

const EMPTY = refusal({
  code: 'START_LIST_EMPTY',
  path: ['competitionId'],
  message: 'Nobody is on the start list.',
  remedy: 'Enter the competitors first.',
});

const FLIGHTS_OR_SIZE = refusal({
  code: 'FLIGHTS_OR_SIZE',
  path: ['flightSize'],
  message: 'The number of flights and their size would both say how many there are.',
  remedy: 'Send one of them.',
});

const FLIGHT_SIZE = refusal({
  code: 'FLIGHT_SIZE',
  path: ['flightSize'],
  message: 'No number of flights gives every flight a size in this range.',
  remedy: 'Send `flights`, or other sizes in `flightSize`.',
});

const ONE_BAR = refusal({
  code: 'FLIGHTS',
  path: ['flights'],
  message: 'A high jump or pole vault has one bar, and so one order.',
  remedy: 'Draw one flight; groups that jump apart are competitions of their own.',
});

const NO_SEED_MARKS = refusal({
  code: 'NO_SEED_MARKS',
  path: ['method'],
  message: 'Nobody was entered with a mark.',
  remedy: 'Draw by lot, or enter competitors with their marks.',
});
