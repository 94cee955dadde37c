import { spawnSync } from 'node:child_process';
import { chmod, mkdtemp, readdir, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as delay } from 'node:timers/promises';
import pg from 'pg';

/** The directory of the run, for its workers; the embedded server starts in there when the first test asks for it. */
export const RUN_DIRECTORY = 'SECTORLINE_TEST_RUN';

const PREFIX = 'sectorline-test-';

/** Before the first test file. */
export async function begin() {
  await sweepInterruptedRuns();
  const directory = await mkdtemp(join(tmpdir(), `${PREFIX}${process.pid}-`));
  // Root's server runs as another account, which has to get in.
  await chmod(directory, 0o711);
  process.env[RUN_DIRECTORY] = directory;
}

/** After the last one. */
export async function end() {
  const directory = process.env[RUN_DIRECTORY];
  if (directory === undefined) return;
  if (process.env.DATABASE_URL) await dropDatabases(process.env.DATABASE_URL, databasePrefix(directory));
  await discard(directory);
}

/** Begins the name of every database of one run. */
export function databasePrefix(directory) {
  const name = directory.split(/[/\\]/).at(-1) ?? '';
  return `${name.toLowerCase().replace(/[^a-z0-9]/g, '_')}_`;
}

/** A run that was broken off has left its server running and its directory behind. */
async function sweepInterruptedRuns() {
  for (const name of await readdir(tmpdir())) {
    const owner = /^sectorline-test-(\d+)-/.exec(name)?.[1];
    if (owner !== undefined && !isRunning(Number(owner))) await discard(join(tmpdir(), name));
  }
}

async function discard(directory) {
  for (const home of await readdir(directory).catch(() => []))
    await stopServer(join(directory, home, 'postgres'));
  await rm(directory, { recursive: true, force: true, maxRetries: 5 }).catch(() => undefined);
}

async function stopServer(dataDir) {
  const file = await readFile(join(dataDir, 'postmaster.pid'), 'utf8').catch(() => '');
  const pid = Number.parseInt(file, 10);
  // A number that has gone to another program by now must not be hit.
  if (!(pid > 0) || !isServerOf(pid, dataDir)) return;
  process.kill(pid, 'SIGINT');
  for (let waits = 0; waits < 200 && isRunning(pid); waits += 1) await delay(50);
}

function isServerOf(pid, dataDir) {
  const { stdout } = spawnSync('ps', ['-o', 'args=', '-p', String(pid)], { encoding: 'utf8' });
  return (stdout ?? '').includes(dataDir);
}

function isRunning(pid) {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return error.code === 'EPERM';
  }
}

async function dropDatabases(url, prefix) {
  const client = new pg.Client({ connectionString: url });
  await client.connect();
  const { rows } = await client.query('SELECT datname FROM pg_database WHERE starts_with(datname, $1)', [
    prefix,
  ]);
  for (const { datname } of rows)
    await client.query(`DROP DATABASE ${pg.escapeIdentifier(datname)} WITH (FORCE)`);
  await client.end();
}
