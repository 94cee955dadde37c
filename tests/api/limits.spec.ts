import { request as httpRequest } from 'node:http';
import { startApi, type TestApi } from '../support/api.js';

describe('What one request may ask for', () => {
  let api: TestApi;

  beforeAll(async () => {
    api = await startApi();
  });
  afterAll(() => api.close());

  const codeOf = async (query: string, variables?: object): Promise<[number, unknown]> => {
    const { status, errors } = await api.send(query, variables);
    return [status, errors?.[0]?.extensions.code];
  };
  const refused = [400, 'QUERY_TOO_EXPENSIVE'];
  const fields = (count: number, of: (index: number) => string): string =>
    `{ ${Array.from({ length: count }, (_, index) => of(index)).join(' ')} }`;

  it('stops reading a document after a thousand tokens', async () => {
    expect(await codeOf(fields(1001, () => '__typename'))).toEqual([400, 'BAD_USER_INPUT']);
  });

  it('counts aliases, of __typename too', async () => {
    expect(await codeOf(fields(101, (index) => `a${index}: __typename`))).toEqual(refused);
    expect(await codeOf(fields(8, (index) => `a${index}: __typename`))).toEqual([200, undefined]);
  });

  it('counts fields at the root, also when they are the same', async () => {
    expect(await codeOf(fields(500, () => '__typename'))).toEqual(refused);
  });

  it('counts directives', async () => {
    expect(await codeOf(`{ __typename ${'@include(if: true) '.repeat(11)} }`)).toEqual([
      400,
      expect.any(String),
    ]);
    expect(await codeOf(fields(11, (index) => `__typename @include(if: ${index > 0})`))).toEqual(refused);
  });

  it('limits how deep selections nest, through fragments as well', async () => {
    const deep = `competitions { meet { competitions { meet { competitions { meet { competitions { meet { name } } } } } } } }`;
    const page = (inner: string): string => `{ meets(first: 1) { edges { node { ${inner} } } } }`;
    expect(await codeOf(page(deep))).toEqual(refused);
    const fragments = `fragment A on Meet { competitions { meet { competitions { meet { ...B } } } } }
      fragment B on Meet { competitions { meet { competitions { meet { name } } } } }`;
    expect(await codeOf(`${page('...A')} ${fragments}`)).toEqual(refused);
  });

  it('refuses fragments that name each other twice, or in a circle', async () => {
    const chain = Array.from(
      { length: 60 },
      (_, index) => `fragment F${index} on Meet { ...F${index + 1} ...F${index + 1} }`,
    );
    const doubled = `{ meets(first: 1) { edges { node { ...F0 } } } } ${chain.join(' ')} fragment F60 on Meet { id }`;
    expect(await codeOf(doubled)).toEqual(refused);
    const circle =
      '{ meets(first: 1) { edges { node { ...C } } } } fragment C on Meet { competitions { meet { ...C } } }';
    expect(await codeOf(circle)).toEqual([400, expect.any(String)]);
  });

  it('estimates the size of the answer from the page sizes asked for', async () => {
    const nested = (first: string): string =>
      `{ meets(first: ${first}) { edges { node { competitions { startList { bib } } } } } }`;
    expect(await codeOf(nested('100'))).toEqual(refused);
    expect(await codeOf(nested('5'))).toEqual([200, undefined]);
    expect(await codeOf(`query ($n: Int!) ${nested('$n')}`, { n: 1 })).toEqual(refused);
  });

  it.each([0, 101, -1, 1_000_000_000])('refuses a page of %d', async (first) => {
    const { errors } = await api.send('query ($n: Int!) { meets(first: $n) { edges { cursor } } }', {
      n: first,
    });
    expect(errors?.[0]?.extensions).toMatchObject({ code: 'BAD_USER_INPUT', fields: [{ path: ['first'] }] });
  });

  it('refuses a cursor that is none', async () => {
    for (const after of ['', 'x', Buffer.from('["a","b"]').toString('base64url'), 'x'.repeat(5000)]) {
      const { errors } = await api.send(
        'query ($a: String) { meets(first: 1, after: $a) { edges { cursor } } }',
        { a: after },
      );
      expect(errors?.[0]?.extensions).toMatchObject({
        code: 'BAD_USER_INPUT',
        fields: [{ path: ['after'] }],
      });
    }
  });

  it('takes one operation in a document and one document in a request', async () => {
    expect(await codeOf('query A { __typename } query B { __typename }')).toEqual([400, 'BAD_USER_INPUT']);
    const batch = await fetch(api.graphqlUrl, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify([{ query: '{ __typename }' }, { query: '{ __typename }' }]),
    });
    expect(batch.status).toBe(400);
  });

  it('lets the explorer ask for the whole schema', async () => {
    const { getIntrospectionQuery } = await import('graphql');
    expect(await codeOf(getIntrospectionQuery({ descriptions: true, inputValueDeprecation: true }))).toEqual([
      200,
      undefined,
    ]);
  });
});

