import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { readFile, stat, writeFile } from 'node:fs/promises';
import { createServer, type AddressInfo } from 'node:net';
import { join } from 'node:path';
import { setTimeout as delay } from 'node:timers/promises';
import { checkDurability, openDatabase, startEmbedded, type EmbeddedServer } from '#persistence';
import { onConnection, runDirectory } from '../support/database.js';
import { otherProcess } from './other-process.js';

let homes = 0;

function newHome(): string {
  homes += 1;
  return join(runDirectory(), `embedded-${process.pid}-${homes}`);
}

async function ask<T>(url: string, query: string): Promise<T> {
  return onConnection(url, async (client) => {
    const { rows } = await client.query<{ answer: T }>(query);
    return rows[0]!.answer;
  });
}

async function postmasterOf(home: string): Promise<number> {
  return Number.parseInt(await readFile(join(home, 'postgres', 'postmaster.pid'), 'utf8'), 10);
}

function isRunning(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch {
    return false;
  }
}

describe('the embedded server', () => {
  const home = newHome();
  let server: EmbeddedServer;

  beforeEach(async () => {
    server = await startEmbedded({ home });
  });

  afterEach(() => server.stop());

  it('is there for this machine alone, and only with its password', async () => {
    expect(await ask(server.url, `SELECT current_setting('listen_addresses') AS answer`)).toBe('127.0.0.1');
    expect(await ask(server.url, `SELECT current_setting('unix_socket_directories') AS answer`)).toBe('');
    const withoutPassword = new URL(server.url);
    withoutPassword.password = 'guessed';
    await expect(ask(withoutPassword.toString(), 'SELECT 1 AS answer')).rejects.toMatchObject({
      code: '28P01',
    });
    const data = await stat(join(home, 'postgres'));
    const secret = await stat(join(home, 'postgres', 'sectorline-password'));
    expect([data.mode & 0o777, secret.mode & 0o777]).toEqual([0o700, 0o600]);
  });

  it('loses nothing that it acknowledged', async () => {
    const database = await openDatabase({ url: server.url });
    expect(await checkDurability(database)).toEqual([]);
    await database.destroy();
  });

  it('keeps text as Unicode and sorts it the same on every system', async () => {
    expect(await ask(server.url, `SELECT current_setting('server_encoding') AS answer`)).toBe('UTF8');
    expect(
      await ask(
        server.url,
        `SELECT datlocprovider::text || datlocale AS answer FROM pg_database WHERE datname = current_database()`,
      ),
    ).toBe('bC.UTF-8');
  });

  it('keeps its data from one start to the next', async () => {
    await onConnection(server.url, async (client) => {
      await client.query('CREATE TABLE kept (mark integer)');
      await client.query('INSERT INTO kept VALUES (5810)');
    });
    await server.stop();
    server = await startEmbedded({ home });
    expect(server.adopted).toBe(false);
    expect(await ask(server.url, 'SELECT mark AS answer FROM kept')).toBe(5810);
  });

  it('is stopped by the last who uses it', async () => {
    const pid = await postmasterOf(home);
    const second = await startEmbedded({ home });
    expect(second.adopted).toBe(true);
    await server.stop();
    expect(await ask(second.url, 'SELECT 1 AS answer')).toBe(1);
    await second.stop();
    expect(isRunning(pid)).toBe(false);
  });

  it('is stopped in spite of others by who says so', async () => {
    const pid = await postmasterOf(home);
    const second = await startEmbedded({ home, revive: false });
    await server.stop({ evenIfShared: true });
    expect(isRunning(pid)).toBe(false);
    await second.stop();
  });

  it('is started again at the same port when it is killed', async () => {
    await onConnection(server.url, (client) =>
      client.query('CREATE TABLE IF NOT EXISTS survives AS SELECT 1 AS answer'),
    );
    const pid = await postmasterOf(home);
    process.kill(pid, 'SIGKILL');
    const deadline = Date.now() + 30_000;
    let answer: number | undefined;
    while (answer === undefined && Date.now() < deadline) {
      answer = await ask<number>(server.url, 'SELECT answer FROM survives').catch(() => delay(50, undefined));
    }
    expect(answer).toBe(1);
    expect(await postmasterOf(home)).not.toBe(pid);
  });
});

