import { randomUUID } from 'node:crypto';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { openDatabase } from '#persistence';
import { Database } from '../../apps/api/src/platform/database/database.js';
import { homeOrganisation } from '../../apps/api/src/platform/database/home-organisation.js';
import { Tokens } from '../../apps/api/src/platform/identity/tokens.js';
import { migratedDatabase, onConnection } from '../support/database.js';
import { closeCode, rawSocket } from '../support/listening.js';
import { Program, READY } from '../support/program.js';

const SECRET = 'only for the tests that stop a server';

async function organisationIn(url: string): Promise<string> {
  const database = new Database(await openDatabase({ url }));
  try {
    return await homeOrganisation(database);
  } finally {
    await database.source.destroy();
  }
}

describe('A server that is told to stop', () => {
  it('answers what it has begun, says good-bye to those who listen, takes nothing new and ends', async () => {
    const stored = await migratedDatabase();
    const data = await mkdtemp(join(tmpdir(), 'stop-'));
    const organisationId = await organisationIn(stored.url);
    const grants = [{ role: 'admin', on: null, from: null, until: null } as const];
    const token = await new Tokens(Buffer.from(SECRET), organisationId).issue({
      holder: randomUUID(),
      organisationId,
      grants,
      label: 'test',
    });
    const program = Program.start(data, { DATABASE_URL: stored.url, SECTORLINE_SECRET: SECRET });
    const [, url = ''] = await program.says(READY);
    const headers = { 'content-type': 'application/json', authorization: `Bearer ${token}` };
    const send = async (query: string): Promise<any> =>
      (await fetch(`${url}/graphql`, { method: 'POST', headers, body: JSON.stringify({ query }) })).json();

    const create = (name: string): string =>
      `mutation { meetCreate(input: { name: "${name}", startsOn: "2026-05-30", timeZone: "UTC", rules: WA }) { meet { id } } }`;
    const { data: made } = await send(create('Stopped'));
    const sockets = await Promise.all(Array.from({ length: 20 }, () => rawSocket(url)));
    const farewells = Promise.all(sockets.map((socket) => closeCode(socket)));
    await onConnection(stored.url, async (other) => {
      // Somebody else holds the table, so the mutation is under way when the signal comes.
      await other.query('BEGIN; LOCK TABLE meet IN SHARE MODE');
      const begun = send(
        `mutation { meetPublish(input: { meetId: "${made.meetCreate.meet.id}" }) { meet { isPublished } } }`,
      );
      await waiting(stored.url);
      const ended = program.end('SIGTERM');
      expect(new Set(await farewells)).toEqual(new Set([1001]));
      await expect(refusing(`${url}/livez`)).resolves.toBe(true);
      await other.query('COMMIT');
      expect(await begun).toEqual({ data: { meetPublish: { meet: { isPublished: true } } } });
      expect(await ended).toBe(0);
    });
    await stored.drop();
    await rm(data, { recursive: true, force: true });
  }, 120_000);
});

/** Resolves when some statement waits for a lock. */
async function waiting(url: string): Promise<void> {
  await onConnection(url, async (client) => {
    const sql = `SELECT count(*)::int AS n FROM pg_stat_activity WHERE datname = current_database() AND wait_event_type = 'Lock'`;
    while ((await client.query<{ n: number }>(sql)).rows[0]?.n === 0)
      await new Promise((again) => setTimeout(again, 20));
  });
}

/** Resolves once nobody is let in any more. */
async function refusing(url: string): Promise<boolean> {
  for (;;) {
    const response = await fetch(url, { headers: { connection: 'close' } }).catch(() => null);
    if (response === null) return true;
    await response.text();
    await new Promise((again) => setTimeout(again, 20));
  }
}
