import type { NestFastifyApplication } from '@nestjs/platform-fastify';
import type { Config } from '../platform/config.js';
import { ErasureLog } from '../platform/erasures/erasure-log.js';
import { homeOrganisation } from '../platform/database/home-organisation.js';
import { ReadinessProbe } from '../platform/health/readiness.js';
import { signingKey } from '../platform/identity/secret.js';
import { Tokens } from '../platform/identity/tokens.js';
import { PostgresTransport } from '../platform/live/postgres-transport.js';
import type { Log } from '../platform/log.js';
import { Backups } from './backups.js';
import type { Running } from './banner.js';
import { Demo } from './demo.js';
import type { DemoPerson } from './demo-people.js';
import { firstAdministrator } from './first-administrator.js';
import { firstQuery } from './first-query.js';
import { findFrontEnd } from './front-end.js';
import { freePort } from './port.js';
import { findSeed } from './seed.js';
import { stopOnSignals } from './stop.js';
import { openStore, type Store } from './store.js';

/** Starts everything and says where it is to be found. Rejects with a sentence for people when it cannot. */
export async function start(config: Config, log: Log): Promise<Running> {
  // The server's modules load while the database starts: the two take about as long.
  const loading = import('../application.js');
  // Looked at below; until then a failure must not end the process without a word.
  loading.catch(() => undefined);
  const store = await openStore(config, log);
  try {
    const { createApplication } = await loading;
    const key = await signingKey(config.secret, config.dataDirectory);
    const organisationId = await homeOrganisation(store.database);
    const tokens = new Tokens(key, organisationId);
    const demo = await demoOf(config, store, organisationId, tokens);
    const posts = demo && (await demo.posts());
    const query = firstQuery(demo?.competitionId ?? null);
    const explorer = config.explorer ? { defaultQuery: query, token: () => posts?.director ?? null } : null;
    const web = await findFrontEnd();
    const app = await createApplication({
      ...{ database: store.database, tokens, log, explorer, web },
      ...{ isDemo: demo !== null, trustedProxies: config.trustedProxies },
      ...{ allowedOrigins: config.allowedOrigins, livePerAddress: config.livePerAddress },
      publicIsOpen: config.publicIsOpen,
      erasures: new ErasureLog(config.erasures),
      ...(config.liveBus === 'postgres' && { live: new PostgresTransport(store.url, log) }),
    });
    await eraseAgain(app, log);
    const backups = new Backups(store.url, config.backups, log);
    handleSignals(app, store, backups, log);
    const port = await listen(app, config);
    const url = `http://${addressOf(config.host)}:${port}`;
    const people = demo && (await finishDemo(demo, url, log));
    if (demo && people) loadSquadBeside(app, demo, { url, people, log });
    await backups.begin();
    // Where the tokens of the demonstration are shown nobody is kept out.
    const isOpen = demo !== null && !config.production;
    return {
      url,
      explorerUrl: explorer && `${url}/graphql?query=${encodeURIComponent(query)}`,
      deskUrl: web.has('/desk') ? pageAddress(`${url}/desk`, posts?.official ?? null) : null,
      officeUrl: web.has('/office') ? pageAddress(`${url}/office`, posts?.referee ?? null) : null,
      notebookUrl: web.has('/notebook') ? `${url}/notebook` : null,
      takenPort: port === config.port ? null : config.port,
      tokens: posts,
      people: isOpen ? people : null,
      firstAdministrator: isOpen ? null : await firstAdministrator(store.database, organisationId),
    };
  } catch (error) {
    await store.close();
    throw error;
  }
}

/** Before anybody is answered: a backup that was restored knows names that were erased after it was made. */
async function eraseAgain(app: NestFastifyApplication, log: Log): Promise<void> {
  const { ErasureService } = await import('../entries/erasure.service.js');
  const again = await app.get(ErasureService, { strict: false }).replay();
  if (again > 0) log.write('warn', 'athletes erased again in a restored database', { athletes: again });
}

/** A demo that does not load is a pity and no reason not to serve; the next start goes on with it. */
async function finishDemo(demo: Demo, url: string, log: Log): Promise<readonly DemoPerson[] | null> {
  try {
    if ((await demo.state()) !== 'loaded') await demo.load(url);
    await demo.enterSquad(url);
    return await demo.people();
  } catch (error) {
    log.failure('the demo could not be loaded whole; the next start goes on with it', error);
    return null;
  }
}

/** Goes on while the server serves, and ends with it. */
function loadSquadBeside(
  app: NestFastifyApplication,
  demo: Demo,
  { url, people, log }: { readonly url: string; readonly people: readonly DemoPerson[]; readonly log: Log },
): void {
  const readiness = app.get(ReadinessProbe);
  demo
    .loadSquad(url, people, () => readiness.isStopping)
    .catch((error: unknown) => {
      if (!readiness.isStopping)
        log.failure('the squad could not be loaded whole; the next start goes on with it', error);
    });
}

/** Null: not wanted here, or other meets live here already. */
async function demoOf(
  config: Config,
  { database }: Store,
  organisationId: string,
  tokens: Tokens,
): Promise<Demo | null> {
  const seed = config.demo ? await findSeed() : null;
  if (!seed) return null;
  const demo = new Demo(seed, database, organisationId, tokens);
  return (await demo.state()) === 'absent' && (await demo.isUnwanted()) ? null : demo;
}

async function listen(app: NestFastifyApplication, { host, port, portIsFixed }: Config): Promise<number> {
  const free = portIsFixed ? port : await freePort(port, host);
  if (free === null) throw new Error(`Port ${port} and the next ones are taken; set PORT to a free one.`);
  await app.listen(free, host);
  const address = app.getHttpServer().address();
  return typeof address === 'object' && address !== null ? address.port : free;
}

/** Where a browser on this machine finds a server that listens on `host`. */
function addressOf(host: string): string {
  if (host === '0.0.0.0' || host === '::') return '127.0.0.1';
  return host.includes(':') ? `[${host}]` : host;
}

/** In a fragment a token stays in the browser: it is in no log and is sent to nobody. */
function pageAddress(page: string, token: string | null): string {
  return token === null ? page : `${page}#token=${token}`;
}

function handleSignals(app: NestFastifyApplication, store: Store, backups: Backups, log: Log): void {
  const server = {
    refuseWork: () => app.get(ReadinessProbe).stop(),
    closeServer: () => app.close(),
    cutConnections: () => app.getHttpServer().closeAllConnections(),
    closeStore: () => {
      backups.stop();
      return store.close();
    },
  };
  stopOnSignals(server, log);
}