describe('the embedded server of another process', () => {
  it('outlives that process and is adopted', async () => {
    const home = newHome();
    const other = await otherProcess({ home });
    expect(other.answer.adopted).toBe(false);
    // The whole group, as Ctrl+C at a terminal or a closed window would.
    await other.signal('SIGKILL');
    const server = await startEmbedded({ home });
    expect(server.adopted).toBe(true);
    expect(server.url).toBe(other.answer.url);
    await server.stop();
  });

  it('is not stopped under it', async () => {
    const home = newHome();
    const server = await startEmbedded({ home });
    const other = await otherProcess({ home });
    expect(other.answer).toEqual({ url: server.url, adopted: true });
    await server.stop();
    expect(await ask(other.answer.url!, 'SELECT 1 AS answer')).toBe(1);
    const pid = await postmasterOf(home);
    await other.end();
    expect(isRunning(pid)).toBe(false);
  });

  it('is one, though two start it at the same moment', async () => {
    const home = newHome();
    const others = await Promise.all([
      otherProcess({ home }),
      otherProcess({ home }),
      startEmbedded({ home }),
    ]);
    const [first, second, third] = [others[0].answer, others[1].answer, others[2]];
    expect([first.url, second.url]).toEqual([third.url, third.url]);
    expect([first, second, third].filter(({ adopted }) => adopted === false)).toHaveLength(1);
    await Promise.all([others[0].end(), others[1].end(), others[2].stop()]);
  });
});

describe('starting the embedded server', () => {
  it('waits for the lock of a server that was killed a moment ago', async () => {
    const home = newHome();
    const other = await otherProcess({ home, revive: false });
    process.kill(await postmasterOf(home), 'SIGKILL');
    await other.signal('SIGKILL');
    const server = await startEmbedded({ home });
    expect(server.adopted).toBe(false);
    await server.stop();
  });

  it('is not held up by a number that another program has by now', async () => {
    const home = newHome();
    await (await startEmbedded({ home })).stop();
    // Of the server's own account: the number of another account's program is no lock.
    const { uid } = await stat(join(home, 'postgres'));
    const bystander = spawn('sleep', ['600'], process.getuid?.() === 0 ? { uid, cwd: '/' } : {});
    await once(bystander, 'spawn');
    const lock = `${bystander.pid}\n${join(home, 'postgres')}\n1700000000\n1\n\n127.0.0.1\n\nready   \n`;
    await writeFile(join(home, 'postgres', 'postmaster.pid'), lock);
    try {
      const starting = startEmbedded({ home, patienceMs: 8_000 });
      if (process.platform === 'linux') {
        await (await starting).stop();
        expect(isRunning(bystander.pid!)).toBe(true);
      } else {
        // Elsewhere nothing says whose the number is.
        await expect(starting).rejects.toMatchObject({ fault: 'LOCKED' });
      }
    } finally {
      bystander.kill('SIGKILL');
    }
  });

  it('says what to do when the port that was asked for is taken', async () => {
    const taker = createServer().listen(0, '127.0.0.1');
    await once(taker, 'listening');
    const { port } = taker.address() as AddressInfo;
    const starting = startEmbedded({ home: newHome(), port, patienceMs: 500 });
    await expect(starting).rejects.toMatchObject({
      fault: 'LOCKED',
      message: expect.stringContaining(`Port ${port} is taken`),
    });
    await expect(starting).rejects.toThrow('set DATABASE_URL');
    taker.close();
  });

  it('repeats what the server said when it does not start', async () => {
    const starting = startEmbedded({ home: newHome(), settings: { no_such_setting: '1' } });
    await expect(starting).rejects.toMatchObject({
      name: 'EmbeddedError',
      fault: 'START_FAILED',
      message: expect.stringContaining('no_such_setting'),
    });
  });

  it('names both versions when the data was made by another one', async () => {
    const home = newHome();
    await (await startEmbedded({ home })).stop();
    await writeFile(join(home, 'postgres', 'PG_VERSION'), '12\n');
    await expect(startEmbedded({ home })).rejects.toMatchObject({
      fault: 'OTHER_VERSION',
      message: expect.stringMatching(/made by PostgreSQL 12, and this is PostgreSQL \d+/),
    });
  });
});
