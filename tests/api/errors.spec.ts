import { onConnection } from '../support/database.js';
import { startApi, type TestApi } from '../support/api.js';
import { tcpGate, type TcpGate } from '../support/tcp-gate.js';

const MEETS = '{ meets(first: 1) { edges { cursor } } }';
const MEET_CREATE =
  'mutation ($input: MeetCreateInput!) { meetCreate(input: $input) { meet { id name } userErrors { code } } }';
const input = { name: 'Open field', startsOn: '2026-05-30', timeZone: 'UTC', rules: 'WA' };

describe('Input that cannot be read', () => {
  let api: TestApi;

  beforeAll(async () => {
    api = await startApi();
  });
  afterAll(() => api.close());

  const create = (changed: object) =>
    api.send(MEET_CREATE, { input: { ...input, ...changed } }, api.adminToken);

  it('names every field that breaks a constraint, with the remedy', async () => {
    const { errors, data } = await create({ name: '', timeZone: 'x'.repeat(65), venue: 'line\nbreak' });
    expect(data).toBeNull();
    expect(errors?.[0]?.extensions.code).toBe('BAD_USER_INPUT');
    expect(errors?.[0]?.extensions.fields).toEqual(
      expect.arrayContaining([
        {
          path: ['input', 'name'],
          rule: 'isLength',
          message: expect.stringContaining('1'),
          remedy: expect.any(String),
        },
        {
          path: ['input', 'timeZone'],
          rule: 'isLength',
          message: expect.stringContaining('64'),
          remedy: expect.any(String),
        },
        {
          path: ['input', 'venue'],
          rule: 'isText',
          message: expect.any(String),
          remedy: expect.stringContaining('line breaks'),
        },
      ]),
    );
  });

  it('names every field of a wrong type', async () => {
    const { status, errors } = await create({ name: 7, startsOn: '2026-02-30', rules: 'XX', extra: true });
    expect(status).toBe(400);
    const paths = errors?.[0]?.extensions.fields.map((field: { path: string[] }) => field.path.join('.'));
    expect(paths).toEqual(expect.arrayContaining(['input.name', 'input.startsOn', 'input.rules', 'input']));
    expect(errors?.[0]?.message).toContain('Date must be a day that exists');
  });

  it.each([
    ['NUL', 'a\u0000b', 'noNul'],
    ['half a surrogate pair', 'a\ud800b', 'wellFormed'],
  ])('with %s is refused by name, in a variable and in a literal', async (_what, name, rule) => {
    const { status, errors } = await create({ name });
    expect([status, errors?.[0]?.extensions.fields[0]]).toEqual([
      400,
      expect.objectContaining({ path: ['input', 'name'], rule }),
    ]);
    const literal = `mutation { meetCreate(input: { name: ${JSON.stringify(name)}, startsOn: "2026-05-30", timeZone: "UTC", rules: WA }) { isReplay } }`;
    const inDocument = await api.send(literal, {}, api.adminToken);
    expect([inDocument.status, inDocument.errors?.[0]?.extensions.code]).toEqual([400, 'BAD_USER_INPUT']);
    // GraphQL's own reader refuses half a pair, and says so.
    if (rule === 'noNul')
      expect(inDocument.errors?.[0]?.extensions.fields[0]).toMatchObject({ path: ['input', 'name'], rule });
    else expect(inDocument.errors?.[0]?.message).toContain('Invalid Unicode escape sequence');
  });

  it('keeps every character that is one', async () => {
    const name = 'Ångström 投擲 🥏 \u202eRTL __proto__';
    const { data } = await create({ name });
    expect(data.meetCreate.meet.name).toBe(name);
  });

  it('answers constants of other programs without harm', async () => {
    for (const body of [
      '{"query":"{ __typename }","variables":{"a":1e400,"__proto__":{"x":1},"constructor":{"prototype":{}}}}',
      `{"query":"{ __typename }","variables":{"a":${'['.repeat(20_000)}${']'.repeat(20_000)}}}`,
      `{"query":"${'{a'.repeat(400)}${'}'.repeat(400)}"}`,
      '{"query":"{ __typename }","operationName":"nobody"}',
    ]) {
      const headers = { 'content-type': 'application/json', accept: 'application/graphql-response+json' };
      const response = await fetch(api.graphqlUrl, { method: 'POST', headers, body });
      expect(response.status).toBeLessThan(500);
      const { errors } = (await response.json()) as { errors?: { extensions: { code: string } }[] };
      expect(errors?.[0]?.extensions.code ?? 'BAD_USER_INPUT').toBe('BAD_USER_INPUT');
    }
  });

  it('gives every error the id of its request', async () => {
    const response = await fetch(api.graphqlUrl, {
      method: 'POST',
      headers: { 'content-type': 'application/json', 'x-request-id': 'tablet-0001' },
      body: JSON.stringify({ query: '{ nothing }' }),
    });
    const { errors } = (await response.json()) as { errors: { extensions: object }[] };
    expect(errors[0]?.extensions).toMatchObject({ code: 'BAD_USER_INPUT', traceId: 'tablet-0001' });
    expect(response.headers.get('x-request-id')).toBe('tablet-0001');
  });

  it('does not carry one request’s id into another’s answer', async () => {
    const ids = await Promise.all(
      [1, 2, 3].map(async () => (await api.send('{ nothing }')).errors?.[0]?.extensions.traceId),
    );
    expect(new Set(ids).size).toBe(3);
  });
});

