import {
  athletes,
  clubs,
  combinedEntrants,
  combinedEvents,
  combinedJournal,
  competitions,
  meets,
  type AthleteRow,
  type CombinedEntrantRow,
  type CombinedEntryRow,
  type CombinedEventRow,
  type MeetRow,
  type Reads,
} from '#persistence';
import {
  combinedProgramme,
  restoreCombined,
  type CombinedEntry,
  type CombinedEventCode,
  type CombinedEventState,
  type CombinedItem,
  type CombinedTable,
} from '#rules';
import type { CompetitionMemory } from '../platform/competition/competition-memory.js';
import type { LoadedCompetition } from '../platform/competition/loaded.js';
import { displayName, fullName } from '../platform/roster/display-name.js';
import { linkedComponent, type ComponentProblem } from './linked-component.js';

/** An entrant with everything that is known. `name` is for those who work at the meet. */
export interface EntrantLine {
  readonly entrant: CombinedEntrantRow;
  readonly displayName: string;
  readonly name: string | null;
  readonly club: string | null;
}

/** A combined event at one moment, and what its journal and its linked competitions come to. */
export interface LoadedCombined {
  readonly row: CombinedEventRow;
  readonly meet: MeetRow;
  readonly entrants: readonly EntrantLine[];
  readonly linked: ReadonlyMap<CombinedEventCode, LoadedCompetition>;
  readonly problems: ReadonlyMap<CombinedEventCode, readonly ComponentProblem[]>;
  readonly state: CombinedEventState;
  /** When the latest entry of its own journal was recorded. */
  readonly changedAt: Date | null;
}

/**
 * Reads everything about several combined events of one organisation, with a fixed number of statements beside the
 * competitions that have changed. `at` must be one moment: a snapshot, or the transaction that holds the lock.
 */
export async function loadCombined(
  at: Reads,
  rows: readonly CombinedEventRow[],
  memory: CompetitionMemory,
): Promise<LoadedCombined[]> {
  const organisationId = rows[0]?.organisationId;
  if (organisationId === undefined) return [];
  const ids = rows.map(({ id }) => id);
  const meetIds = [...new Set(rows.map(({ meetId }) => meetId))];
  const meetsById = new Map((await meets.byIds(at, organisationId, meetIds)).map((meet) => [meet.id, meet]));
  const entrants = await combinedEntrants.ofEvents(at, organisationId, ids);
  const describe = await describer(at, organisationId, entrants);
  const links = await combinedEvents.linksOf(at, organisationId, ids);
  const competitionIds = [...new Set(links.map(({ competitionId }) => competitionId))];
  const competing = await competitionsOf(at, organisationId, competitionIds, memory);
  const entries = await combinedJournal.readAll(at, organisationId, ids);
  return rows.map((row) => {
    const meet = meetsById.get(row.meetId);
    if (!meet) throw new Error(`Combined event ${row.id} has no meet.`);
    const own = <T extends { readonly combinedEventId: string }>(all: readonly T[]): T[] =>
      all.filter(({ combinedEventId }) => combinedEventId === row.id);
    const linked = new Map(
      own(links).map(({ event, competitionId }) => [event, competing.get(competitionId)!] as const),
    );
    return folded(
      { row, meet, linked },
      own(entrants).map((entrant) => describe(entrant, meet)),
      own(entries),
    );
  });
}

async function competitionsOf(
  at: Reads,
  organisationId: string,
  ids: readonly string[],
  memory: CompetitionMemory,
): Promise<Map<string, LoadedCompetition>> {
  const loaded = new Map<string, LoadedCompetition>();
  if (ids.length === 0) return loaded;
  for (const row of await competitions.byIds(at, organisationId, ids)) {
    const competition = await memory.locked(at, row);
    memory.remember(competition);
    loaded.set(row.id, competition);
  }
  return loaded;
}

function folded(
  stored: Pick<LoadedCombined, 'row' | 'meet' | 'linked'>,
  entrants: readonly EntrantLine[],
  entries: readonly CombinedEntryRow[],
): LoadedCombined {
  const rows = entrants.map(({ entrant }) => entrant);
  const components = [...stored.linked].map(
    ([event, competition]) => [event, linkedComponent(competition, rows)] as const,
  );
  const { rules, edition, ties } = stored.row;
  const state = restoreCombined(
    {
      ...{ rules, edition, ties, table: tableOf(stored.row) },
      entrants: rows.map(({ id: key, bib, guest }) => ({ key, bib, guest })),
      linked: new Map(components.map(([event, { component }]) => [event, component])),
    },
    entries.map(itemOf),
  );
  const latest = entries.at(-1)?.recordedAt;
  return {
    ...stored,
    entrants,
    state,
    problems: new Map(components.map(([event, { problems }]) => [event, problems])),
    changedAt: latest === undefined ? null : new Date(latest),
  };
}

/** The programme. What is stored was checked when the combined event was made. */
export function tableOf({ programme, scoredBy }: CombinedEventRow): CombinedTable {
  const table = combinedProgramme(programme, scoredBy);
  if (!table) throw new Error(`No ${programme} is scored by the tables for ${scoredBy}.`);
  return table;
}

function itemOf(row: CombinedEntryRow): CombinedItem {
  const entry: CombinedEntry = { id: row.entryId, by: row.authority, actor: row.actor, ...row.body };
  return { entry, hold: row.verdict.standing === 'held' ? row.verdict.hold.code : null };
}

async function describer(
  at: Reads,
  organisationId: string,
  rows: readonly CombinedEntrantRow[],
): Promise<(entrant: CombinedEntrantRow, meet: MeetRow) => EntrantLine> {
  const athleteIds = present(rows.map(({ athleteId }) => athleteId));
  const clubIds = present(rows.map(({ clubId }) => clubId));
  const people = athleteIds.length > 0 ? await athletes.byIds(at, organisationId, athleteIds) : [];
  const known = clubIds.length > 0 ? await clubs.byIds(at, organisationId, clubIds) : [];
  const athletesById = new Map<string | null, AthleteRow>(people.map((one) => [one.id, one]));
  const clubsById = new Map<string | null, string>(known.map(({ id, name }) => [id, name]));
  return (entrant, meet) => {
    const named = { competitor: entrant, athlete: athletesById.get(entrant.athleteId) ?? null };
    return {
      entrant,
      displayName: displayName(named, meet),
      name: fullName(named),
      club: clubsById.get(entrant.clubId) ?? entrant.listedClub,
    };
  };
}

function present(ids: readonly (string | null)[]): string[] {
  return [...new Set(ids.filter((id) => id !== null))];
}
