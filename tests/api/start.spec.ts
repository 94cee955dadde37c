import { once } from 'node:events';
import { mkdtemp, rm } from 'node:fs/promises';
import { createServer, type AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { migratedDatabase, onConnection } from '../support/database.js';
import { Program, READY } from '../support/program.js';

const LOADED = '{ meets(first: 10) { edges { node { name competitions { title status } } } } }';

async function ask(url: string, query: string): Promise<any> {
  const response = await fetch(`${url}/graphql`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ query }),
  });
  return response.json();
}

describe('npm start', () => {
  let data: string;
  const running: Program[] = [];
  const start = (environment?: Readonly<Record<string, string>>): Program => {
    const program = Program.start(data, environment);
    running.push(program);
    return program;
  };

  beforeAll(async () => {
    data = await mkdtemp(join(tmpdir(), 'start-'));
  });
  afterAll(async () => {
    for (const program of running) await program.end('SIGTERM');
    await rm(data, { recursive: true, force: true });
  });

  it('loads the demo once, also when it was killed while loading, and ends when told to', async () => {
    const killed = start({ LOG_LEVEL: 'debug' });
    // The demo has begun: its first requests are in the log.
    await killed.says(/"message":"request"/);
    await killed.end('SIGKILL');

    const resumed = start();
    const [, url = ''] = await resumed.says(READY);
    const { data: first } = await ask(url, LOADED);
    expect(first.meets.edges).toHaveLength(1);
    expect(first.meets.edges[0].node.competitions.length).toBeGreaterThan(2);
    expect((await fetch(`${url}/readyz`)).status).toBe(200);
    for (const role of ['director', 'referee', 'official', 'admin'])
      expect(resumed.output).toMatch(new RegExp(`${role} +ey`));
    const [explorer = ''] = /http:\S+\?query=\S+/.exec(resumed.output) ?? [];
    const answer = await fetch(explorer, { headers: { accept: 'application/json' } });
    expect(await answer.json()).not.toHaveProperty('errors');
    expect(await resumed.end('SIGTERM')).toBe(0);

    const again = start();
    const [, later = ''] = await again.says(READY);
    expect((await ask(later, LOADED)).data).toEqual(first);
    expect(await again.end('SIGINT')).toBe(0);
  }, 180_000);

  it('takes the next free port and says so', async () => {
    const blocker = createServer().listen(0, '127.0.0.1');
    await once(blocker, 'listening');
    const { port } = blocker.address() as AddressInfo;
    const program = start({ PORT: String(port) });
    await program.says(READY);
    expect(program.output).toContain(`Port ${port} is taken by another program`);
    expect(await program.end('SIGTERM')).toBe(0);
    blocker.close();
  }, 120_000);

  it('ends with a sentence when it cannot start', async () => {
    const program = start({ PORT: 'here' });
    await once(program.process, 'exit');
    expect([program.process.exitCode, program.errors]).toEqual([
      1,
      expect.stringContaining('PORT must be a number'),
    ]);
  }, 60_000);

  it('refuses in production to acknowledge what a power cut could take back', async () => {
    const database = await migratedDatabase();
    const name = new URL(database.url).pathname.slice(1);
    await onConnection(database.url, (client) =>
      client.query(`ALTER DATABASE ${name} SET synchronous_commit = off`),
    );
    const program = start({ NODE_ENV: 'production', DATABASE_URL: database.url });
    await once(program.process, 'exit');
    expect([program.process.exitCode, program.errors]).toEqual([
      1,
      expect.stringContaining('synchronous_commit is off'),
    ]);
    await database.drop();
  }, 60_000);
});
