import { randomBytes, randomUUID } from 'node:crypto';
import type { AddressInfo } from 'node:net';
import type { NestFastifyApplication } from '@nestjs/platform-fastify';
import { openDatabase } from '#persistence';
import { createApplication } from '../../apps/api/src/application.js';
import { Database } from '../../apps/api/src/platform/database/database.js';
import { homeOrganisation } from '../../apps/api/src/platform/database/home-organisation.js';
import type { ExplorerOptions } from '../../apps/api/src/platform/graphql/explorer.js';
import type { Grant, Role } from '../../apps/api/src/platform/identity/grant.js';
import { Tokens } from '../../apps/api/src/platform/identity/tokens.js';
import { readGlobalId } from '../../apps/api/src/platform/inputs/global-id.js';
import { Log } from '../../apps/api/src/platform/log.js';
import { migratedDatabase } from './database.js';

export interface GraphqlAnswer {
  readonly status: number;
  readonly data: any;
  readonly errors:
    | readonly { message: string; path?: readonly (string | number)[]; extensions: any }[]
    | undefined;
}

/** A running API on a fresh database, reached over HTTP like any client reaches it. */
export interface TestApi {
  readonly url: string;
  readonly graphqlUrl: string;
  readonly app: NestFastifyApplication;
  readonly databaseUrl: string;
  readonly database: Database;
  readonly organisationId: string;
  readonly adminToken: string;
  /** What the server has logged so far, one JSON object a line. */
  readonly logged: () => readonly string[];
  /** A token with one grant; `on` is an id as the API shows it. */
  token(role: Role, on?: string, window?: { from?: number; until?: number }): Promise<string>;
  /** Sends a document by POST; without a token as the public. */
  send(query: string, variables?: object, token?: string | null): Promise<GraphqlAnswer>;
  /** The same for an answer that must hold data and no error. */
  data(query: string, variables?: object, token?: string | null): Promise<any>;
  close(): Promise<void>;
}

export interface TestApiOptions {
  /** Leads the API to its database by another way. */
  readonly through?: (databaseUrl: string) => Promise<string>;
  readonly explorer?: ExplorerOptions | null;
}

export async function startApi(options: TestApiOptions = {}): Promise<TestApi> {
  const stored = await migratedDatabase();
  const url = options.through ? await options.through(stored.url) : stored.url;
  const database = new Database(
    await openDatabase({ url, connectionTimeoutMs: 2_000, applicationName: 'sectorline test' }),
  );
  const organisationId = await homeOrganisation(database);
  const tokens = new Tokens(randomBytes(32), organisationId);
  const lines: string[] = [];
  const log = new Log('debug', (line) => lines.push(line));
  const app = await createApplication({ database, tokens, log, explorer: options.explorer ?? null });
  await app.listen(0, '127.0.0.1');
  const { port } = app.getHttpServer().address() as AddressInfo;
  const baseUrl = `http://127.0.0.1:${port}`;
  const issue = (grant: Grant): Promise<string> =>
    tokens.issue({ holder: randomUUID(), organisationId, grants: [grant], label: `test ${grant.role}` });
  const adminToken = await issue({ role: 'admin', on: null, from: null, until: null });
  const send = sender(`${baseUrl}/graphql`);
  return {
    url: baseUrl,
    graphqlUrl: `${baseUrl}/graphql`,
    app,
    databaseUrl: stored.url,
    database,
    organisationId,
    adminToken,
    logged: () => lines,
    token: (role, on, window) =>
      issue({
        role,
        on: on === undefined ? null : (readGlobalId(on)?.uuid ?? on),
        from: window?.from ?? null,
        until: window?.until ?? null,
      }),
    send,
    data: async (query, variables, token) => {
      const answer = await send(query, variables, token);
      if (answer.errors) throw new Error(`The API answered with errors: ${JSON.stringify(answer.errors)}`);
      return answer.data;
    },
    close: async () => {
      await app.close();
      await database.source.destroy();
      await stored.drop();
    },
  };
}

function sender(graphqlUrl: string): TestApi['send'] {
  return async (query, variables = {}, token = null) => {
    const response = await fetch(graphqlUrl, {
      method: 'POST',
      headers: {
        'content-type': 'application/json',
        accept: 'application/graphql-response+json',
        ...(token !== null && { authorization: `Bearer ${token}` }),
      },
      body: JSON.stringify({ query, variables }),
    });
    const { data, errors } = (await response.json()) as Pick<GraphqlAnswer, 'data' | 'errors'>;
    return { status: response.status, data, errors };
  };
}
