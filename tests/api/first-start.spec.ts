import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { migratedDatabase, type TestDatabase } from '../support/database.js';
import { Program, READY } from '../support/program.js';

async function ask(url: string, query: string, token: string | null = null): Promise<any> {
  const response = await fetch(`${url}/graphql`, {
    method: 'POST',
    headers: { 'content-type': 'application/json', ...(token && { authorization: `Bearer ${token}` }) },
    body: JSON.stringify({ query }),
  });
  return response.json();
}

const signIn = (loginName: string, password: string): string =>
  `mutation { signIn(input: { loginName: "${loginName}", password: "${password}" }) {
     session { accessToken } userErrors { code } } }`;

const VIEWER = '{ viewer { displayName grants { role } } }';

describe('an installation', () => {
  let data: string;
  let database: TestDatabase;
  const running: Program[] = [];
  const start = async (environment: Readonly<Record<string, string>>): Promise<[Program, string]> => {
    const program = Program.start(data, { DATABASE_URL: database.url, ...environment });
    running.push(program);
    return [program, (await program.says(READY))[1]!];
  };

  beforeAll(async () => {
    data = await mkdtemp(join(tmpdir(), 'first-start-'));
    database = await migratedDatabase();
  });
  afterAll(async () => {
    for (const program of running) await program.end('SIGTERM');
    await database.drop();
    await rm(data, { recursive: true, force: true });
  });

  it('knows nobody of a demonstration that ran on it, and makes its first administrator once', async () => {
    const [demo, demoUrl] = await start({ DEMO: '1' });
    const [, admin = ''] = /admin +(ey\S+)/.exec(demo.output) ?? [];
    const people = [...demo.output.matchAll(/(demo\.\w+) +([0-9a-z]{5}-[0-9a-z]{5}-[0-9a-z]{5})/g)].map(
      ([, loginName, password]) => [loginName!, password!] as const,
    );
    expect(people.map(([loginName]) => loginName)).toEqual([
      ...['demo.director', 'demo.referee', 'demo.official', 'demo.coach'],
    ]);
    expect(demo.output).not.toContain('one-time code');
    const sessions: string[] = [];
    for (const [loginName, password] of people) {
      const { data: answer } = await ask(demoUrl, signIn(loginName, password));
      sessions.push(answer.signIn.session.accessToken);
      const { data: seen } = await ask(demoUrl, VIEWER, sessions.at(-1));
      const roles = new Set(seen.viewer.grants.map(({ role }: { role: string }) => role));
      expect([...roles]).toEqual([loginName.replace('demo.', '').toUpperCase()]);
    }
    expect((await ask(demoUrl, VIEWER, admin)).data.viewer.grants).toEqual([{ role: 'ADMIN' }]);
    await demo.end('SIGTERM');

    const [real, realUrl] = await start({});
    for (const token of [admin, ...sessions])
      expect((await ask(realUrl, VIEWER, token)).errors[0].extensions.code).toBe('UNAUTHENTICATED');
    for (const [loginName, password] of people.slice(0, 2)) {
      const { data: answer } = await ask(realUrl, signIn(loginName, password));
      expect(answer.signIn).toEqual({ session: null, userErrors: [{ code: 'WRONG_CREDENTIALS' }] });
    }
    const [, name, code] = /login name +(\S+)\s+one-time code +(\S+)/.exec(real.output) ?? [];
    const setUp = `mutation { passwordSetUp(input: { loginName: "${name}", setupCode: "${code}", password: "two hammers and a net" }) {
      session { accessToken } userErrors { code } } }`;
    const { data: chosen } = await ask(realUrl, setUp);
    const { accessToken } = chosen.passwordSetUp.session;
    expect((await ask(realUrl, VIEWER, accessToken)).data.viewer).toEqual({
      displayName: 'Administrator',
      grants: [{ role: 'ADMIN' }],
    });
    await real.end('SIGTERM');

    const [again] = await start({});
    expect(again.output).not.toContain('one-time code');
    expect(await again.end('SIGTERM')).toBe(0);
  }, 180_000);

  it('in production tells of the first administrator where no machine reads, and of nothing else', async () => {
    const other = await migratedDatabase();
    const program = Program.start(data, { NODE_ENV: 'production', DATABASE_URL: other.url });
    running.push(program);
    await program.says(/"message":"listening"/);
    while (!program.errors.includes('npm run token')) await new Promise((resolve) => setTimeout(resolve, 20));
    const [, code = ''] = /one-time code +(\S+)/.exec(program.errors) ?? [];
    expect(code).toMatch(/^[A-Z2-9]{5}(-[A-Z2-9]{5}){3}$/);
    expect(program.output).not.toContain(code);
    expect(program.output).not.toMatch(/\bey[\w-]+\./);
    expect(await program.end('SIGTERM')).toBe(0);
    await other.drop();
  }, 120_000);
});
