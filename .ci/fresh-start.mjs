// Starts the program as a newcomer would, on a folder that does not exist yet: asks what the explorer shows first, kills
// everything at once, starts again and asks again. Argument: a folder for the data, which is left for the caller to
// remove.
import { spawn } from 'node:child_process';
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

/** The answer to the query with which the explorer opens. */
async function ask({ printed }) {
  const address = /^Sectorline answers at (\S+)$/m.exec(printed)?.[1];
  const explorer = /^ *(\S+\?query=\S+)$/m.exec(printed)?.[1];
  const query = explorer && new URL(explorer).searchParams.get('query');
  if (!address || !query) throw new Error(`No address, or no query to begin with:\n${printed}`);
  const response = await fetch(address, {
    method: 'POST',
    headers: { 'content-type': 'application/json', accept: 'application/json' },
    body: JSON.stringify({ query }),
  });
  const answer = await response.json();
  if (answer.errors || !answer.data) throw new Error(`The first query failed: ${JSON.stringify(answer)}`);
  return JSON.stringify(answer.data);
}

/** The database servers that run on the data: their process ids. */
async function databaseServers() {
  if (!existsSync(data)) return [];
  const files = await readdir(data, { recursive: true });
  const found = files.filter((file) => file.endsWith('postmaster.pid'));
  const texts = await Promise.all(found.map((file) => readFile(join(data, file), 'utf8')));
  return texts.map((text) => Number.parseInt(text, 10)).filter(isRunning);
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

let running = await start();
try {
  const before = await ask(running);
  console.log(`    first start: ${running.seconds.toFixed(1)} s (aim 10 s)`);
  await killEverything(running);
  running = await start();
  const after = await ask(running);
  console.log(`    start after everything was killed: ${running.seconds.toFixed(1)} s (aim 4 s)`);
  if (after !== before) throw new Error(`Before the kill: ${before}\nafter it: ${after}`);
  await stop(running);
  console.log(`    answered alike both times: ${after.slice(0, 200)}`);
} catch (error) {
  await killEverything(running).catch(() => undefined);
  throw error;
}
