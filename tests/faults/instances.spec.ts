import { once } from 'node:events';
import { createConnection, createServer, type AddressInfo, type Server, type Socket } from 'node:net';
import { join } from 'node:path';
import { createClient, type Client } from 'graphql-ws';
import { WebSocket } from 'ws';
import { Circle } from '../support/at-the-circle.js';
import { ApiProcess } from '../support/api-process.js';
import { discusSheet } from '../support/circle.js';
import { migratedDatabase, runDirectory, type TestDatabase } from '../support/database.js';
import { LIVE_TABLE } from '../support/listening.js';
import { cutBus, eventually } from '../support/live.js';
import { plannedTrials } from '../support/planned-trials.js';

const IS_LONG = process.env['LONG'] === '1';
const CROWD = IS_LONG ? 5_000 : 60;
const COMPETITORS = 12;
const PATIENCE_MS = IS_LONG ? 300_000 : 90_000;

/** The simplest of balancers: a new connection goes to the next instance that takes it. */
class Balancer {
  private readonly open = new Set<Socket>();
  private turn = 0;

  private constructor(
    private readonly server: Server,
    private readonly ports: readonly number[],
  ) {}

  static async over(instances: readonly ApiProcess[]): Promise<Balancer> {
    const server = createServer();
    const balancer = new Balancer(
      server,
      instances.map(({ url }) => Number(new URL(url).port)),
    );
    server.on('connection', (socket) => balancer.lead(socket, instances.length));
    server.listen(0, '127.0.0.1', 5_000);
    await once(server, 'listening');
    return balancer;
  }

  get url(): string {
    return `http://127.0.0.1:${(this.server.address() as AddressInfo).port}`;
  }

  close(): void {
    this.server.close();
    for (const socket of this.open) socket.destroy();
  }

  private lead(socket: Socket, triesLeft: number): void {
    this.open.add(socket);
    socket.on('close', () => this.open.delete(socket));
    socket.on('error', () => socket.destroy());
    this.turn += 1;
    const port = this.ports[this.turn % this.ports.length]!;
    const behind = createConnection({ port, host: '127.0.0.1' });
    behind.once('connect', () => {
      behind.pipe(socket).pipe(behind);
      socket.once('close', () => behind.destroy());
    });
    behind.on('error', () => {
      if (behind.connecting || triesLeft <= 1) socket.destroy();
      else this.lead(socket, triesLeft - 1);
    });
    behind.once('close', () => socket.destroy());
  }
}

/** Somebody who listens as an app does, and comes back by himself. */
class Listener {
  version = -1;
  backwards = 0;
  private readonly client: Client;

  constructor(url: string, id: string) {
    this.client = createClient({
      url: `${url.replace(/^http/, 'ws')}/graphql`,
      webSocketImpl: WebSocket,
      retryAttempts: 1_000,
      shouldRetry: () => true,
      retryWait: async (tries) => {
        // Spread out, so that a server that comes back is not run over.
        await new Promise((resolve) =>
          setTimeout(resolve, Math.random() * Math.min(4_000, 250 * 2 ** tries)),
        );
      },
    });
    this.client.subscribe<any>(
      { query: LIVE_TABLE, variables: { id, since: null } },
      {
        next: ({ data }) => {
          const { version } = data.competitionTable;
          if (version < this.version) this.backwards += 1;
          this.version = version;
        },
        error: () => undefined,
        complete: () => undefined,
      },
    );
  }

  async close(): Promise<void> {
    await this.client.dispose();
  }
}

let stored: TestDatabase;
let instances: ApiProcess[];
let balancer: Balancer;
beforeAll(async () => {
  process.env['LIVE_PER_ADDRESS'] = '20000';
  stored = await migratedDatabase();
  const dataDirectory = join(runDirectory(), `instances-${process.pid}`);
  const first = await ApiProcess.start({ databaseUrl: stored.url, dataDirectory });
  instances = [first, await first.twin()];
  balancer = await Balancer.over(instances);
}, PATIENCE_MS);
afterAll(async () => {
  balancer.close();
  for (const instance of instances) if (instance.isRunning) await instance.kill();
  await stored.drop();
});

it(
  'a crowd behind two instances ends with the newest table, though one is killed and the bus is cut',
  async () => {
    const [one, other] = instances as [ApiProcess, ApiProcess];
    const circle = await Circle.open(await one.client(stored.url), discusSheet(COMPETITORS));
    const crowd = Array.from({ length: CROWD }, () => new Listener(balancer.url, circle.competition.id));
    const all = (version: number) =>
      eventually(
        () => crowd.filter((listener) => listener.version === version).length,
        (count) => count === CROWD,
      );
    let { version } = await circle.read();
    expect(await all(version)).toBe(CROWD);
    const tookMs: number[] = [];
    const trials = plannedTrials(COMPETITORS, 3, 1);
    for (const [at, { bib, round, cell }] of trials.entries()) {
      if (at === 8) await other.kill();
      if (at === 16) await cutBus(stored.url);
      if (at === 24) await other.launch();
      const from = performance.now();
      version = (await circle.record(Number(bib), round, cell)).competition.version;
      tookMs.push(performance.now() - from);
    }
    expect(await all(version)).toBe(CROWD);
    expect(crowd.reduce((sum, { backwards }) => sum + backwards, 0)).toBe(0);
    if (IS_LONG) {
      const p99 = tookMs.sort((a, b) => a - b)[Math.floor(tookMs.length * 0.99)];
      process.stderr.write(`recording among ${CROWD} who come back: p99 ${p99?.toFixed(0)} ms\n`);
    }
    await Promise.all(crowd.map((listener) => listener.close()));
  },
  PATIENCE_MS,
);
