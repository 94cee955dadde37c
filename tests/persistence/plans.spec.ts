import { emptyDatabase, onConnection, type TestDatabase } from '../support/database.js';
import { migrate } from '#persistence';

/**
 * How the database looks things up before it has ever been analysed: on the first day of an installation, with every
 * plan made once and kept. Each lookup must use an index that fits it, not one that happens to begin alike.
 */
describe('lookups in tables that were never analysed', () => {
  let database: TestDatabase;

  beforeAll(async () => {
    database = await emptyDatabase();
    await migrate(database.url);
  });
  afterAll(() => database.drop());

  /** The conditions that the index answers; what is left over is looked for row by row. */
  async function planOf(text: string, types: readonly string[]): Promise<string> {
    return onConnection(database.url, async (client) => {
      await client.query('SET plan_cache_mode = force_generic_plan');
      await client.query(`PREPARE lookup (${types.join(', ')}) AS ${text}`);
      const nothing = types.map((type) => `NULL::${type}`).join(', ');
      const { rows } = await client.query<{ 'QUERY PLAN': string }>(`EXPLAIN EXECUTE lookup (${nothing})`);
      return rows.map((row) => row['QUERY PLAN']).join('\n');
    });
  }

  it.each([
    [
      'a competition',
      'SELECT FROM competition WHERE organisation_id = $1 AND id = $2 FOR UPDATE',
      ['uuid', 'uuid'],
    ],
    [
      'the competitions of a meet',
      'SELECT FROM competition WHERE organisation_id = $1 AND meet_id = $2',
      ['uuid', 'uuid'],
    ],
    ['a meet', 'SELECT FROM meet WHERE organisation_id = $1 AND id = $2', ['uuid', 'uuid']],
    [
      'a start list',
      'SELECT FROM competitor WHERE organisation_id = $1 AND competition_id = $2',
      ['uuid', 'uuid'],
    ],
    ['a competitor', 'SELECT FROM competitor WHERE organisation_id = $1 AND id = $2', ['uuid', 'uuid']],
    ['an athlete', 'SELECT FROM athlete WHERE organisation_id = $1 AND id = $2', ['uuid', 'uuid']],
    ['a club', 'SELECT FROM club WHERE organisation_id = $1 AND id = $2', ['uuid', 'uuid']],
    [
      'the entry before',
      'SELECT FROM journal_entry WHERE organisation_id = $1 AND competition_id = $2 AND sequence = $3',
      ['uuid', 'uuid', 'int'],
    ],
    [
      'a journal',
      'SELECT FROM journal_entry WHERE organisation_id = $1 AND competition_id = $2 AND sequence > $3',
      ['uuid', 'uuid', 'int'],
    ],
    [
      'an entry by its id',
      'SELECT FROM journal_entry WHERE organisation_id = $1 AND entry_id = $2',
      ['uuid', 'uuid'],
    ],
  ])('%s', async (_what, text, types) => {
    const plan = await planOf(text, types);
    expect(plan).toContain('Index Cond:');
    expect(plan).not.toContain('Filter:');
  });

  it('the trials of a competition, without a look at the rows', async () => {
    const plan = await planOf(
      `SELECT string_agg(trial, ',' ORDER BY sequence) FROM journal_entry
        WHERE organisation_id = $1 AND competition_id = $2 AND trial IS NOT NULL`,
      ['uuid', 'uuid'],
    );
    expect(plan).toContain('Index Only Scan using journal_entry_trials');
  });

  it('the other entries of a competition', async () => {
    const plan = await planOf(
      'SELECT body FROM journal_entry WHERE organisation_id = $1 AND competition_id = $2 AND trial IS NULL',
      ['uuid', 'uuid'],
    );
    expect(plan).toContain('Index Scan using journal_entry_others');
  });
});
