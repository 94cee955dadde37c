import { mkdtemp, rm, chmod } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { migrate, startEmbedded } from '#persistence';
import { ApiProcess } from '../support/api-process.js';
import { staffedMeet, type StaffedMeet } from '../support/circle.js';
import type { ApiClient } from '../support/client.js';
import { onConnection, urlOf } from '../support/database.js';
import { startFloor, type Floor } from './children.js';

/** The API and the floor, each in its own process, over one database of their own. */
export interface Stage {
  readonly databaseUrl: string;
  readonly api: ApiClient;
  readonly meet: StaffedMeet;
  readonly floor: Floor;
  /** The process of the API. */
  readonly server: ApiProcess;
  close(): Promise<void>;
}

export async function setStage(): Promise<Stage> {
  const closing: (() => Promise<unknown>)[] = [];
  const close = async (): Promise<void> => {
    for (const end of closing.splice(0).reverse()) await end();
  };
  // The database's own process would outlive a run that is broken off.
  for (const signal of ['SIGINT', 'SIGTERM'] as const) {
    process.once(signal, () => void close().finally(() => process.exit(1)));
  }
  try {
    return { ...(await build(closing)), close };
  } catch (error) {
    await close();
    throw error;
  }
}

/** Adds to `closing` what has to be done in the end, the last first. */
async function build(closing: (() => Promise<unknown>)[]): Promise<Omit<Stage, 'close'>> {
  const directory = await mkdtemp(join(tmpdir(), 'sectorline-bench-'));
  closing.push(() => rm(directory, { recursive: true, force: true }));
  // Root's server runs as another account, which has to get in.
  await chmod(directory, 0o711);
  const database = await databaseIn(directory);
  closing.push(database.remove);
  const databaseUrl = database.url;
  await migrate(databaseUrl);
  const nodeParameters = (process.env['BENCH_NODE_PARAMETERS'] ?? '').split(' ').filter((one) => one !== '');
  const server = await ApiProcess.start({ databaseUrl, dataDirectory: directory, nodeParameters });
  closing.push(() => server.stop());
  const floor = await startFloor(databaseUrl);
  closing.push(() => floor.stop());
  const api = await server.client(databaseUrl);
  // Names are shown whole, as by the floor: what they cost to hide is not the question here.
  return { databaseUrl, api, meet: await staffedMeet(api, { minorsDisplay: 'FULL' }), floor, server };
}

async function databaseIn(directory: string): Promise<{ url: string; remove: () => Promise<void> }> {
  const given = process.env['DATABASE_URL'];
  if (given === undefined || given === '') {
    const server = await startEmbedded({ home: directory, revive: false });
    return { url: server.url, remove: () => server.stop() };
  }
  const name = `sectorline_bench_${process.pid}`;
  await onConnection(given, (client) => client.query(`CREATE DATABASE ${name}`));
  return {
    url: urlOf(given, name),
    remove: () =>
      onConnection(given, async (client) => void (await client.query(`DROP DATABASE ${name} WITH (FORCE)`))),
  };
}
