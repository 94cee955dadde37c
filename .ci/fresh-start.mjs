// What a newcomer does: starts the program on a folder that does not exist yet, opens the table of the running
// competition, records an attempt, kills everything at once, starts again and finds the attempt there.
// Argument: a folder for the data, which is left for the caller to remove.
import { spawn } from 'node:child_process';
import { randomUUID } from 'node:crypto';
import { once } from 'node:events';
import { existsSync } from 'node:fs';
import { readdir, readFile } from 'node:fs/promises';
import { createServer } from 'node:net';
import { join } from 'node:path';
import { setTimeout as delay } from 'node:timers/promises';

const data = process.argv[2];
const PATIENCE_MS = 120_000;

async function freePort() {
  const server = createServer().listen(0, '127.0.0.1');
  await once(server, 'listening');
  const { port } = server.address();
  server.close();
  await once(server, 'close');
  return port;
}

/** Starts the program in a process group of its own; resolves with what it prints once it answers. */
async function start() {
  const from = performance.now();
  const env = { ...process.env, SECTORLINE_DATA: data, PORT: String(await freePort()), DATABASE_URL: '' };
  const child = spawn('npm', ['start'], { env, detached: true, stdio: ['ignore', 'pipe', 'inherit'] });
  let printed = '';
  child.stdout.setEncoding('utf8').on('data', (text) => (printed += text));
  while (!/^Stop with/m.test(printed)) {
    if (child.exitCode !== null) throw new Error(`npm start ended with ${child.exitCode}:\n${printed}`);
    if (performance.now() - from > PATIENCE_MS) throw new Error(`npm start is not ready:\n${printed}`);
    await delay(20);
  }
  return { child, printed, seconds: (performance.now() - from) / 1000 };
}

/** What a newcomer reads off the terminal. */
function printedBy({ printed }) {
  const address = /^Sectorline answers at (\S+)$/m.exec(printed)?.[1];
  const explorer = /^ *(\S+\?query=\S+)$/m.exec(printed)?.[1];
  const query = explorer && new URL(explorer).searchParams.get('query');
  const token = /^ *official +(\S+)$/m.exec(printed)?.[1];
  if (!address || !query || !token) throw new Error(`No address, no first query or no token:\n${printed}`);
  return { address, query, token };
}

async function ask(running, query, variables = {}) {
  const { address, token } = printedBy(running);
  const response = await fetch(address, {
    method: 'POST',
    headers: {
      'content-type': 'application/json',
      accept: 'application/json',
      authorization: `Bearer ${token}`,
    },
    body: JSON.stringify({ query, variables }),
  });
  const answer = await response.json();
  if (answer.errors || !answer.data) throw new Error(`${query}\nfailed: ${JSON.stringify(answer)}`);
  return answer.data;
}

/** The answer to the query with which the explorer opens: the table of the competition that is going on. */
async function table(running) {
  return JSON.stringify(await ask(running, printedBy(running).query));
}

/** A foul of whoever is up, entered as the official at the circle would. */
async function recordAttempt(running) {
  const competitionId = /competition\(id: "([^"]+)"/.exec(printedBy(running).query)?.[1];
  const { competition } = await ask(
    running,
    'query ($id: ID!) { competition(id: $id) { progress { up { competitor round } } } }',
    { id: competitionId },
  );
  const { competitor, round } = competition.progress.up;
  const { attemptRecord } = await ask(
    running,
    `mutation ($input: AttemptRecordInput!) {
      attemptRecord(input: $input) { entry { standing } userErrors { code message } }
    }`,
    { input: { competitionId, competitorId: competitor, round, entryId: randomUUID(), outcome: 'FOUL' } },
  );
  if (attemptRecord.entry?.standing !== 'ACCEPTED') throw new Error(JSON.stringify(attemptRecord));
}

/** The database servers that run on the data: their process ids. */
async function databaseServers() {
  if (!existsSync(data)) return [];
  const files = await readdir(data, { recursive: true });
  const found = files.filter((file) => file.endsWith('postmaster.pid'));
  const texts = await Promise.all(found.map((file) => readFile(join(data, file), 'utf8').catch(() => '')));
  return texts.map((text) => Number.parseInt(text, 10)).filter((pid) => pid > 0 && isRunning(pid));
}

function isRunning(pid) {
  try {
    process.kill(pid, 0);
    return true;
  } catch {
    return false;
  }
}

async function killEverything({ child }) {
  const servers = await databaseServers();
  process.kill(-child.pid, 'SIGKILL');
  for (const pid of servers) process.kill(pid, 'SIGKILL');
  if (child.exitCode === null && child.signalCode === null) await once(child, 'exit');
}

/** A stop that was asked for leaves nothing running. */
async function stop({ child }) {
  process.kill(-child.pid, 'SIGTERM');
  if (child.exitCode === null && child.signalCode === null) await once(child, 'exit');
  for (let waits = 0; (await databaseServers()).length > 0; waits += 1) {
    if (waits > 200) throw new Error('The database still runs after the program was stopped.');
    await delay(50);
  }
}

/** Runs a command of the program over the data in `folder`; throws what it prints when it fails. */
async function command(folder, ...words) {
  const env = { ...process.env, SECTORLINE_DATA: folder, DATABASE_URL: '' };
  const child = spawn('npm', ['run', '--silent', ...words], { env, stdio: ['ignore', 'pipe', 'pipe'] });
  let printed = '';
  for (const stream of [child.stdout, child.stderr])
    stream.setEncoding('utf8').on('data', (text) => (printed += text));
  const [status] = await once(child, 'close');
  if (status !== 0) throw new Error(`npm run ${words.join(' ')} ended with ${status}:\n${printed}`);
}

/** A backup of the running program comes back in another folder, and there all is as it must be. */
async function rehearseRestore(running) {
  const from = performance.now();
  const file = join(data, 'rehearsal.backup');
  const spare = join(data, 'spare');
  const second = ['--second', 'tests/reference/result.ts'];
  await command(data, 'check-meet', '--', '--url', new URL(printedBy(running).address).origin, ...second);
  await command(data, 'backup', '--', file);
  await command(spare, 'restore', '--', file);
  await command(spare, 'check-meet', '--', ...second);
  console.log(`    backup, restore, check: ${((performance.now() - from) / 1000).toFixed(1)} s`);
}

let running = await start();
for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP']) {
  process.once(signal, () => void killEverything(running).finally(() => process.exit(1)));
}
try {
  console.log(`    first start: ${running.seconds.toFixed(1)} s (aim 10 s)`);
  const fresh = await table(running);
  await recordAttempt(running);
  const recorded = await table(running);
  if (recorded === fresh) throw new Error(`The attempt changed nothing in ${fresh}`);
  await killEverything(running);
  running = await start();
  console.log(`    start after everything was killed: ${running.seconds.toFixed(1)} s (aim 4 s)`);
  const found = await table(running);
  if (found !== recorded) throw new Error(`Before the kill: ${recorded}\nafter it: ${found}`);
  await rehearseRestore(running);
  await stop(running);
  console.log('    an attempt was recorded, changed the table, and was there after the kill');
} catch (error) {
  await killEverything(running).catch(() => undefined);
  throw error;
}
