import autocannon, { type Request } from 'autocannon';
import { text } from 'node:stream/consumers';

/** What one load is: each connection sends its requests in turn, one after the other's answer. */
export interface Load {
  readonly url: string;
  readonly headers: Readonly<Record<string, string>>;
  readonly connections: readonly (readonly LoadRequest[])[];
  /** How long, beginning again at the end of the list; `null`: each request once. */
  readonly seconds: number | null;
  /** With which status every answer comes; 200 unless said. */
  readonly status?: number;
  /** Every answer must contain this. */
  readonly mustContain: string;
}

export interface LoadRequest {
  readonly method: 'GET' | 'POST';
  readonly path: string;
  readonly body?: string;
}

export interface LoadResult {
  readonly answered: number;
  readonly perSecond: number;
  /** Mean length of an answer. */
  readonly bytes: number;
  /** The first that was not as it must be. */
  readonly wrong: string | null;
}

/** A process of its own, so that sending takes nothing from the server's: a load comes in as JSON, its result goes out. */
const load = JSON.parse(await text(process.stdin)) as Load;
let answered = 0;
let bytes = 0;
let wrong: string | null = null;
let at = 0;
let latest = 0;

function onResponse(status: number, body: string): void {
  answered += 1;
  latest = performance.now();
  bytes += body.length;
  if (status !== (load.status ?? 200) || !body.includes(load.mustContain))
    wrong ??= `${status} ${body.slice(0, 500)}`;
}

const amount = load.connections.reduce((sum, { length }) => sum + length, 0);
const from = performance.now();
const { errors, timeouts } = await autocannon({
  url: load.url,
  connections: load.connections.length,
  // A server that is gone must end the run.
  bailout: 100,
  ...(load.seconds === null ? { amount } : { duration: load.seconds }),
  setupClient: (client) => {
    const own = load.connections[at++]!;
    client.setRequests(own.map((request): Request => ({ ...request, headers: load.headers, onResponse })));
  },
});
// autocannon itself looks once a second whether it has come to the end.
const seconds = (latest - from) / 1000;
if (errors + timeouts > 0) wrong ??= `${errors} errors and ${timeouts} timeouts`;
if (load.seconds === null && answered !== amount) wrong ??= `${answered} answers to ${amount} requests`;
const result: LoadResult = { answered, perSecond: answered / seconds, bytes: bytes / answered, wrong };
process.stdout.write(JSON.stringify(result));
