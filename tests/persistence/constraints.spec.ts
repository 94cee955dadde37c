import { randomUUID } from 'node:crypto';
import pg from 'pg';
import { openDatabase } from '#persistence';
import { migratedDatabase, type TestDatabase } from '../support/database.js';
import { PROCEEDINGS_CASES, proceedingsBefore, soundProceedings } from './proceedings-cases.js';
import { ACCESS_CASES, ACCESS_IMPLIED, accessScenery, soundAccess } from './access-cases.js';
import { CALLING_CASES, callingScenery, GROUP, IMPLIED, soundCallings } from './calling-cases.js';
import { COMBINED_CASES, HEPTATHLON, SOUND_COMBINED, soundCombined } from './combined-cases.js';
import { SETTING_UP_CASES, soundRows, type Columns } from './constraint-cases.js';
import { DISCUS, IMPLIED_BY_LOOK, INSPECTION_CASES, LOOK, soundInspections } from './inspection-cases.js';
import { DRAW_CASES, firstDraws, soundDraws } from './draw-cases.js';
import { FIRST, SCORING_CASES, soundScorings } from './scoring-cases.js';
import { NOTEBOOK_CASES, notebookScenery, soundNotebook } from './notebook-cases.js';
import { makeScene, type Scene } from './fixture.js';
import { RECORD_CASES, recordsBefore, soundRecords } from './record-cases.js';
import { ENTRY_CASES, entriesBefore, soundEntries } from './entry-cases.js';
import { JOURNAL_CASES, SOUND_JUMPS } from './journal-cases.js';

const CASES = [
  ...SETTING_UP_CASES,
  ...JOURNAL_CASES,
  ...SCORING_CASES,
  ...CALLING_CASES,
  ...INSPECTION_CASES,
  ...COMBINED_CASES,
  ...RECORD_CASES,
  ...DRAW_CASES,
  ...ACCESS_CASES,
  ...NOTEBOOK_CASES,
  ...ENTRY_CASES,
  ...PROCEEDINGS_CASES,
];

function allRows(scene: Scene): Readonly<Record<string, Columns>> {
  return {
    ...soundRows(scene),
    ...soundScorings(scene),
    ...soundCallings(scene),
    ...soundInspections(scene),
    ...soundCombined(scene),
    ...soundRecords(scene),
    ...soundDraws(scene),
    ...soundAccess(scene),
    ...soundNotebook(scene),
    ...soundEntries(scene),
    ...soundProceedings(scene),
  };
}

/** Journals, with the table that counts their entries and the column that names its row. */
const COUNTING: Readonly<Record<string, readonly [table: string, key: string]>> = {
  journal_entry: ['competition', 'competition_id'],
  combined_entry: ['combined_event', 'combined_event_id'],
};

