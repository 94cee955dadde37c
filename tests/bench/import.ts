import { randomUUID } from 'node:crypto';
import { parse } from 'csv-parse/sync';
import pg from 'pg';
import { headersFor } from './fairness.js';
import { absolute, againstFloor, type Measure } from './measure.js';
import { SCALE } from './scale.js';
import type { Stage } from './stage.js';

const LINES = 10_000;
const ON_RECORD = 10_000;
const COMPETITIONS = 20;
const MOST_MS = 3000;
/** The floor compares nobody with anybody. */
const TARGET = 0.05;

const DRY_RUN = `mutation ($input: EntriesImportInput!) { entriesImport(input: $input) {
  entryCount newAthleteCount fingerprint athleteQuestions { line name } clubQuestions { name }
  userErrors { code message }
} }`;

/**
 * A dry run of ten thousand entries against as many athletes on record: read, everybody looked for among those known
 * and those further up, tried on the start lists. A third of the lines name somebody who is on record, a third
 * somebody with a letter more, a third somebody new. The floor reads the same bytes with csv-parse and asks the
 * database once which of the names it knows; it runs in this process, so that nothing is sent.
 */
export async function measureImport({ api, databaseUrl, meet }: Stage): Promise<Measure[]> {
  const pool = new pg.Pool({ connectionString: databaseUrl, max: 1 });
  try {
    const titles = await makeCompetitions(api, meet);
    const names = await storeAthletes(pool);
    const bytes = Buffer.from(tableOf(titles, names));
    const [ours, floor]: [number[], number[]] = [[], []];
    for (let round = 0; round <= SCALE.rounds; round += 1) {
      const took = [
        await timed(() => dryRun(api.graphqlUrl, meet, bytes)),
        await timed(() => floorOf(pool, bytes)),
      ];
      // The first round warms both up.
      if (round > 0) [ours, floor].forEach((side, at) => side.push(took[at]!));
    }
    const perSecond = (all: readonly number[]): number[] => all.map((ms) => 1000 / ms);
    return [
      absolute('import', 'ms', ours, MOST_MS),
      againstFloor('import', 'dry runs/s', {
        values: perSecond(ours),
        floor: perSecond(floor),
        target: TARGET,
      }),
    ];
  } finally {
    await pool.end();
  }
}

async function timed(work: () => Promise<void>): Promise<number> {
  const from = performance.now();
  await work();
  return performance.now() - from;
}

async function dryRun(url: string, meet: Stage['meet'], bytes: Buffer): Promise<void> {
  const input = { meetId: meet.id, isDryRun: true, csv: { base64: bytes.toString('base64') } };
  const body = JSON.stringify({ query: DRY_RUN, variables: { input } });
  const response = await fetch(url, { method: 'POST', body, headers: headersFor(meet.director) });
  const text = await response.text();
  const { data } = JSON.parse(text) as { data?: any };
  const { entryCount, userErrors, athleteQuestions } = data?.entriesImport ?? {};
  if (entryCount !== LINES || userErrors.length > 0 || athleteQuestions.length < LINES / 4) {
    throw new Error(text.slice(0, 500));
  }
}

async function floorOf(pool: pg.Pool, bytes: Buffer): Promise<void> {
  const rows = parse<Record<string, string>>(bytes, { columns: true, delimiter: ',' });
  const { rows: known } = await pool.query({
    name: 'import_floor',
    text: `SELECT athlete.* FROM athlete JOIN unnest($1::text[], $2::text[], $3::date[]) AS line (family, given, born)
             ON family_name = family AND given_name = given AND birth_date = born`,
    values: ['family_name', 'given_name', 'born'].map((column) => rows.map((row) => row[column])),
  });
  if (rows.length !== LINES || known.length < LINES / 4) throw new Error('The floor read something else.');
}

async function makeCompetitions(api: Stage['api'], meet: Stage['meet']): Promise<string[]> {
  const titles = Array.from({ length: COMPETITIONS }, (_, at) => `Import ${at}`);
  for (const title of titles) {
    await api.data(
      'mutation ($input: CompetitionCreateInput!) { competitionCreate(input: $input) { userErrors { code } } }',
      { input: { meetId: meet.id, title, event: 'DISCUS' } },
      meet.director,
    );
  }
  return titles;
}

interface Name {
  readonly given: string;
  readonly family: string;
  readonly born: string;
}

/** Ten thousand who share forty given names and have family names of their own. */
async function storeAthletes(pool: pg.Pool): Promise<Name[]> {
  const names = Array.from({ length: ON_RECORD }, (_, at): Name => {
    const day = new Date(Date.UTC(1980, 0, 1 + ((at * 37) % 12_000))).toISOString().slice(0, 10);
    return { given: syllables(at % 40, 2), family: syllables(at * 7919, 5), born: day };
  });
  const { rows } = await pool.query<{ id: string }>('SELECT id FROM organisation LIMIT 1');
  await pool.query(
    `INSERT INTO athlete (organisation_id, id, given_name, family_name, sex, birth_date)
     SELECT $1, id, given, family, 'W', born
       FROM unnest($2::uuid[], $3::text[], $4::text[], $5::date[]) AS line (id, given, family, born)`,
    [
      rows[0]!.id,
      names.map(() => randomUUID()),
      ...[names.map(({ given }) => given), names.map(({ family }) => family), names.map(({ born }) => born)],
    ],
  );
  await pool.query('ANALYZE athlete');
  return names;
}

const SYLLABLES = [
  ...[
    'ka',
    'lo',
    'mi',
    'ren',
    'sta',
    'vor',
    'eth',
    'quil',
    'bran',
    'osk',
    'ul',
    'fen',
    'dra',
    'wy',
    'han',
    'per',
  ],
];

function syllables(number: number, count: number): string {
  let rest = number + 1;
  let name = '';
  for (let at = 0; at < count; at += 1) {
    name += SYLLABLES[rest % SYLLABLES.length]!;
    rest = Math.floor(rest / SYLLABLES.length) + at * 31;
  }
  return name[0]!.toUpperCase() + name.slice(1);
}

function tableOf(titles: readonly string[], names: readonly Name[]): string {
  const lines = names.slice(0, LINES).map(({ given, family, born }, at) => {
    const [title, kind] = [titles[at % titles.length]!, at % 3];
    const written = kind === 0 ? family : kind === 1 ? `${family}s` : `${family}${syllables(at, 3)}`;
    return `${title},${written},${given},W,${born},41.${10 + (at % 90)}`;
  });
  return ['competition,family_name,given_name,sex,born,seed_mark', ...lines].join('\n');
}
