import { once } from 'node:events';
import { setTimeout as delay } from 'node:timers/promises';
import type { WebSocket } from 'ws';
import { LiveHub } from '../../apps/api/src/platform/graphql/live-hub.js';
import { LiveConnections } from '../../apps/api/src/platform/live/live-connections.js';
import { call, giveRole, signedInPerson } from '../support/accounts.js';
import { startApi, type TestApi } from '../support/api.js';
import { Circle } from '../support/at-the-circle.js';
import { discusSheet } from '../support/circle.js';
import {
  closeCode,
  handshake,
  listen,
  listenByEvents,
  LIVE_TABLE,
  rawSocket,
  socketClient,
} from '../support/listening.js';
import { eventually } from '../support/live.js';

const CYCLES = process.env['LONG'] === '1' ? 20_000 : 200;

let api: TestApi;
let circle: Circle;
beforeAll(async () => {
  api = await startApi();
  const competitors = [
    { bib: '1', name: 'Odalys Thornwick' },
    { bib: '2', name: 'Petra Lindqvist' },
  ];
  circle = await Circle.open(api, discusSheet(2, { competitors }));
});
afterAll(() => api.close());

const nobodyListens = () =>
  eventually(
    () => [api.app.get(LiveHub).count, api.app.get(LiveConnections).count],
    ([subscriptions, connections]) => subscriptions === 0 && connections === 0,
  );
afterEach(async () => expect(await nobodyListens()).toEqual([0, 0]));

const here = () => ({ id: circle.competition.id, since: null });

describe('a subscription', () => {
  it('tells each audience the whole table at once and at every version, by WebSocket and by events', async () => {
    const clients = [socketClient(api.url), socketClient(api.url, circle.official)];
    const listeners = [
      listen(clients[0]!, here()),
      listen(clients[1]!, here()),
      await listenByEvents(api.url, here()),
      await listenByEvents(api.url, here(), circle.official),
    ];
    let newest = (await circle.read()).version;
    const all = () => eventually(() => listeners.map(({ seen }) => seen.at(-1)?.version), allAre(newest));
    expect(await all()).toEqual([newest, newest, newest, newest]);
    for (const [round, mark] of [
      [1, '44.10'],
      [2, '45.20'],
      [3, '46.30'],
    ] as const) {
      newest = (await circle.record(1, round, mark)).competition.version;
      await circle.record(2, round, 'X').then(({ competition }) => (newest = competition.version));
    }
    expect(await all()).toEqual([newest, newest, newest, newest]);
    for (const { seen } of listeners) {
      const versions = seen.map(({ version }) => version);
      expect(versions).toEqual([...new Set(versions)].sort((a, b) => a - b));
      expect(seen.map(({ table }) => table.version)).toEqual(versions);
    }
    const names = listeners.map(({ seen }) => seen.at(-1).table.rows[0].name);
    expect(names).toEqual(['O. T.', 'Odalys Thornwick', 'O. T.', 'Odalys Thornwick']);
    for (const listener of listeners) listener.stop();
    for (const client of clients) await client.dispose();
  });

  it('is told nothing that it had already', async () => {
    const client = socketClient(api.url);
    const { version } = await circle.read();
    const [fresh, returning] = [listen(client, here()), listen(client, { ...here(), since: version })];
    await eventually(
      () => fresh.seen.length,
      (count) => count > 0,
    );
    const { competition } = await circle.record(1, 4, '47.40');
    await eventually(
      () => returning.seen.length,
      (count) => count > 0,
    );
    expect(returning.seen.map((one) => one.version)).toEqual([competition.version]);
    await client.dispose();
  });

  it('is refused where a query would be, and says the same', async () => {
    const client = socketClient(api.url);
    const codeOf = async (query: string, variables: Record<string, unknown>) => {
      const { ended, errors } = listen(client, variables, query);
      await ended;
      return errors[0]?.extensions.code;
    };
    expect(await codeOf(LIVE_TABLE, { id: 'Q29tcGV0aXRpb246bm9uZQ', since: null })).toBe('BAD_USER_INPUT');
    expect(await codeOf(LIVE_TABLE, { id: 7 })).toBe('BAD_USER_INPUT');
    expect(await codeOf('subscription { nothing }', {})).toBe('BAD_USER_INPUT');
    expect(await codeOf('{ viewer { label } }', {})).toBe('BAD_USER_INPUT');
    expect(
      await codeOf(
        `subscription { ${'a'.repeat(1)}: competitionTable(id: "x") { id } b: competitionTable(id: "x") { id } }`,
        {},
      ),
    ).toBe('BAD_USER_INPUT');
    await client.dispose();
  });

  it('takes three of a connection without a token', async () => {
    const client = socketClient(api.url);
    const three = [0, 1, 2].map(() => listen(client, here()));
    await eventually(
      () => three.map(({ seen }) => seen.length),
      (counts) => counts.every((count) => count > 0),
    );
    const fourth = listen(client, here());
    await fourth.ended;
    expect(fourth.errors[0].extensions).toMatchObject({ code: 'RATE_LIMITED', retryAfterMs: 10_000 });
    await client.dispose();
  });
});

function allAre(version: number): (seen: (number | undefined)[]) => boolean {
  return (seen) => seen.every((one) => one === version);
}

