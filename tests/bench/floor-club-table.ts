import type pg from 'pg';

/**
 * The least that makes a table of clubs: the start lists and journals of the meet row by row as `pg` gives them, the
 * best mark of each, the points of the places added up. Level marks get a place each, failures decide nothing,
 * corrections are not looked for.
 */
export async function floorClubTable(pool: pg.Pool, globalId: string, meetId: string): Promise<object> {
  const competitors = await pool.query<Competitor>({ ...COMPETITORS, values: [meetId] });
  const entries = await pool.query<Entry>({ ...ENTRIES, values: [meetId] });
  const best = new Map<string, number>();
  for (const { body } of entries.rows) {
    const mark = body.mark ?? (body.outcome === 'cleared' ? body.height! : 0);
    if (mark > (best.get(body.competitor) ?? 0)) best.set(body.competitor, mark);
  }
  const fields = new Map<string, Competitor[]>();
  for (const one of competitors.rows) {
    const field = fields.get(one.competition);
    if (field) field.push(one);
    else fields.set(one.competition, [one]);
  }
  const points = new Map<string, number>();
  for (const field of fields.values()) addPoints(points, field, best);
  const combined = [...points]
    .sort((a, b) => b[1] - a[1])
    .map(([club, sum], at) => ({ place: at + 1, club, points: String(sum) }));
  return { data: { meet: { id: globalId, clubTable: { isProvisional: true, combined } } } };
}

interface Competitor {
  readonly id: string;
  readonly competition: string;
  readonly club: string;
}

interface Entry {
  readonly body: {
    readonly competitor: string;
    readonly mark?: number | null;
    readonly outcome: string;
    readonly height?: number;
  };
}

const PLACES = [10, 8, 6, 5, 4, 3, 2, 1];
const SCORERS = 2;

function addPoints(
  points: Map<string, number>,
  field: Competitor[],
  best: ReadonlyMap<string, number>,
): void {
  const ranked = field.sort((a, b) => (best.get(b.id) ?? 0) - (best.get(a.id) ?? 0));
  const scorers = new Map<string, number>();
  let place = 0;
  for (const { club } of ranked) {
    const count = (scorers.get(club) ?? 0) + 1;
    scorers.set(club, count);
    const worth = count > SCORERS ? 0 : (PLACES[place++] ?? 0);
    points.set(club, (points.get(club) ?? 0) + worth);
  }
}

const COMPETITORS = {
  name: 'club_table_competitors',
  text: `SELECT competitor.id, competition_id AS competition, listed_club AS club
           FROM competitor JOIN competition ON competition.id = competition_id
          WHERE meet_id = $1 ORDER BY competition_id, position`,
};
const ENTRIES = {
  name: 'club_table_entries',
  text: `SELECT entry_id, body, verdict, authority, actor, competition_id
           FROM journal_entry JOIN competition ON competition.id = competition_id
          WHERE meet_id = $1 ORDER BY competition_id, sequence`,
};
