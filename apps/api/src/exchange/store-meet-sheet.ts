import { isDeepStrictEqual } from 'node:util';
import {
  combinedEvents,
  competitions,
  enteredResults,
  meetScorings,
  meets,
  type MeetScoringRow,
  type Tx,
} from '#persistence';
import { formatPoints, type MeetContent, type Scoring } from '#rules';
import { notFound } from '../platform/errors/outcomes.js';
import { refusal } from '../platform/errors/user-error.types.js';
import type { Identity } from '../platform/identity/identity.js';
import { uuidV7 } from '../platform/inputs/uuid-v7.js';
import { isMadeOf, makeCompetition, type Imported, type SheetPlace } from './store-sheet.js';

/** More sheets than this in one meet are a mistake, and each is a competition to be made. */
export const MOST_SHEETS = 200;

/**
 * Fills an empty meet with the competitions of a meet sheet, each as if it came alone, and says how it is scored. A
 * meet that holds exactly this already is the answer to a request that is sent again.
 */
export async function storeMeetSheet(
  tx: Tx,
  { sheets, scoring }: MeetContent,
  { organisationId, meetId, title }: Omit<SheetPlace, 'id'>,
  viewer: Identity,
): Promise<Imported> {
  if (!(await meets.lock(tx, organisationId, meetId))) return { userErrors: [notFound('meet', ['meetId'])] };
  const places = sheets.map(
    ({ card }, at): SheetPlace => ({
      organisationId,
      id: uuidV7(),
      meetId,
      title: titleOf(title, at, sheets.length, card.event),
    }),
  );
  const before = await meetScorings.latest(tx, organisationId, meetId);
  const there = await competitions.ofMeet(tx, organisationId, meetId);
  const combined = await combinedEvents.ofMeets(tx, organisationId, [meetId]);
  const entered = await enteredResults.ofMeet(tx, organisationId, meetId);
  const isEmpty = !before && there.length + combined.length + entered.length === 0;
  if (!isEmpty) {
    const isSame = before !== null && isScoredSo(before, scoring) && there.length === sheets.length;
    for (const [at, row] of there.entries()) {
      if (!isSame || !(await isMadeOf(tx, row, sheets[at]!, places[at]!)))
        return { userErrors: [MEET_NOT_EMPTY] };
    }
    return isSame ? { rows: there, isMeet: true, replayed: true } : { userErrors: [MEET_NOT_EMPTY] };
  }
  for (const [at, sheet] of sheets.entries()) await makeCompetition(tx, sheet, places[at]!, viewer);
  await meetScorings.add(tx, {
    organisationId,
    meetId,
    ...scoringRow(scoring),
    setBy: viewer.holder ?? '',
  });
  const rows = await competitions.ofMeet(tx, organisationId, meetId);
  return { rows, isMeet: true, replayed: false };
}

/** Numbered, so that the order of the competitions is that of the sheets. */
function titleOf(title: string, at: number, count: number, event: string): string {
  return `${title} ${String(at + 1).padStart(String(count).length, '0')}: ${event}`;
}

type SheetScoring = Omit<MeetScoringRow, 'organisationId' | 'meetId' | 'revision' | 'setBy' | 'setAt'>;

/** A sheet has one list of points, and no relays of its own: they are worth the same. */
function scoringRow({ places, scorersPerClub, nonScorers }: Scoring): SheetScoring {
  const points = places.map(formatPoints);
  return {
    preset: null,
    places: { individual: points, relay: points },
    teams: null,
    scorersPerClub,
    relaysPerClub: null,
    nonScorers,
    clubTies: 'places',
    divisions: [],
  };
}

function isScoredSo(row: MeetScoringRow, scoring: Scoring): boolean {
  const wanted = Object.entries(scoringRow(scoring)) as [keyof SheetScoring, unknown][];
  return wanted.every(([key, value]) => isDeepStrictEqual(row[key], value));
}

const MEET_NOT_EMPTY = refusal({
  code: 'MEET_NOT_EMPTY',
  path: ['meetId'],
  message: 'The meet has competitions, entered results or a scoring already, and not those of this sheet.',
  remedy: 'Make a new meet for the sheet, or import its competitions one by one.',
});
