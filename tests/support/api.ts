import { randomBytes } from 'node:crypto';
import type { AddressInfo } from 'node:net';
import type { NestFastifyApplication } from '@nestjs/platform-fastify';
import { openDatabase } from '#persistence';
import { createApplication } from '../../apps/api/src/application.js';
import { Database } from '../../apps/api/src/platform/database/database.js';
import { ErasureLog } from '../../apps/api/src/platform/erasures/erasure-log.js';
import { homeOrganisation } from '../../apps/api/src/platform/database/home-organisation.js';
import type { ExplorerOptions } from '../../apps/api/src/platform/graphql/explorer.js';
import { Tokens } from '../../apps/api/src/platform/identity/tokens.js';
import { Log } from '../../apps/api/src/platform/log.js';
import type { LiveTransport } from '../../apps/api/src/platform/live/live-transport.js';
import type { WebFiles } from '../../apps/api/src/platform/web/web-files.js';
import { clientOf, type ApiClient } from './client.js';
import { migratedDatabase } from './database.js';

export type { GraphqlAnswer } from './client.js';

/** A running API on a fresh database, reached over HTTP like any client reaches it. */
export interface TestApi extends ApiClient {
  readonly url: string;
  readonly tokens: Tokens;
  readonly app: NestFastifyApplication;
  readonly databaseUrl: string;
  readonly database: Database;
  /** What the server has logged so far, one JSON object a line. */
  readonly logged: () => readonly string[];
  close(): Promise<void>;
}

export interface TestApiOptions {
  /** Leads the API to its database by another way. */
  readonly through?: (databaseUrl: string) => Promise<string>;
  readonly explorer?: ExplorerOptions | null;
  /** Pages beside the API. */
  readonly web?: WebFiles;
  readonly isDemo?: boolean;
  readonly publicIsOpen?: boolean;
  readonly erasures?: ErasureLog;
  /** An instance on this one's database, with the same key. Close it first. */
  readonly beside?: TestApi;
  /** How it hears of other instances; by default it does not. */
  readonly live?: (databaseUrl: string, log: Log) => LiveTransport;
}

export async function startApi(options: TestApiOptions = {}): Promise<TestApi> {
  const stored = options.beside
    ? { url: options.beside.databaseUrl, drop: () => Promise.resolve() }
    : await migratedDatabase();
  const address = options.through ? await options.through(stored.url) : stored.url;
  const database = new Database(
    await openDatabase({ url: address, connectionTimeoutMs: 2_000, applicationName: 'sectorline test' }),
  );
  const tokens = options.beside?.tokens ?? new Tokens(randomBytes(32), await homeOrganisation(database));
  const lines: string[] = [];
  const log = new Log('debug', (line) => lines.push(line));
  const app = await createApplication({
    database,
    tokens,
    log,
    explorer: options.explorer ?? null,
    ...(options.web && { web: options.web }),
    ...(options.live && { live: options.live(stored.url, log) }),
    ...(options.erasures && { erasures: options.erasures }),
    publicIsOpen: options.publicIsOpen ?? false,
    ...{ isDemo: options.isDemo ?? false, trustedProxies: ['127.0.0.1'] },
  });
  await app.listen(0, '127.0.0.1');
  const { port } = app.getHttpServer().address() as AddressInfo;
  const url = `http://127.0.0.1:${port}`;
  return {
    ...(await clientOf(url, tokens)),
    url,
    tokens,
    app,
    databaseUrl: stored.url,
    database,
    logged: () => lines,
    close: async () => {
      await app.close();
      await database.source.destroy();
      await stored.drop();
    },
  };
}
