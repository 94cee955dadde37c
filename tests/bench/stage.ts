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
  close(): Promise<void>;
}

export async function setStage(): Promise<Stage> {
  const directory = await mkdtemp(join(tmpdir(), 'sectorline-bench-'));
  // Root's server runs as another account, which has to get in.
  await chmod(directory, 0o711);
  const database = await databaseIn(directory);
  await migrate(database.url);
  const nodeParameters = (process.env['BENCH_NODE_PARAMETERS'] ?? '').split(' ').filter((one) => one !== '');
  const process_ = await ApiProcess.start({
    databaseUrl: database.url,
    dataDirectory: directory,
    nodeParameters,
  });
  const floor = await startFloor(database.url);
  const api = await process_.client(database.url);
  return {
    databaseUrl: database.url,
    api,
    // Names are shown whole, as to the floor: what they cost to hide is not the question here.
    meet: await staffedMeet(api, { minorsDisplay: 'FULL' }),
    floor,
    close: async () => {
      await process_.stop();
      await floor.stop();
      await database.remove();
      await rm(directory, { recursive: true, force: true });
    },
  };
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
