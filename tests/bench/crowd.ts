/**
 * A crowd of subscribers in a process of its own. Says "ready" when everybody is there, reads when each version was
 * published, and answers who saw what and how long it took.
 */
import { once } from 'node:events';
import { createInterface } from 'node:readline';
import { setTimeout as delay } from 'node:timers/promises';
import { WebSocket } from 'ws';

export interface CrowdOrder {
  readonly url: string;
  readonly subscribers: number;
  /** What each says first, one message after the other's answer; empty: it only listens. */
  readonly greetings: readonly string[];
  /** Of so many nothing is read any more once all are there. */
  readonly stalled: number;
}

export interface CrowdReport {
  readonly p50: number;
  readonly p99: number;
  /** Subscribers that read and have the newest version. */
  readonly newest: number;
  readonly received: number;
  /** Of one message. */
  readonly bytes: number;
  /** How often somebody was sent something older than before. */
  readonly backwards: number;
}

interface Published {
  readonly newest: number;
  /** By version, in milliseconds since the epoch. */
  readonly at: Readonly<Record<string, number>>;
}

const VERSION = /"version":(\d+)/;
const PATIENCE_MS = 15_000;
const AT_ONCE = 100;

const order = JSON.parse(process.argv[2]!) as CrowdOrder;
const seen = new Int32Array(order.subscribers).fill(-1);
const arrivals: [version: number, atMs: number][] = [];
let backwards = 0;
let bytes = 0;
const sockets: WebSocket[] = [];

async function join(at: number): Promise<void> {
  const socket = new WebSocket(order.url, 'graphql-transport-ws', { perMessageDeflate: false });
  sockets.push(socket);
  await once(socket, 'open');
  const [first, ...others] = order.greetings;
  if (first !== undefined) {
    socket.send(first);
    await once(socket, 'message');
  }
  for (const greeting of others) socket.send(greeting);
  socket.on('message', (data: Buffer) => {
    const version = Number(VERSION.exec(data.subarray(0, 200).toString('latin1'))?.[1] ?? -1);
    if (version < 0) return;
    arrivals.push([version, performance.timeOrigin + performance.now()]);
    if (version < seen[at]!) backwards += 1;
    seen[at] = version;
    bytes = data.length;
  });
}

for (let at = 0; at < order.subscribers; at += AT_ONCE)
  await Promise.all(
    Array.from({ length: Math.min(AT_ONCE, order.subscribers - at) }, (_, index) => join(at + index)),
  );
if (order.greetings.length > 0) while (seen.some((version) => version < 0)) await delay(20);
for (const socket of sockets.slice(0, order.stalled)) socket.pause();
arrivals.length = 0;
process.stdout.write('ready\n');

const [line] = (await once(createInterface({ input: process.stdin }), 'line')) as [string];
const published = JSON.parse(line) as Published;
const reading = seen.subarray(order.stalled);
const deadline = Date.now() + PATIENCE_MS;
while (reading.some((version) => version < published.newest) && Date.now() < deadline) await delay(20);

const waits = arrivals
  .flatMap(([version, atMs]) => {
    const from = published.at[version];
    return from === undefined ? [] : [atMs - from];
  })
  .sort((a, b) => a - b);
const nth = (share: number): number =>
  waits[Math.min(waits.length - 1, Math.floor(waits.length * share))] ?? NaN;
const report: CrowdReport = {
  p50: nth(0.5),
  p99: nth(0.99),
  newest: reading.filter((version) => version === published.newest).length,
  received: waits.length,
  bytes,
  backwards,
};
process.stdout.write(`${JSON.stringify(report)}\n`);
for (const socket of sockets) socket.terminate();
process.exit(0);
