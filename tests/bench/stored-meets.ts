import type pg from 'pg';
import { readGlobalId } from '../../apps/api/src/platform/inputs/global-id.js';
import { discusSheet, staffedCompetition, staffedMeet } from '../support/circle.js';
import { onConnection } from '../support/database.js';
import { numbersFrom, plannedTrials, seriesOf } from '../support/planned-trials.js';
import { columnsOf, copyCompetition, globalId } from './competition-copies.js';
import type { Stage } from './stage.js';

/** Of every competition of a meet. */
const FIELD = 30;
const CLUBS = 12;
/** Each of the sheets is copied so often into each meet, which makes forty competitions with 1,200 competitors. */
const COPIES = 10;

/**
 * Fills the database with scored meets that are alike: forty finals each, ten of a high jump, with every trial in.
 * Nothing of them has been read by the API. Gives their ids as the API shows them.
 */
export async function storeMeets({ api, databaseUrl }: Stage, count: number): Promise<string[]> {
  const source = await staffedMeet(api, { minorsDisplay: 'FULL' });
  const competitions: string[] = [];
  for (const sheet of sheetsOf()) {
    const { id } = await staffedCompetition(api, source, sheet);
    competitions.push(readGlobalId(id)!.uuid);
  }
  await api.data(
    `mutation ($input: MeetScoringSetInput!) { meetScoringSet(input: $input) { userErrors { code } } }`,
    { input: { meetId: source.id, preset: 'EIGHT_PLACES', scorersPerClub: 2 } },
    source.director,
  );
  return onConnection(databaseUrl, async (client) => {
    await copyMeet(client, readGlobalId(source.id)!.uuid, count);
    for (const id of competitions) {
      await copyCompetition(
        client,
        id,
        `SELECT gen_random_uuid() AS id, meet.id AS meet_id, title || ' ' || n AS title
           FROM competition, bench_meet AS meet, generate_series(1, ${COPIES}) AS n WHERE competition.id = '${id}'`,
      );
    }
    // Rows that were just written are marked as committed by whoever reads them first.
    await client.query('VACUUM ANALYZE');
    const { rows } = await client.query<{ id: string }>(
      `SELECT ${globalId('Meet', 'id')} AS id FROM bench_meet ORDER BY id`,
    );
    return rows.map(({ id }) => id);
  });
}

async function copyMeet(client: pg.Client, id: string, count: number): Promise<void> {
  await client.query(
    `CREATE TABLE bench_meet AS SELECT gen_random_uuid() AS id FROM generate_series(1, ${count})`,
  );
  for (const [table, key] of [
    ['meet', 'id'],
    ['meet_scoring', 'meet_id'],
  ] as const) {
    const columns = (await columnsOf(client, table)).map((name) => (name === key ? 'copy.id' : `t.${name}`));
    await client.query(
      `INSERT INTO ${table} SELECT ${columns.join(', ')} FROM ${table} AS t, bench_meet AS copy WHERE t.${key} = '${id}'`,
    );
  }
}

/** A discus, a shot, a long jump with winds and a high jump. */
function sheetsOf(): object[] {
  return [
    discusSheet(0, { competitors: competitorsOf(thrownSeries(1)) }),
    discusSheet(0, { event: 'shot', competitors: competitorsOf(thrownSeries(2)) }),
    discusSheet(0, { event: 'long-jump', competitors: competitorsOf(withWinds(thrownSeries(3))) }),
    discusSheet(0, { event: 'high-jump', heights: HEIGHTS, competitors: competitorsOf(jumpedSeries(4)) }),
  ];
}

/** Three rounds of all, and three more of the eight who go on. */
function thrownSeries(seed: number): Record<string, string[]> {
  const series = seriesOf(plannedTrials(FIELD, 6, seed));
  const bestOf = (bib: string): readonly string[] =>
    series[bib]!.slice(0, 3)
      .filter((cell) => /\d/.test(cell))
      .sort()
      .reverse();
  const ranked = Object.keys(series).sort((a, b) => (String(bestOf(a)) < String(bestOf(b)) ? 1 : -1));
  for (const bib of ranked.slice(8)) series[bib]!.length = 3;
  return series;
}

function competitorsOf(series: Readonly<Record<string, string[]>>): object[] {
  return Object.entries(series).map(([bib, cells]) => ({
    bib,
    name: `Given${bib} Family${bib}`,
    club: `Club ${Number(bib) % CLUBS}`,
    series: cells,
  }));
}

/** Marks of a long jump, each with its wind. */
function withWinds(series: Readonly<Record<string, string[]>>): Record<string, string[]> {
  return Object.fromEntries(
    Object.entries(series).map(([bib, cells]) => [
      bib,
      cells.map((cell) => (/\d/.test(cell) ? `${cell[0]}.${cell[1]}${cell[3]} +1.2` : cell)),
    ]),
  );
}

/** Twelve heights. */
export const HEIGHTS = Array.from({ length: 12 }, (_, at) => `1.${50 + at * 4}`);

/** The series of thirty high jumpers: the higher the bar the more failures, until there are three. */
export function jumpedSeries(seed: number): Record<string, string[]> {
  const next = numbersFrom(seed);
  const series: Record<string, string[]> = {};
  for (let bib = 1; bib <= FIELD; bib += 1) {
    const [cells, best]: [string[], number] = [[], 2 + Math.floor(next() * 5)];
    for (let height = 0; height < HEIGHTS.length && cells.at(-1) !== 'XXX'; height += 1) {
      const failures = Math.floor((next() * 3 * (height + 1)) / best);
      cells.push(failures >= 3 ? 'XXX' : `${'X'.repeat(failures)}O`);
    }
    series[bib] = cells;
  }
  return series;
}
