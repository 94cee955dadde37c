import { once } from 'node:events';
import { createClient, type Client } from 'graphql-ws';
import { WebSocket } from 'ws';

export const LIVE_TABLE = `subscription ($id: ID!, $since: Int) {
  competitionTable(id: $id, sinceVersion: $since) { id version status table { version rows { bib name mark place } } }
}`;

/** What one subscriber has been sent, in order, and how it ended. */
export interface Listener {
  readonly seen: any[];
  readonly errors: any[];
  readonly ended: Promise<unknown>;
  stop(): void;
}

/** A client as an app has it. It does not connect again by itself, so that a test sees how it was closed. */
export function socketClient(url: string, token: string | null = null): Client {
  return createClient({
    url: `${url.replace(/^http/, 'ws')}/graphql`,
    webSocketImpl: WebSocket,
    retryAttempts: 0,
    ...(token !== null && { connectionParams: { authorization: `Bearer ${token}` } }),
  });
}

/** Subscribes by WebSocket. `ended` is what the client says of the end: nothing, or the event that closed it. */
export function listen(client: Client, variables: Record<string, unknown>, query = LIVE_TABLE): Listener {
  const seen: any[] = [];
  const errors: any[] = [];
  let stop = (): void => undefined;
  const ended = new Promise<unknown>((resolve) => {
    stop = client.subscribe<any>(
      { query, variables },
      {
        next: ({ data, errors: failed }) => {
          if (failed) errors.push(...failed);
          if (data) seen.push(Object.values(data)[0]);
        },
        error: (error) => {
          if (Array.isArray(error)) errors.push(...(error as unknown[]));
          resolve(error);
        },
        complete: () => resolve(undefined),
      },
    );
  });
  return { seen, errors, ended, stop };
}

/** Subscribes by server-sent events, as fetch has them; `query` by POST. */
export async function listenByEvents(
  url: string,
  variables: Record<string, unknown>,
  token: string | null = null,
  query = LIVE_TABLE,
): Promise<Listener & { readonly status: number }> {
  const controller = new AbortController();
  const response = await fetch(`${url}/graphql`, {
    method: 'POST',
    signal: controller.signal,
    headers: {
      'content-type': 'application/json',
      accept: 'text/event-stream',
      ...(token !== null && { authorization: `Bearer ${token}` }),
    },
    body: JSON.stringify({ query, variables }),
  });
  const seen: any[] = [];
  const errors: any[] = [];
  const ended = readEvents(response, ({ event, data }) => {
    if (event !== 'next') return;
    const result = JSON.parse(data);
    if (result.errors) errors.push(...result.errors);
    if (result.data) seen.push(Object.values(result.data)[0]);
  }).catch(() => undefined);
  return { seen, errors, ended, status: response.status, stop: () => controller.abort() };
}

export interface ServerEvent {
  readonly event: string;
  readonly id: string | null;
  readonly data: string;
}

/** Reads a stream of events to its end (HTML Living Standard, "Server-sent events"). */
export async function readEvents(response: Response, take: (event: ServerEvent) => void): Promise<void> {
  let rest = '';
  for await (const chunk of response.body!.pipeThrough(new TextDecoderStream())) {
    rest += chunk;
    const blocks = rest.split('\n\n');
    rest = blocks.pop()!;
    for (const block of blocks) {
      const fields = new Map(block.split('\n').map((line) => splitAt(line)));
      if (fields.has('data'))
        take({
          event: fields.get('event') ?? 'message',
          id: fields.get('id') ?? null,
          data: fields.get('data')!,
        });
    }
  }
}

function splitAt(line: string): [string, string] {
  const at = line.indexOf(':');
  return [line.slice(0, at), line.slice(at + 1).trimStart()];
}

/** A socket without a client's manners, to say what a client would not. */
export async function rawSocket(url: string, options: object = {}): Promise<WebSocket> {
  const socket = new WebSocket(`${url.replace(/^http/, 'ws')}/graphql`, 'graphql-transport-ws', options);
  await once(socket, 'open');
  return socket;
}

/** The code with which a socket is closed. */
export async function closeCode(socket: WebSocket): Promise<number> {
  const [code] = (await once(socket, 'close')) as [number];
  return code;
}

/** The HTTP status with which a socket is refused; 101: it was opened. */
export async function handshake(url: string, headers: Record<string, string>): Promise<number> {
  const socket = new WebSocket(`${url.replace(/^http/, 'ws')}/graphql`, 'graphql-transport-ws', { headers });
  return new Promise((resolve) => {
    socket.on('unexpected-response', (_request, { statusCode = 0 }) => resolve(statusCode));
    socket.on('error', () => undefined);
    socket.on('open', () => {
      socket.close();
      resolve(101);
    });
  });
}
