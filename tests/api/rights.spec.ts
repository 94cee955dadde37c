import { buildSchema, type GraphQLSchema } from 'graphql';
import { SignJWT, UnsecuredJWT } from 'jose';
import { readFile } from 'node:fs/promises';
import { resolvers } from '../../apps/api/src/schema/print-schema.js';
import { RIGHTS } from '../../apps/api/src/platform/identity/rights.js';
import { startApi, type TestApi } from '../support/api.js';
import { callsOf } from '../support/example-values.js';
import { makeMeet } from '../support/made-meet.js';

/** Every method that answers a query or a mutation, with what it declares. */
function declarations(): { name: string; kind: string; rights: unknown }[] {
  return resolvers().flatMap((resolver) =>
    Object.getOwnPropertyNames(resolver.prototype).flatMap((name) => {
      const method = resolver.prototype[name] as object;
      const kind =
        typeof method === 'function' ? Reflect.getMetadata('graphql:resolver_type', method) : undefined;
      if (kind !== 'Query' && kind !== 'Mutation' && kind !== 'Subscription') return [];
      return [{ name: `${kind}.${name}`, kind, rights: Reflect.getMetadata(RIGHTS, method) as unknown }];
    }),
  );
}

/** Takes a secret from somebody who has no token yet. */
const PROVING = ['signIn', 'sessionRefresh', 'passwordSetUp', 'deviceLinkExchange'];

describe('Declared rights', () => {
  it('are on every query, mutation and subscription', () => {
    expect(declarations().length).toBeGreaterThan(10);
    expect(declarations().filter(({ rights }) => rights === undefined)).toEqual([]);
  });

  it('leave no mutation to the public but those that prove who one is', () => {
    const open = declarations().filter(
      ({ kind, rights }) => kind === 'Mutation' && (rights === 'public' || rights === 'credential'),
    );
    expect(open.map(({ name, rights }) => [name.replace('Mutation.', ''), rights])).toEqual(
      PROVING.map((name) => [name, 'credential']),
    );
  });
});

describe('Tokens', () => {
  let api: TestApi;
  let schema: GraphQLSchema;

  beforeAll(async () => {
    api = await startApi();
    schema = buildSchema(await readFile('apps/api/schema.graphql', 'utf8'));
  });
  afterAll(() => api.close());

  const viewer = '{ viewer { label grants { role } } }';

  it('are needed for every mutation', async () => {
    const calls = callsOf(schema, 'mutation').filter(({ name }) => !PROVING.includes(name));
    expect(calls.length).toBeGreaterThan(5);
    for (const { name, document, variables } of calls) {
      const { errors } = await api.send(document, variables);
      expect([name, errors?.[0]?.extensions.code]).toEqual([name, 'UNAUTHENTICATED']);
    }
  });

  it('say who is asking', async () => {
    expect(await api.data(viewer)).toEqual({ viewer: { label: null, grants: [] } });
    expect(await api.data(viewer, {}, api.adminToken)).toEqual({
      viewer: { label: 'test admin', grants: [{ role: 'ADMIN' }] },
    });
  });

  it.each([
    ['before its window', { from: Date.now() / 1000 + 3600 }],
    ['after its window', { until: Date.now() / 1000 - 1 }],
  ])('are refused %s', async (_when, window) => {
    const { status, errors } = await api.send(viewer, {}, await api.token('admin', undefined, window));
    expect([status, errors?.[0]?.extensions.code]).toEqual([401, 'UNAUTHENTICATED']);
  });

  it('are refused when somebody else signed them, nobody did, or they are no tokens', async () => {
    const claims = {
      org: api.organisationId,
      grants: [{ role: 'admin', on: null, from: null, until: null }],
      label: 'x',
    };
    const subject = '00000000-0000-7000-8000-00000000000b';
    const foreign = await new SignJWT(claims)
      .setProtectedHeader({ alg: 'HS256' })
      .setIssuer('sectorline')
      .setSubject(subject)
      .sign(new Uint8Array(32));
    const unsigned = new UnsecuredJWT(claims).setIssuer('sectorline').setSubject(subject).encode();
    const [head, , signature] = api.adminToken.split('.');
    const changed = `${head}.${Buffer.from(JSON.stringify(claims)).toString('base64url')}.${signature}`;
    for (const token of [foreign, unsigned, changed, 'nonsense', '']) {
      const { status, errors, data } = await api.send(viewer, {}, token);
      expect([status, errors?.[0]?.extensions.code, data]).toEqual([401, 'UNAUTHENTICATED', undefined]);
    }
  });

  it('hold for their own meet only', async () => {
    const own = await makeMeet(api);
    const other = await makeMeet(api);
    const director = await api.token('director', own.meetId);
    const publish = 'mutation ($id: ID!) { meetPublish(input: { meetId: $id }) { meet { isPublished } } }';
    expect(await api.data(publish, { id: own.meetId }, director)).toEqual({
      meetPublish: { meet: { isPublished: true } },
    });
    const { errors } = await api.send(publish, { id: other.meetId }, director);
    expect(errors?.[0]?.extensions.code).toBe('FORBIDDEN');
  });
});

