import { request } from 'node:http';
import { startApi, type TestApi } from '../support/api.js';

interface Page {
  readonly status: number | undefined;
  readonly headers: Readonly<Record<string, unknown>>;
  readonly body: string;
}

/** As a browser asks; `fetch` would not let a test say where the page goes. */
function open(url: string, headers: Readonly<Record<string, string>> = {}): Promise<Page> {
  return new Promise((resolve, reject) => {
    const asked = request(
      url,
      { headers: { accept: 'text/html', 'sec-fetch-dest': 'document', ...headers } },
      (response) => {
        const chunks: Buffer[] = [];
        response.on('data', (chunk: Buffer) => chunks.push(chunk));
        response.on('end', () =>
          resolve({
            status: response.statusCode,
            headers: response.headers,
            body: Buffer.concat(chunks).toString('utf8'),
          }),
        );
      },
    );
    asked.on('error', reject).end();
  });
}

describe('The explorer', () => {
  const token = 'token-of-the-demo';
  let api: TestApi;

  beforeAll(async () => {
    api = await startApi({
      explorer: { defaultQuery: 'query First { viewer { label } }', token: () => token },
    });
  });
  afterAll(() => api.close());

  it('opens at the endpoint with a query, and brings all it needs along', async () => {
    const { status, headers, body } = await open(api.graphqlUrl);
    expect([status, headers['content-type']]).toEqual([200, expect.stringContaining('text/html')]);
    expect(body).toContain('query First { viewer { label } }');
    expect(body.match(/<(script|link|img|iframe)\b[^>]*\b(src|href)="(https?:)?\/\/[^"]*"/g)).toBeNull();
    expect(headers['content-security-policy']).toContain("default-src 'self'");
  });

  it('holds the demo’s token only where a person opened it on this machine, and is not kept', async () => {
    const page = await open(api.graphqlUrl);
    expect(page.body).toContain(`Bearer ${token}`);
    expect(page.headers['cache-control']).toBe('no-store');
    const foreign: Readonly<Record<string, string>>[] = [
      { 'sec-fetch-dest': 'empty' },
      { 'sec-fetch-dest': 'iframe' },
      { host: 'rebound.example' },
    ];
    for (const headers of foreign) {
      expect((await open(api.graphqlUrl, headers)).body).not.toContain(token);
    }
  });

  it('leaves queries by GET to programs', async () => {
    const { status, body } = await open(`${api.graphqlUrl}?query={__typename}`, {
      accept: 'application/json',
    });
    expect([status, JSON.parse(body)]).toEqual([200, { data: { __typename: 'Query' } }]);
  });
});

describe('Without the explorer', () => {
  it('a browser is told that it cannot have a page', async () => {
    const api = await startApi();
    expect((await open(api.graphqlUrl)).status).toBe(406);
    await api.close();
  });
});
