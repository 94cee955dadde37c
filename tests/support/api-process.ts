import { spawn, type ChildProcess } from 'node:child_process';
import { randomBytes } from 'node:crypto';
import { once } from 'node:events';
import { createServer, type AddressInfo } from 'node:net';
import { setTimeout as delay } from 'node:timers/promises';
import pg from 'pg';
import { Tokens } from '../../apps/api/src/platform/identity/tokens.js';
import { clientOf, type ApiClient } from './client.js';

const SOURCE = ['--conditions=source', '--import', '@swc-node/register/esm-register'];
const PATIENCE_MS = 60_000;

export interface ProcessOptions {
  /** Empty: the embedded server, with its data in `dataDirectory`. */
  readonly databaseUrl: string;
  /** Of the embedded server and the secret. */
  readonly dataDirectory: string;
  /** Parameters of Node beside those that the program needs, such as `--cpu-prof`. */
  readonly nodeParameters?: readonly string[];
}

/** The API as `npm start` runs it, in a process that can be killed and started again at the same address. */
export class ApiProcess {
  private child: ChildProcess | undefined;

  private constructor(
    readonly url: string,
    private readonly options: ProcessOptions,
    private readonly secret: string,
    private readonly port: number,
  ) {}

  /** Starts it for the first time, on whatever port is free. */
  static async start(options: ProcessOptions): Promise<ApiProcess> {
    const port = await freePort();
    const secret = randomBytes(48).toString('base64');
    const process_ = new ApiProcess(`http://127.0.0.1:${port}`, options, secret, port);
    await process_.launch();
    return process_;
  }

  /** Another instance on the same database, with the same secret, at an address of its own. */
  async twin(): Promise<ApiProcess> {
    const port = await freePort();
    const twin = new ApiProcess(`http://127.0.0.1:${port}`, this.options, this.secret, port);
    await twin.launch();
    return twin;
  }

  /** Changes with every start. */
  get pid(): number {
    const pid = this.child?.pid;
    if (pid === undefined) throw new Error('The API is not running.');
    return pid;
  }

  get isRunning(): boolean {
    return this.child?.exitCode === null && this.child.signalCode === null;
  }

  /** Starts the process and waits until it answers. */
  async launch(): Promise<void> {
    const { databaseUrl, dataDirectory, nodeParameters = [] } = this.options;
    this.child = spawn(process.execPath, [...nodeParameters, ...SOURCE, 'apps/api/src/main.ts'], {
      stdio: ['ignore', 'ignore', 'inherit'],
      env: {
        ...process.env,
        NODE_ENV: 'production',
        DATABASE_URL: databaseUrl,
        SECTORLINE_DATA: dataDirectory,
        SECTORLINE_SECRET: this.secret,
        HOST: '127.0.0.1',
        PORT: String(this.port),
        LOG_LEVEL: 'silent',
      },
    });
    if (await this.answersWithin(PATIENCE_MS)) return;
    throw new Error(this.isRunning ? 'The API does not answer.' : 'The API ended before it answered.');
  }

  /** False: it did not, or it has ended. */
  async answersWithin(patienceMs: number): Promise<boolean> {
    const deadline = Date.now() + patienceMs;
    while (this.isRunning && Date.now() < deadline) {
      if (await this.isReady()) return true;
      await delay(20);
    }
    return false;
  }

  /** Ends it at once, as a power cut would. */
  async kill(): Promise<void> {
    await this.end('SIGKILL');
  }

  /** Lets it finish and close. */
  async stop(): Promise<void> {
    if (this.isRunning) await this.end('SIGTERM');
  }

  /** A client, with tokens signed by the secret of this process. `storeUrl`: where its database is. */
  async client(storeUrl: string): Promise<ApiClient> {
    const store = new pg.Client({ connectionString: storeUrl });
    await store.connect();
    try {
      const { rows } = await store.query<{ id: string }>('SELECT id FROM organisation');
      return await clientOf(this.url, new Tokens(Buffer.from(this.secret, 'utf8'), rows[0]!.id));
    } finally {
      await store.end();
    }
  }

  private async isReady(): Promise<boolean> {
    return fetch(`${this.url}/readyz`).then(
      ({ ok }) => ok,
      () => false,
    );
  }

  private async end(signal: NodeJS.Signals): Promise<void> {
    const exited = once(this.child!, 'exit');
    process.kill(this.pid, signal);
    await exited;
  }
}

async function freePort(): Promise<number> {
  const probe = createServer().listen(0, '127.0.0.1');
  await once(probe, 'listening');
  const { port } = probe.address() as AddressInfo;
  probe.close();
  await once(probe, 'close');
  return port;
}