describe('constraints', () => {
  let database: TestDatabase;
  let client: pg.Client;
  let scene: Scene;

  beforeAll(async () => {
    database = await migratedDatabase();
    const open = await openDatabase({ url: database.url });
    scene = await makeScene(open);
    await open.destroy();
    client = new pg.Client({ connectionString: database.url });
    await client.connect();
    await insert('entered_result', { ...soundScorings(scene)['entered_result'], id: FIRST });
    for (const [table, columns] of [
      ...callingScenery(scene),
      ...accessScenery(scene),
      ...proceedingsBefore(scene),
    ])
      await insert(table, columns);
    await insert('implement', { ...soundInspections(scene)['implement'], id: DISCUS });
    await insert('inspection', { ...soundInspections(scene)['inspection'], id: LOOK, sequence: 1 });
    const combined = soundCombined(scene);
    await insert('combined_event', { ...combined['combined_event'], id: HEPTATHLON });
    const { athleteId: athlete_id } = scene;
    await insert('combined_entrant', {
      ...combined['combined_entrant'],
      athlete_id,
      bib: '299',
      position: 99,
    });
    await client.query('BEGIN');
    for (const [table, columns] of recordsBefore(scene)) await insert(table, columns);
    await client.query('COMMIT');
    for (const [table, columns] of firstDraws(scene)) await insert(table, columns);
    for (const [table, columns] of notebookScenery(scene)) await insert(table, columns);
    for (const [table, columns] of entriesBefore(scene)) await insert(table, columns);
  });

  afterAll(async () => {
    await client.end();
    await database.drop();
  });

  beforeEach(() => client.query('BEGIN'));
  afterEach(() => client.query('ROLLBACK'));

  async function insert(table: string, columns: Columns): Promise<void> {
    await client.query('SET CONSTRAINTS ALL DEFERRED');
    const counting = COUNTING[table];
    if (counting !== undefined) {
      const [counter, key] = counting;
      await client.query(
        `UPDATE ${counter} SET last_sequence = last_sequence + 1, version = version + 1 WHERE id = $1`,
        [columns[key]],
      );
    }
    const names = Object.keys(columns);
    const places = names.map((_, index) => `$${index + 1}`);
    await client.query(
      `INSERT INTO ${table} (${names.join(', ')}) VALUES (${places.join(', ')})`,
      names.map((name) => valueFor(columns[name])),
    );
    await client.query('SET CONSTRAINTS ALL IMMEDIATE');
  }

  function valueFor(value: unknown): unknown {
    return typeof value === 'object' && value !== null ? JSON.stringify(value) : value;
  }

  it.each([
    'organisation',
    'club',
    'athlete',
    'meet',
    'competition',
    'competitor',
    'journal_entry',
    'official_result',
    'meet_scoring',
    'entered_result',
    'calling_group',
    'category_definition',
    'age_factors',
    'implement',
    'inspection',
    'check_in',
    'combined_event',
    'combined_entrant',
    'combined_link',
    'combined_entry',
    'combined_official_result',
    'combined_request',
    'starting_mark',
    'record_decision',
    'draw',
    'draw_amendment',
    'qualification',
    'qualification_group',
    'person',
    'credential',
    'role_grant',
    'role_revocation',
    'login_session',
    'refresh_token',
    'token_revocation',
    'device_link',
    'device_link_use',
    'device_link_revocation',
    'decision_request',
    'decision_confirmation',
    'practice_session',
    'practice_throw',
    'observation',
    'notebook_entry',
    'fault_change',
    'entry_terms',
    'entry_change',
    'table_import',
    'past_result',
    'result_posting',
    'protest',
    'protest_step',
  ])('let a sound row of %s in', async (table) => {
    await insert(table, allRows(scene)[table]!);
  });

  it.each(SOUND_JUMPS.map((columns) => [columns['kind'], columns] as const))(
    'let a sound %s in',
    async (_kind, columns) => {
      await insert('journal_entry', { ...allRows(scene)['journal_entry'], ...columns });
    },
  );

  it.each(SOUND_COMBINED.map((columns) => [columns['kind'], columns] as const))(
    'let a sound %s of a combined event in',
    async (_kind, columns) => {
      await insert('combined_entry', { ...allRows(scene)['combined_entry'], ...columns });
    },
  );

  it('let a high jump in with its heights, in centimetres or quarter inches', async () => {
    const terms = { combined: true, passGivesUp: 'trial', tieForFirst: 'shared' };
    const event = { event: 'pole-vault', vertical: { ...terms, heights: [288, 312, 99_999] }, unit: 'qin' };
    await insert('competition', { ...allRows(scene)['competition'], ...event });
  });

  it.each(CASES)('$constraint: $what', async ({ table, constraint, change, after, triggersOff }) => {
    if (triggersOff) await client.query(`ALTER TABLE ${table} DISABLE TRIGGER USER`);
    const row = { ...allRows(scene)[table], ...change(scene) };
    if (after !== undefined) await insert(table, { ...allRows(scene)[table], ...after });
    await expect(insert(table, row)).rejects.toMatchObject({ constraint });
  });

  it('each have a case that they refuse', async () => {
    const { rows } = await client.query<{ name: string }>(
      `SELECT conname AS name FROM pg_constraint
        WHERE connamespace = 'public'::regnamespace AND contype IN ('c', 'f', 'p', 'u')
          AND conrelid <> coalesce(to_regclass('schema_migration'), 0)`,
    );
    const implied = [...IMPLIED, ...IMPLIED_BY_LOOK, ...ACCESS_IMPLIED];
    const broken = new Set([...CASES.map(({ constraint }) => constraint), ...implied]);
    expect(rows.map(({ name }) => name).filter((name) => !broken.has(name))).toEqual([]);
  });

  it('compare bibs and positions only when the transaction ends, so that two can be exchanged', async () => {
    const [first, second] = scene.competitorIds;
    await client.query('UPDATE competitor SET bib = $2, position = 2 WHERE id = $1', [first, '102']);
    await client.query('UPDATE competitor SET bib = $2, position = 1 WHERE id = $1', [second, '101']);
    await client.query('SET CONSTRAINTS ALL IMMEDIATE');
  });

  it.each(['category_definition', 'age_factors'])('let no row of %s be changed or removed', async (table) => {
    await insert(table, { ...allRows(scene)[table], ...(table === 'age_factors' && { revision: 2 }) });
    await client.query('SAVEPOINT stored');
    for (const change of [`UPDATE ${table} SET source = 'x'`, `DELETE FROM ${table}`, `TRUNCATE ${table}`]) {
      await expect(client.query(change)).rejects.toThrow();
      await client.query('ROLLBACK TO stored');
    }
    const { rows } = await client.query(`SELECT FROM ${table} WHERE source = 'x'`);
    expect(rows).toEqual([]);
  });

  it('let no calling group change without a higher version', async () => {
    const change = 'UPDATE calling_group SET title = $2, version = version + $3 WHERE id = $1';
    await client.query(change, [GROUP, 'Shot, all ages', 1]);
    await expect(client.query(change, [GROUP, 'Shot', 0])).rejects.toMatchObject({
      constraint: 'calling_group_version_rises',
    });
  });

  it('keep what is still named from being removed', async () => {
    await expect(client.query('DELETE FROM club WHERE id = $1', [scene.clubId])).rejects.toMatchObject({
      constraint: 'athlete_club_fkey',
    });
  });

  it('let no organisation name what belongs to another', async () => {
    const other = randomUUID();
    await client.query('INSERT INTO organisation (id, name) VALUES ($1, $2)', [other, 'Elsewhere']);
    const athlete = { ...allRows(scene).athlete, organisation_id: other };
    await expect(insert('athlete', athlete)).rejects.toMatchObject({ constraint: 'athlete_club_fkey' });
  });
});
