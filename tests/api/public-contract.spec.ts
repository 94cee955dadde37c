import { auditServer } from 'graphql-http';
import { getIntrospectionQuery, isObjectType, isUnionType } from 'graphql';
import { publicSchema } from '../../apps/api/src/public/contract/public-schema.js';
import { TRUSTED_DOCUMENTS } from '../../apps/api/src/public/contract/trusted-documents.js';
import { EventStreams } from '../../apps/api/src/public/event-streams.service.js';
import { LiveConnections } from '../../apps/api/src/platform/live/live-connections.js';
import { startApi, type TestApi } from '../support/api.js';
import { Bar, highJumpSheet } from '../support/at-the-bar.js';
import { Circle } from '../support/at-the-circle.js';
import { discusSheet } from '../support/circle.js';
import { readEvents, type ServerEvent } from '../support/listening.js';
import { eventually } from '../support/live.js';

let api: TestApi;
let open: TestApi;
beforeAll(async () => {
  api = await startApi();
  open = await startApi({ beside: api, publicIsOpen: true });
});
afterAll(async () => {
  await open.close();
  await api.close();
});

function address(documentId: string, variables: object, from: TestApi = api): string {
  const query = new URLSearchParams({ documentId, variables: JSON.stringify(variables) });
  return `${from.url}/public/graphql?${query}`;
}

async function freely(query: string, variables: object = {}, at: TestApi = open): Promise<any> {
  const response = await fetch(`${at.url}/public/graphql`, {
    method: 'POST',
    headers: { 'content-type': 'application/json', accept: 'application/graphql-response+json' },
    body: JSON.stringify({ query, variables }),
  });
  return { status: response.status, ...((await response.json()) as object) };
}