describe('Bodies', () => {
  let api: TestApi;

  beforeAll(async () => {
    api = await startApi();
  });
  afterAll(() => api.close());

  const post = (
    body: string | Uint8Array<ArrayBuffer>,
    headers: Record<string, string> = {},
  ): Promise<Response> =>
    fetch(api.graphqlUrl, {
      method: 'POST',
      headers: { 'content-type': 'application/json', ...headers },
      body,
    });
  const query = (bytes: number): string =>
    JSON.stringify({ query: '{ __typename }', variables: { x: 'a'.repeat(bytes) } });
  const codeIn = async (response: Response): Promise<unknown> =>
    ((await response.json()) as { errors: { extensions: { code: string } }[] }).errors[0]?.extensions.code;

  it('may have 64 KiB without a token, and a sheet with one', async () => {
    expect((await post(query(60_000))).status).toBe(200);
    const large = await post(query(70_000));
    expect([large.status, await codeIn(large)]).toEqual([413, 'BAD_USER_INPUT']);
    const authorization = `Bearer ${api.adminToken}`;
    expect((await post(query(5_000_000), { authorization })).status).toBe(200);
    expect((await post(query(9_000_000), { authorization })).status).toBe(413);
  });

  it('are counted when they do not say how long they are', async () => {
    const status = await new Promise<number | undefined>((resolve, reject) => {
      const headers = { 'content-type': 'application/json', 'transfer-encoding': 'chunked' };
      const request = httpRequest(api.graphqlUrl, { method: 'POST', headers }, (response) =>
        resolve(response.statusCode),
      );
      request.on('error', reject);
      request.end(query(70_000));
    });
    expect(status).toBe(413);
  });

  it.each([
    ['truncated JSON', '{"query": "{ __typen', {}, 400],
    ['nothing', '', {}, 400],
    ['a JSON string', '"{ __typename }"', {}, 400],
    ['null', 'null', {}, 400],
    ['no UTF-8', new Uint8Array([0x7b, 0xff, 0xfe, 0x7d]), {}, 400],
    ['plain text', '{ __typename }', { 'content-type': 'text/plain' }, 415],
    ['a form', 'query=%7B__typename%7D', { 'content-type': 'application/x-www-form-urlencoded' }, 415],
    ['several parts', 'x', { 'content-type': 'multipart/form-data; boundary=x' }, 415],
  ])('that are %s are refused', async (_what, body, headers, status) => {
    const response = await post(body, headers);
    expect([response.status, await codeIn(response)]).toEqual([status, 'BAD_USER_INPUT']);
  });

  it('do not come with a GET that writes', async () => {
    const mutation = encodeURIComponent('mutation { meetPublish(input: { meetId: "x" }) { meet { id } } }');
    const response = await fetch(`${api.graphqlUrl}?query=${mutation}`, {
      headers: { accept: 'application/json' },
    });
    expect([response.status, response.headers.get('allow')]).toEqual([405, 'POST']);
  });

  it.each([
    'query=a&query=b',
    'query={__typename}&variables={',
    'query={__typename}&variables=[1]',
    'query=%00',
  ])('nor with a query string like %s', async (search) => {
    const response = await fetch(`${api.graphqlUrl}?${search}`, { headers: { accept: 'application/json' } });
    expect([response.status, await codeIn(response)]).toEqual([expect.any(Number), 'BAD_USER_INPUT']);
    expect(response.status).toBeLessThan(500);
  });
});
