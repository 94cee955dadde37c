import { parseArgs } from 'node:util';
import { migrationsPending, openDatabase, startEmbedded } from '#persistence';
import { check, type CheckOptions, type Report } from './checking/check.js';
import { ASPECTS, type Aspect } from './checking/finding.js';
import type { LiveServer } from './checking/live-tables.js';
import { loadSecondCount } from './checking/second-count.js';
import { readConfig, type Config } from './platform/config.js';
import { Database } from './platform/database/database.js';
import { homeOrganisation } from './platform/database/home-organisation.js';
import { signingKey } from './platform/identity/secret.js';
import { Tokens } from './platform/identity/tokens.js';
import { uuidOf } from './platform/inputs/global-id.js';
import { uuidV7 } from './platform/inputs/uuid-v7.js';

const USAGE = `Usage: npm run --silent check-meet -- [--meet ID] [--url URL] [--second MODULE]
Looks at what is stored, while the server runs or after a restore, and changes nothing.
  --meet ID        only the competitions of this meet, with the id that the API shows
  --url URL        a running server, whose tables are compared as well
  --second MODULE  a module with a second count of sheets: in a checkout tests/reference/result.ts
Exit status: 0 all is as it must be, 3 something is not, 1 it could not be looked at.
`;

const SHORT_MINUTES = 10;

async function main(): Promise<number> {
  const { values } = parseArgs({
    options: {
      meet: { type: 'string' },
      url: { type: 'string' },
      second: { type: 'string' },
      help: { type: 'boolean' },
    },
  });
  if (values.help) {
    process.stdout.write(USAGE);
    return 0;
  }
  const meetId = values.meet === undefined ? null : uuidOf('Meet', values.meet);
  if (values.meet !== undefined && meetId === null)
    throw new Error(`${values.meet} is not the id of a meet.`);
  const config = readConfig(process.env);
  const secondCount = values.second === undefined ? null : await loadSecondCount(values.second);
  return withDatabase(config, async (database) => {
    const organisationId = await homeOrganisation(database);
    const live = values.url === undefined ? null : await liveServer(config, values.url, organisationId);
    return print(await check(database, { organisationId, meetId, secondCount, live } satisfies CheckOptions));
  });
}

/** Opens the database without bringing it up to date: what is looked at is what is there. */
async function withDatabase<T>(config: Config, work: (database: Database) => Promise<T>): Promise<T> {
  const server =
    config.databaseUrl === null
      ? await startEmbedded({ home: config.dataDirectory })
      : { url: config.databaseUrl, stop: () => Promise.resolve() };
  try {
    const source = await openDatabase({ url: server.url, applicationName: 'sectorline check' });
    try {
      if (await migrationsPending(source))
        throw new Error('The database is not up to date: npm run migrate first.');
      return await work(new Database(source));
    } finally {
      await source.destroy();
    }
  } finally {
    await server.stop();
  }
}

/** Whoever can run this has the secret; the token ends by itself. */
async function liveServer(config: Config, url: string, organisationId: string): Promise<LiveServer> {
  const tokens = new Tokens(await signingKey(config.secret, config.dataDirectory), organisationId);
  const until = Math.floor(Date.now() / 1000) + SHORT_MINUTES * 60;
  const grants = [{ role: 'admin' as const, on: null, from: null, until }];
  return {
    url,
    token: await tokens.issue({ holder: uuidV7(), organisationId, grants, label: 'check-meet' }),
  };
}

function print({ competitions, looked, findings }: Report): number {
  process.stdout.write(`${competitions} competitions\n`);
  for (const [aspect, words] of Object.entries(ASPECTS) as [Aspect, string][]) {
    const found = findings.filter((one) => one.aspect === aspect);
    const state = !looked.has(aspect) ? 'not asked for' : found.length === 0 ? 'ok' : `${found.length} WRONG`;
    process.stdout.write(`${state.padEnd(14)}${words}\n`);
    for (const { where, what } of found) process.stdout.write(`              ${where}: ${what}\n`);
  }
  return findings.length === 0 ? 0 : 3;
}

try {
  process.exitCode = await main();
} catch (error) {
  process.stderr.write(`${error instanceof Error ? error.message : String(error)}\n`);
  process.exitCode = 1;
}
