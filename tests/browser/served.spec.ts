import { gzipSync } from 'node:zlib';
import { HtmlValidate } from 'html-validate';
import { builtWeb, openField, type Field } from './support/field.js';

/** Zipped, with everything that the page needs; the notebook draws its plots. */
const MOST_BYTES = { '/desk': 150 * 1024, '/notebook': 250 * 1024 };

describe('what the server sends', () => {
  let field: Field;
  beforeAll(async () => {
    field = await openField();
  });
  afterAll(() => field.close());

  const get = (path: string, headers: Record<string, string> = {}): Promise<Response> =>
    fetch(`${field.api.url}${path}`, { headers });

  it.each(['/desk', '/notebook'] as const)('keeps little on a device for %s', async (page) => {
    const files = await builtWeb();
    const worker = files.get('/offline.worker.js')!.plain.toString();
    const [, kept = ''] = new RegExp(`"${page}":(\\{.*?\\})`).exec(worker) ?? [];
    const { files: names } = JSON.parse(kept) as { files: string[] };
    expect(names).toContain(page);
    const bytes = names
      .map((name) => files.get(name)!)
      .filter(({ type }) => !type.startsWith('image/'))
      .reduce((sum, { plain }) => sum + gzipSync(plain, { level: 9 }).length, 0);
    expect(bytes).toBeGreaterThan(10_000);
    expect(bytes).toBeLessThan(MOST_BYTES[page]);
  });

  it('is a page that is asked for anew, runs nothing foreign and shows in no frame', async () => {
    const page = await get('/desk');
    expect(page.status).toBe(200);
    expect(page.headers.get('content-type')).toBe('text/html; charset=utf-8');
    expect(page.headers.get('cache-control')).toBe('no-cache');
    const policy = page.headers.get('content-security-policy') ?? '';
    expect(policy).toContain("default-src 'self'");
    expect(policy).toContain("frame-ancestors 'none'");
    expect(policy).not.toContain('unsafe');
    expect(await page.text()).not.toMatch(/<script(?![^>]* src=)|<style| style=| on\w+=/);
    const again = await get('/desk', { 'if-none-match': page.headers.get('etag') ?? '' });
    expect(again.status).toBe(304);
  });

  it('is valid HTML', async () => {
    const report = await new HtmlValidate({
      extends: ['html-validate:recommended'],
      rules: { 'void-style': 'off', 'doctype-style': 'off' },
    }).validateString(await (await get('/desk')).text());
    expect(report.results.flatMap(({ messages }) => messages)).toEqual([]);
  });

  it('keeps what is named by its content for ever, and zips it', async () => {
    const html = await (await get('/desk')).text();
    const [, script = ''] = /src="(\/web\/[^"]+\.js)"/.exec(html) ?? [];
    const answer = await get(script, { 'accept-encoding': 'gzip' });
    expect(answer.headers.get('cache-control')).toMatch(/immutable/);
    expect(answer.headers.get('content-encoding')).toBe('gzip');
    expect(answer.headers.get('x-content-type-options')).toBe('nosniff');
  });

  it.each(['/desk.html', '/web', '/web/', '/built-from', '/web/..%2fbuilt-from', '/web/../package.json'])(
    'has nothing at %s',
    async (path) => {
      expect((await get(path)).status).toBe(404);
    },
  );
});