describe('tokenIssue', () => {
  let api: TestApi;

  beforeAll(async () => {
    api = await startApi();
  });
  afterAll(() => api.close());

  const issue = `mutation ($input: TokenIssueInput!) {
    tokenIssue(input: $input) { token grant { role on until } userErrors { code path } }
  }`;

  it('lets a director give away the posts of the own meet', async () => {
    const { meetId, competitionId } = await makeMeet(api);
    const director = await api.token('director', meetId);
    const input = {
      role: 'OFFICIAL',
      on: competitionId,
      label: 'Circle 1 tablet',
      until: '2999-01-01T00:00:00Z',
    };
    const { tokenIssue } = await api.data(issue, { input }, director);
    expect(tokenIssue).toEqual({
      token: expect.stringMatching(/^[\w-]+\.[\w-]+\.[\w-]+$/),
      grant: { role: 'OFFICIAL', on: competitionId, until: '2999-01-01T00:00:00.000Z' },
      userErrors: [],
    });
    const { viewer } = await api.data('{ viewer { label grants { role on } } }', {}, tokenIssue.token);
    expect(viewer).toEqual({ label: 'Circle 1 tablet', grants: [{ role: 'OFFICIAL', on: competitionId }] });
  });

  it('does not let a director make an administrator or serve another meet', async () => {
    const { meetId } = await makeMeet(api);
    const other = await makeMeet(api);
    const director = await api.token('director', meetId);
    for (const input of [
      { role: 'ADMIN', label: 'x' },
      { role: 'OFFICIAL', on: other.competitionId, label: 'x' },
      { role: 'REFEREE', on: other.meetId, label: 'x' },
    ]) {
      const { errors } = await api.send(issue, { input }, director);
      expect(errors?.[0]?.extensions.code).toBe('FORBIDDEN');
    }
  });

  it('answers an unknown object and an empty window with user errors', async () => {
    const { meetId, competitionId } = await makeMeet(api);
    for (const [input, code, path] of [
      [{ role: 'OFFICIAL', on: meetId, label: 'x' }, 'NOT_FOUND', ['input', 'on']],
      [{ role: 'REFEREE', on: competitionId, label: 'x' }, 'NOT_FOUND', ['input', 'on']],
      [{ role: 'REFEREE', label: 'x' }, 'NOT_FOUND', ['input', 'on']],
      [
        { role: 'REFEREE', on: meetId, label: 'x', until: '2020-01-01T00:00:00Z' },
        'WINDOW_EMPTY',
        ['input', 'until'],
      ],
    ] as const) {
      const { tokenIssue } = await api.data(issue, { input }, api.adminToken);
      expect(tokenIssue).toEqual({ token: null, grant: null, userErrors: [{ code, path }] });
    }
  });
});