describe('a right that ends while somebody listens', () => {
  it('ends what it allowed: a role that was taken', async () => {
    const person = await signedInPerson(api);
    const grantId = await giveRole(api, person.id, { role: 'OFFICIAL', on: circle.competition.id });
    const client = socketClient(api.url, person.accessToken);
    const listener = listen(client, here());
    const events = await listenByEvents(api.url, here(), person.accessToken);
    await eventually(
      () => [listener, events].map(({ seen }) => seen.length),
      (counts) => !counts.includes(0),
    );
    await call(api, 'roleRevoke', { grantId, reason: 'left' }, 'userErrors { code }', api.adminToken);
    await Promise.all([listener.ended, events.ended]);
    for (const { errors } of [listener, events]) expect(errors[0].extensions.code).toBe('FORBIDDEN');
    await client.dispose();
  });

  it('closes the connection with 4403: a token that was revoked, and one that has run out', async () => {
    const revoked = await api.token('official', circle.competition.id);
    const shortly = { until: Math.floor(Date.now() / 1000) + 1 };
    const brief = await api.token('official', circle.competition.id, shortly);
    const clients = [socketClient(api.url, revoked), socketClient(api.url, brief)];
    const listeners = clients.map((client) => listen(client, here()));
    await eventually(
      () => listeners.map(({ seen }) => seen.length),
      (counts) => !counts.includes(0),
    );
    await call(api, 'signOut', {}, 'isSignedOut', revoked);
    await delay(2_100);
    // The next version is the moment at which the rights are looked at again.
    await circle.record(1, 5, '48.50');
    for (const { ended } of listeners) expect(await ended).toMatchObject({ code: 4403 });
    expect(listeners.map(({ seen }) => seen.length)).toEqual([1, 1]);
  });
});

describe('the protocol graphql-transport-ws', () => {
  const say = (socket: WebSocket, message: object | string): void =>
    socket.send(typeof message === 'string' ? message : JSON.stringify(message));
  const acknowledged = async (): Promise<WebSocket> => {
    const socket = await rawSocket(api.url);
    say(socket, { type: 'connection_init' });
    await once(socket, 'message');
    return socket;
  };
  const subscribe = (id: string) => ({
    ...{ id, type: 'subscribe' },
    payload: { query: LIVE_TABLE, variables: here() },
  });

  // Close codes of the protocol's text: enisdenjo/graphql-ws, PROTOCOL.md.
  it.each<[number, string, () => Promise<WebSocket>, (socket: WebSocket) => void]>([
    [4400, 'what is no message', () => rawSocket(api.url), (socket) => say(socket, 'good morning')],
    [4400, 'a message of no known type', acknowledged, (socket) => say(socket, { type: 'hello' })],
    [
      4401,
      'subscribing before the greeting',
      () => rawSocket(api.url),
      (socket) => say(socket, subscribe('a')),
    ],
    [
      4403,
      'a token that is none',
      () => rawSocket(api.url),
      (socket) => say(socket, { type: 'connection_init', payload: { authorization: 'Bearer nothing' } }),
    ],
    [4408, 'no greeting within three seconds', () => rawSocket(api.url), () => undefined],
    [
      4409,
      'the same id twice',
      acknowledged,
      (socket) => [subscribe('a'), subscribe('a')].forEach((one) => say(socket, one)),
    ],
    [4429, 'a second greeting', acknowledged, (socket) => say(socket, { type: 'connection_init' })],
    [1009, 'a message larger than any', acknowledged, (socket) => say(socket, 'x'.repeat(70_000))],
  ])('closes with %i on %s', async (code, _what, open, act) => {
    const socket = await open();
    const closed = closeCode(socket);
    act(socket);
    expect(await closed).toBe(code);
  });

  it('answers pings, and takes what belongs to a subscription that is over', async () => {
    const socket = await acknowledged();
    say(socket, { id: 'gone', type: 'complete' });
    say(socket, { type: 'ping', payload: { n: 1 } });
    const [message] = (await once(socket, 'message')) as [Buffer];
    expect(JSON.parse(message.toString())).toEqual({ type: 'pong', payload: { n: 1 } });
    socket.close();
  });

  it('opens for pages from here, for programs, and for no page of somebody else', async () => {
    const { host } = new URL(api.url);
    expect(await handshake(api.url, {})).toBe(101);
    expect(await handshake(api.url, { origin: `http://${host}` })).toBe(101);
    expect(await handshake(api.url, { origin: 'https://elsewhere.example' })).toBe(403);
    expect(await handshake(api.url, { origin: 'null' })).toBe(403);
  });

  it('opens a hundred times for one address at once, also through a proxy that is trusted', async () => {
    const from = { 'x-forwarded-for': '203.0.113.9' };
    const open = await Promise.all(Array.from({ length: 100 }, () => rawSocket(api.url, { headers: from })));
    expect(await handshake(api.url, from)).toBe(429);
    expect(await handshake(api.url, { 'x-forwarded-for': '203.0.113.10' })).toBe(101);
    for (const socket of open) socket.terminate();
  });

  it(`leaves nothing behind after ${CYCLES} who come and go`, async () => {
    const one = async (at: number): Promise<void> => {
      const socket = await acknowledged();
      say(socket, subscribe('a'));
      if (at % 3 !== 0) await once(socket, 'message');
      // Some go while they are still being let in, some without a word.
      if (at % 2 === 0) socket.terminate();
      else socket.close();
    };
    for (let at = 0; at < CYCLES; at += 20)
      await Promise.all(Array.from({ length: 20 }, (_, i) => one(at + i)));
    expect(await nobodyListens()).toEqual([0, 0]);
  });
});