describe('A fault of our own', () => {
  it('is logged once under the id that the client is told, and nothing else is told', async () => {
    const api = await startApi();
    try {
      await onConnection(api.databaseUrl, (client) => client.query('ALTER TABLE meet RENAME TO elsewhere'));
      const { status, errors, data } = await api.send(MEETS);
      expect([status, data]).toEqual([500, null]);
      expect(errors).toHaveLength(1);
      expect(errors?.[0]).toMatchObject({ path: ['meets'], extensions: { code: 'INTERNAL' } });
      expect(JSON.stringify(errors)).not.toMatch(/relation|select|stack|meet\b/i);
      const lines = api
        .logged()
        .filter((line) => line.includes(errors?.[0]?.extensions.traceId) && line.includes('"error"'));
      expect(lines).toHaveLength(1);
      expect(JSON.parse(lines[0] ?? '{}').error).toContain('relation "meet" does not exist');
    } finally {
      await api.close();
    }
  });
});

describe('A database that cannot be reached', () => {
  let api: TestApi;
  let gate: TcpGate;

  beforeAll(async () => {
    api = await startApi({
      through: async (databaseUrl) => {
        const url = new URL(databaseUrl);
        gate = await tcpGate(url.hostname, Number(url.port || 5432));
        url.hostname = '127.0.0.1';
        url.port = String(gate.port);
        return url.toString();
      },
    });
  });
  afterAll(async () => {
    await api.close();
    await gate.shut();
  });

  it('is UNAVAILABLE and not ready, and all is well once it is back', async () => {
    expect((await api.send(MEETS)).errors).toBeUndefined();
    await gate.shut();
    const { status, errors } = await api.send(MEETS);
    expect([status, errors?.[0]?.extensions.code]).toEqual([503, 'UNAVAILABLE']);
    const ready = await fetch(`${api.url}/readyz`);
    expect([ready.status, ready.headers.get('content-type')]).toEqual([
      503,
      expect.stringContaining('application/problem+json'),
    ]);
    expect(await ready.json()).toMatchObject({
      type: 'about:blank',
      status: 503,
      detail: 'database unreachable',
    });
    expect((await fetch(`${api.url}/livez`)).status).toBe(200);
    await gate.open();
    expect((await api.send(MEETS)).errors).toBeUndefined();
    expect((await fetch(`${api.url}/readyz`)).status).toBe(200);
  });
});

describe('Outside GraphQL', () => {
  let api: TestApi;

  beforeAll(async () => {
    api = await startApi();
  });
  afterAll(() => api.close());

  it('what is not there is said as problem details', async () => {
    const response = await fetch(`${api.url}/nothing`);
    expect([response.status, response.headers.get('content-type')]).toEqual([
      404,
      expect.stringContaining('application/problem+json'),
    ]);
    expect(await response.json()).toMatchObject({ type: 'about:blank', status: 404, title: 'Not Found' });
  });

  it('no token and no birth date comes into the log', async () => {
    const birthDate = '2012-04-17';
    await api.send(
      'mutation ($input: AthleteCreateInput!) { athleteCreate(input: $input) { athlete { id } } }',
      { input: { givenName: 'Odalys', familyName: 'Quillfeather', sex: 'W', birthDate } },
      api.adminToken,
    );
    await fetch(`${api.graphqlUrl}?query={viewer{label}}&variables={"b":"${birthDate}"}`, {
      headers: { accept: 'application/json', authorization: `Bearer ${api.adminToken}` },
    });
    const log = api.logged().join('');
    expect(log).toContain('"request"');
    for (const secret of [birthDate, 'Quillfeather', api.adminToken, api.adminToken.split('.')[2]]) {
      expect(log).not.toContain(secret);
    }
  });
});
