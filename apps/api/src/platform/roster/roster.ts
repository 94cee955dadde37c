import {
  athletes,
  clubs,
  competitors,
  type AthleteRow,
  type CompetitionRow,
  type CompetitorRow,
  type MeetRow,
  type Reads,
} from '#persistence';
import { displayName, fullName } from './display-name.js';

/** One line of a start list with everything that is known of it. `name` and `athlete` are for officials only. */
export interface RosterLine {
  readonly competitor: CompetitorRow;
  readonly athlete: AthleteRow | null;
  /** What the public sees of the name. */
  readonly displayName: string;
  readonly name: string | null;
  readonly club: string | null;
}

/** A competition and the meet that decides how much of a name is shown. */
export interface Staged {
  readonly competition: CompetitionRow;
  readonly meet: MeetRow;
}

/** The start lists of competitions of one organisation, each in its order. Three statements, however many they are. */
export async function rostersOf(at: Reads, staged: readonly Staged[]): Promise<RosterLine[][]> {
  const organisationId = staged[0]?.meet.organisationId;
  if (organisationId === undefined) return [];
  const ids = staged.map(({ competition }) => competition.id);
  const rows = await competitors.ofCompetitions(at, organisationId, ids);
  const describe = await describer(at, organisationId, rows);
  return staged.map(({ competition, meet }) =>
    rows.filter((row) => row.competitionId === competition.id).map((row) => describe(row, meet)),
  );
}

export async function rosterOf(at: Reads, staged: Staged): Promise<RosterLine[]> {
  const [roster] = await rostersOf(at, [staged]);
  return roster ?? [];
}

/** One line of a start list, for a competitor that is at hand. */
export async function rosterLine(at: Reads, competitor: CompetitorRow, meet: MeetRow): Promise<RosterLine> {
  const describe = await describer(at, meet.organisationId, [competitor]);
  return describe(competitor, meet);
}

type Describe = (competitor: CompetitorRow, meet: MeetRow) => RosterLine;

async function describer(
  at: Reads,
  organisationId: string,
  rows: readonly CompetitorRow[],
): Promise<Describe> {
  const athleteIds = present(rows.map((row) => row.athleteId));
  const clubIds = present(rows.map((row) => row.clubId));
  const athletesById = byId(
    athleteIds.length > 0 ? await athletes.byIds(at, organisationId, athleteIds) : [],
  );
  const clubsById = byId(clubIds.length > 0 ? await clubs.byIds(at, organisationId, clubIds) : []);
  return (competitor, meet) => {
    const athlete = (competitor.athleteId !== null && athletesById.get(competitor.athleteId)) || null;
    const club = (competitor.clubId !== null && clubsById.get(competitor.clubId)) || null;
    return {
      competitor,
      athlete,
      displayName: displayName({ competitor, athlete }, meet),
      name: fullName({ competitor, athlete }),
      club: club?.name ?? competitor.listedClub,
    };
  };
}

function byId<T extends { readonly id: string }>(rows: readonly T[]): ReadonlyMap<string, T> {
  return new Map(rows.map((row) => [row.id, row]));
}

function present(ids: readonly (string | null)[]): string[] {
  return [...new Set(ids.filter((id) => id !== null))];
}