/** Every field of a type, down to the leaves. */
function everything(typeName: string): string {
  const type = publicSchema().getType(typeName);
  if (isUnionType(type)) {
    const members = type.getTypes().map(({ name }) => `... on ${name} { ${everything(name)} }`);
    // Members of a union may have a field of one name and two types.
    return members
      .join(' ')
      .replace(/(on HeightWhy \{[^}]*?)\bown\b/, '$1height: own')
      .replace(/\bother \{/, 'before: other {');
  }
  if (!isObjectType(type)) return '';
  return Object.values(type.getFields())
    .map(({ name, type: of }) => {
      const below = everything(String(of).replaceAll(/[[\]!]/g, ''));
      return below === '' ? name : `${name} { ${below} }`;
    })
    .join(' ');
}

describe('a trusted document', () => {
  it('is answered by name and by hash, with the version as validator, and 304 until something changes', async () => {
    const circle = await Circle.open(api);
    await circle.recordCard(['50.00']);
    const { hash } = TRUSTED_DOCUMENTS.find(({ name }) => name === 'competition-table')!;
    const [byName, byHash] = await Promise.all(
      ['competition-table', `sha256:${hash}`].map((id) => fetch(address(id, { id: circle.competition.id }))),
    );
    const shown = await byName!.json();
    expect(await byHash!.json()).toEqual(shown);
    expect(shown.data.competition.rows[0]).toMatchObject({ bib: '1', place: 1, mark: '50.00' });
    const etag = byName!.headers.get('etag')!;
    expect(etag).toMatch(new RegExp(`^"${shown.data.competition.version}-`));
    expect(Object.fromEntries(byName!.headers)).toMatchObject({
      'content-type': 'application/graphql-response+json; charset=utf-8',
      'cache-control': 'public, max-age=2',
      'access-control-allow-origin': '*',
    });
    const again = { headers: { 'if-none-match': etag } };
    const unchanged = await fetch(address('competition-table', { id: circle.competition.id }), again);
    expect([unchanged.status, await unchanged.text()]).toEqual([304, '']);
    await circle.record(2, 1, '51.00');
    const changed = await fetch(address('competition-table', { id: circle.competition.id }), again);
    expect((await changed.json()).data.competition.rows[0].mark).toBe('51.00');
  });

  it.each(TRUSTED_DOCUMENTS.map(({ name }) => name))(
    '%s is answered, and kept for five minutes at most',
    async (name) => {
      const circle = await Circle.open(api);
      const id = name.startsWith('meet') ? circle.meet.id : circle.competition.id;
      const nobody = new Map<string, string>([
        ['athlete-results', 'Athlete'],
        ['club-results', 'Club'],
      ]).get(name);
      const unknown = Buffer.from(`${nobody}:${'0'.repeat(8)}-0000-7000-8000-000000000009`).toString(
        'base64url',
      );
      const variables = { id: nobody ? unknown : id, meetId: circle.meet.id };
      const response = await fetch(address(name, name === 'latest-meets' ? {} : variables));
      const { data, errors } = await response.json();
      expect(errors).toBeUndefined();
      expect(Object.values(data)).toHaveLength(1);
      const maxAge = Number(/max-age=(\d+)/.exec(response.headers.get('cache-control')!)![1]);
      expect(maxAge).toBeLessThanOrEqual(300);
    },
  );

  it.each([
    ['an id that is none', 'nothing', {}],
    ['the hash of another text', `sha256:${'0'.repeat(64)}`, {}],
    ['a competition that is none', 'competition-table', { id: 'x' }],
    ['no competition', 'competition-table', {}],
    ['too many meets', 'latest-meets', { first: 1_000_000 }],
  ])('is refused for %s', async (_what, documentId, variables) => {
    const response = await fetch(address(documentId, variables));
    expect(response.status).toBe(400);
    expect(response.headers.get('access-control-allow-origin')).toBe('*');
    const { errors } = await response.json();
    expect(errors[0].extensions.code).toBe('BAD_USER_INPUT');
  });

  it('shows nothing of a meet that is not published', async () => {
    const { meetCreate } = await api.data(
      `mutation { meetCreate(input: { name: "Quiet", startsOn: "2026-05-30", timeZone: "UTC", rules: WA }) { meet { id } } }`,
      {},
      api.adminToken,
    );
    const answer = await fetch(address('meet-overview', { id: meetCreate.meet.id }));
    expect(await answer.json()).toEqual({ data: { meet: null } });
  });
});

describe('free documents', () => {
  it('are refused, and introspection with them, unless a setting opens the contract', async () => {
    for (const query of ['{ meets { id } }', getIntrospectionQuery()]) {
      const closed = await freely(query, {}, api);
      expect([closed.status, closed.errors[0].extensions.code]).toEqual([405, 'BAD_USER_INPUT']);
      const byGet = await fetch(`${api.url}/public/graphql?${new URLSearchParams({ query })}`);
      expect(byGet.status).toBe(400);
      const { status, data } = await freely(query);
      expect([status, data !== undefined]).toEqual([200, true]);
    }
  });

  it('show just what the snapshot holds, field by field', async () => {
    const circle = await Circle.open(api, discusSheet(9));
    await circle.recordCard(...Array.from({ length: 9 }, (_, at) => [`4${9 - at}.00`, 'X']));
    const bar = await Bar.open(api, highJumpSheet(2, ['1.70', '1.75']));
    await bar.height('1.70', 'O', 'XO');
    for (const [id, query] of [
      [circle.competition.id, everything('Competition')],
      [bar.circle.competition.id, everything('Competition')],
    ] as const) {
      const { data } = await freely(`query ($id: ID!) { competition(id: $id) { ${query} } }`, { id });
      const { format, ...snapshot } = await (await fetch(`${api.url}/public/competitions/${id}.json`)).json();
      expect(format).toBe('sectorline-public-competition/1');
      const why = (one: any) => one && (one.by === 'mark' ? one : { decidedBy: one.decidedBy });
      const plain = (rows: any[]) =>
        rows.map(({ why: one, ...row }) => ({ ...row, by: why(one)?.decidedBy ?? null }));
      expect({ ...data.competition, rows: plain(data.competition.rows) }).toEqual({
        ...snapshot,
        rows: plain(snapshot.rows),
      });
    }
    const { data } = await freely(`query ($id: ID!) { meet(id: $id) { ${everything('Meet')} } }`, {
      id: circle.meet.id,
    });
    const { format: _format, ...meet } = await (
      await fetch(`${api.url}/public/meets/${circle.meet.id}.json`)
    ).json();
    expect(data.meet).toEqual(meet);
  });

  // The suite that accompanies the GraphQL over HTTP specification (package graphql-http).
  it('pass every check of the audit suite', async () => {
    const results = await auditServer({ url: `${open.url}/public/graphql`, fetchFn: fetch });
    expect(results.filter(({ status }) => status !== 'ok').map(({ id, name }) => `${id} ${name}`)).toEqual(
      [],
    );
    expect(results).toHaveLength(61);
  });
});

it('no type of the public contract has a field for anything private', () => {
  const names = Object.values(publicSchema().getTypeMap()).flatMap((type) =>
    isObjectType(type) && !type.name.startsWith('__') ? Object.keys(type.getFields()) : [],
  );
  // What an account, an athlete on record or a journal has and the crowd must not.
  const PRIVATE =
    /birth|given|family|contact|mail|phone|note|journal|actor|device|token|foul|guardian|display/i;
  expect(names.filter((name) => PRIVATE.test(name))).toEqual([]);
});

it('other sites may read the public contract and nothing else', async () => {
  const origin = 'https://harriers.example';
  const circle = await Circle.open(api);
  const asked = await fetch(`${api.url}/graphql?query={__typename}`, { headers: { origin } });
  expect(asked.headers.get('access-control-allow-origin')).toBeNull();
  const preflight = await fetch(`${api.url}/graphql`, {
    method: 'OPTIONS',
    headers: {
      origin,
      'access-control-request-method': 'POST',
      'access-control-request-headers': 'authorization',
    },
  });
  expect(preflight.headers.get('access-control-allow-origin')).toBeNull();
  const table = await fetch(address('competition-standing', { id: circle.competition.id }), {
    headers: { origin },
  });
  expect(table.headers.get('access-control-allow-origin')).toBe('*');
});

describe('the stream of a competition', () => {
  interface Reader {
    readonly events: ServerEvent[];
    readonly response: Response;
    readonly stop: () => void;
  }
  const listen = async (id: string, headers: Record<string, string> = {}): Promise<Reader> => {
    const controller = new AbortController();
    const response = await fetch(`${api.url}/public/competitions/${id}/events`, {
      headers,
      signal: controller.signal,
    });
    const events: ServerEvent[] = [];
    if (response.ok) readEvents(response, (event) => events.push(event)).catch(() => undefined);
    return { events, response, stop: () => controller.abort() };
  };
  const lastOf = ({ events }: Reader): any => events.at(-1) && JSON.parse(events.at(-1)!.data);

  it('tells the same as the JSON at every version, and whoever comes back only what is newer', async () => {
    const circle = await Circle.open(api);
    const { id } = circle.competition;
    const [first, other] = [await listen(id), await listen(id)];
    await eventually(
      () => [first, other].map(({ events }) => events.length),
      (counts) => !counts.includes(0),
    );
    const { competition } = await circle.record(1, 1, '50.00');
    const isNewest = (reader: Reader) =>
      eventually(
        () => lastOf(reader)?.version,
        (seen) => seen === competition.version,
      );
    expect([await isNewest(first), await isNewest(other)]).toEqual([
      competition.version,
      competition.version,
    ]);
    expect(lastOf(first)).toEqual(await (await fetch(`${api.url}/public/competitions/${id}.json`)).json());
    expect(first.events.map((event) => event.id)).toEqual(
      first.events.map(({ data }) => String(JSON.parse(data).version)),
    );
    const back = await listen(id, { 'last-event-id': String(competition.version) });
    const next = (await circle.record(2, 1, '51.00')).competition;
    await eventually(
      () => lastOf(back)?.version,
      (seen) => seen === next.version,
    );
    expect(back.events.map((event) => event.id)).toEqual([String(next.version)]);
    for (const reader of [first, other, back]) reader.stop();
    const left = () => [api.app.get(EventStreams).count, api.app.get(LiveConnections).count];
    expect(await eventually(left, ([streams, open_]) => streams === 0 && open_ === 0)).toEqual([0, 0]);
  });

  it('is open to every site, and nothing where there is nothing for the public', async () => {
    const circle = await Circle.open(api);
    const { response, stop } = await listen(circle.competition.id, { origin: 'https://harriers.example' });
    expect(Object.fromEntries(response.headers)).toMatchObject({
      'content-type': 'text/event-stream; charset=utf-8',
      'access-control-allow-origin': '*',
      'cache-control': 'no-store',
    });
    stop();
    expect((await listen('x')).response.status).toBe(404);
  });
});
