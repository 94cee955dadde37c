import { athletes, competitors, type CompetitorRow, type JournalBody, type Tx } from '#persistence';
import { isAboutList, type AnyEntry } from '#rules';
import { fold } from '../platform/competition/kinds.js';
import { loadCompetition, type LoadedCompetition } from '../platform/competition/loaded.js';
import { notFound } from '../platform/errors/outcomes.js';
import { refusal, type Refusal } from '../platform/errors/user-error.types.js';
import { rosterLine } from '../platform/roster/roster.js';
import type { StartListService } from '../entries/start-list.service.js';
import type { ListDetails } from './entry-request.js';

/*
 * Entries about the start list: the rules decide them like any other entry, on the list as it would be; then the list
 * is changed in the same transaction. Callers hold the competition's lock.
 */

/** As many as a sheet may hold. */
const MOST_COMPETITORS = 2000;

/** A late entry with a bib that nobody has and a flight that there is; every other body as it is. */
export function asListed(body: JournalBody, { roster }: LoadedCompetition): JournalBody {
  if (body.kind !== 'late-entry') return body;
  const worn = new Set(roster.map(({ competitor }) => competitor.bib));
  const flights = roster.flatMap(({ competitor }) => competitor.flight ?? []);
  const flight = flights.find((one) => one === body.flight) ?? flights.at(-1) ?? null;
  return { ...body, bib: freeBib(body.bib, worn), flight };
}

/** `12`, and where somebody wears it already `12/2`. */
function freeBib(bib: string, worn: ReadonlySet<string>): string {
  let free = bib;
  for (let number = 2; worn.has(free); number++) free = `${bib}/${number}`;
  return free;
}

/** The competition with the line that a late entry brings, in which it is decided. */
export async function withNewLine(
  tx: Tx,
  loaded: LoadedCompetition,
  entry: AnyEntry,
  details: ListDetails,
): Promise<LoadedCompetition> {
  if (entry.kind !== 'late-entry') return loaded;
  const line = await rosterLine(tx, newLine(loaded, entry, details), loaded.meet);
  const roster = [...loaded.roster, line];
  return { ...loaded, ...fold(loaded.row, roster, loaded.state.journal), roster };
}

/** What speaks against a change, beside the rules. */
export async function listProblem(
  tx: Tx,
  { row, roster }: LoadedCompetition,
  entry: AnyEntry,
  { athleteId }: ListDetails,
): Promise<Refusal | null> {
  if (entry.kind === 'late-entry') return roster.length < MOST_COMPETITORS ? null : LIST_FULL;
  if (entry.kind !== 'match') return null;
  const line = roster.find(({ competitor }) => competitor.id === entry.competitor);
  if (line && line.competitor.athleteId !== null) return ALREADY_MATCHED;
  if (athleteId === null || athleteId === undefined)
    return line && !line.competitor.isUnmatched ? ALREADY_MATCHED : null;
  if (!(await athletes.find(tx, row.organisationId, athleteId))) return notFound('athlete', ['athleteId']);
  return roster.some(({ competitor }) => competitor.athleteId === athleteId) ? ALREADY_ENTERED : null;
}

/** Changes the list as an accepted entry says, and reads the competition with it. */
export async function withList(
  tx: Tx,
  after: LoadedCompetition,
  entry: AnyEntry,
  details: ListDetails,
  list: StartListService,
): Promise<LoadedCompetition> {
  if (!isAboutList(entry.kind)) return after;
  await change(tx, after, entry, details, list);
  return loadCompetition(tx, after.row);
}

async function change(
  tx: Tx,
  { row, roster }: LoadedCompetition,
  entry: AnyEntry,
  details: ListDetails,
  list: StartListService,
): Promise<void> {
  const { organisationId } = row;
  switch (entry.kind) {
    case 'late-entry': {
      const line = roster.find(({ competitor }) => competitor.id === entry.competitor)!;
      return list.addLate(tx, line.competitor, entry.actor);
    }
    case 'match':
      await competitors.update(
        tx,
        organisationId,
        entry.competitor,
        await matched(tx, organisationId, details),
      );
      return;
    case 'bibs':
      for (const { competitor, bib } of entry.bibs)
        await competitors.update(tx, organisationId, competitor, { bib });
      return;
    case 'flight': {
      const rows = roster.map(({ competitor }) => competitor);
      await competitors.arrange(tx, organisationId, row.id, inFlight(rows, entry.competitor, entry.flight));
      return list.noteOrder(tx, row, { holder: entry.actor });
    }
    default:
      return;
  }
}

function newLine(
  { row, roster }: LoadedCompetition,
  { competitor: id, bib, flight }: Extract<AnyEntry, { kind: 'late-entry' }>,
  { listedName, listedClub }: ListDetails,
): CompetitorRow {
  return {
    ...{ organisationId: row.organisationId, id, competitionId: row.id, bib, flight, guest: false },
    ...{ athleteId: null, listedName: listedName ?? null, listedClub: listedClub ?? null, clubId: null },
    position: 1 + Math.max(0, ...roster.map(({ competitor }) => competitor.position)),
    ...{ implementGrams: null, seedMark: null, written: null, isUnmatched: true },
  };
}

/** A competitor is for the club of the athlete; without one the club that was written down stays. */
async function matched(
  tx: Tx,
  organisationId: string,
  { athleteId }: ListDetails,
): Promise<Partial<CompetitorRow>> {
  if (athleteId === null || athleteId === undefined) return { isUnmatched: false };
  const clubId = (await athletes.find(tx, organisationId, athleteId))?.clubId ?? null;
  return {
    athleteId,
    isUnmatched: false,
    listedName: null,
    ...(clubId !== null && { clubId, listedClub: null }),
  };
}

/** The list with one competitor behind the others of a flight. */
function inFlight(rows: readonly CompetitorRow[], id: string, flight: string): CompetitorRow[] {
  const others = rows.filter((row) => row.id !== id);
  const after = 1 + others.findLastIndex((row) => row.flight === flight);
  const moved = rows.filter((row) => row.id === id).map((row) => ({ ...row, flight }));
  return [...others.slice(0, after), ...moved, ...others.slice(after)];
}

const LIST_FULL = refusal({
  code: 'LIST_FULL',
  message: `A competition has at most ${MOST_COMPETITORS} competitors.`,
  remedy: 'Make another competition, such as a second group.',
});

const ALREADY_MATCHED = refusal({
  code: 'ALREADY_MATCHED',
  path: ['competitorId'],
  message: 'Who the competitor is stands already.',
  remedy: 'If it is somebody else, move the trials to the right line.',
});

const ALREADY_ENTERED = refusal({
  code: 'ALREADY_ENTERED',
  path: ['athleteId'],
  message: 'The athlete is on the start list already, on another line.',
  remedy: 'Move the trials to that line, and mark this one as not started.',
});
