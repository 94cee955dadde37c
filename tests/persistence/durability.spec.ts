import { checkDurability, openDatabase, type Database } from '#persistence';
import { migratedDatabase, type TestDatabase } from '../support/database.js';

describe('the durability of a server', () => {
  let database: TestDatabase;

  beforeAll(async () => {
    database = await migratedDatabase();
  });

  afterAll(() => database.drop());

  async function faultsWith(settings: string): Promise<string[]> {
    const open: Database = await openDatabase({
      url: `${database.url}?options=${encodeURIComponent(settings)}`,
    });
    try {
      return (await checkDurability(open)).map(({ setting }) => setting);
    } finally {
      await open.destroy();
    }
  }

  it('is endangered where a commit does not wait for the disk', async () => {
    expect(await faultsWith('-c synchronous_commit=off')).toContain('synchronous_commit');
    expect(await faultsWith('-c synchronous_commit=on')).not.toContain('synchronous_commit');
  });
});
