import { randomUUID } from 'node:crypto';
import { call, newPerson, SESSION, signedInPerson, signIn } from '../support/accounts.js';
import { startApi, type TestApi } from '../support/api.js';
import { onConnection } from '../support/database.js';

const VIEWER = '{ viewer { label personId displayName grants { role on } } }';

let api: TestApi;
beforeAll(async () => {
  api = await startApi();
});
afterAll(() => api.close());

async function codeFor(token: string): Promise<string | undefined> {
  return (await api.send(VIEWER, {}, token)).errors?.[0]?.extensions.code;
}

const refresh = (refreshToken: string) => call(api, 'sessionRefresh', { refreshToken }, SESSION);

describe('a new person', () => {
  it('chooses a password with the one-time code, and is signed in', async () => {
    const { id, loginName, code } = await newPerson(api);
    expect(code).toMatch(/^[A-HJ-KMNP-TV-Z2-9]{5}(-[A-HJ-KMNP-TV-Z2-9]{5}){3}$/);
    const input = {
      loginName,
      setupCode: code.toLowerCase().replaceAll('-', ' '),
      password: 'two hammers and a net',
    };
    const { session, userErrors } = await call(api, 'passwordSetUp', { ...input, device: 'laptop' }, SESSION);
    expect(userErrors).toEqual([]);
    expect(session.person).toEqual({ id, loginName });
    expect(await api.data(VIEWER, {}, session.accessToken)).toEqual({
      viewer: { label: 'laptop', personId: id, displayName: 'Orla Fennick', grants: [] },
    });
    const again = await call(api, 'passwordSetUp', input, SESSION);
    expect(again).toMatchObject({ session: null, userErrors: [{ code: 'WRONG_CREDENTIALS' }] });
    expect((await signIn(api, ` ${loginName.toUpperCase()} `, input.password)).session.person.id).toBe(id);
  });

  it.each([
    ['short', 'nine char', 'has 9 characters'],
    ['of one character', 'a'.repeat(30), 'repeats'],
    ['of the login name', 'my-person-name-', 'login name'],
  ])('cannot choose a password %s, and keeps the code', async (_what, password, message) => {
    const loginName = 'person-name-' + randomUUID().slice(0, 4);
    const person = await newPerson(api, { loginName });
    const chosen = message === 'login name' ? `my ${loginName}!` : password;
    const input = { loginName, setupCode: person.code, password: chosen };
    const refused = await call(api, 'passwordSetUp', input, SESSION);
    expect(refused.userErrors).toMatchObject([{ code: 'PASSWORD_WEAK', path: ['input', 'password'] }]);
    expect(refused.userErrors[0].message).toContain(message);
    const taken = await call(api, 'passwordSetUp', { ...input, password: 'ten letter' }, SESSION);
    expect(taken.userErrors).toEqual([]);
  });

  it('may write in any script, whichever way the device composes the letters', async () => {
    const { loginName, code } = await newPerson(api);
    await call(api, 'passwordSetUp', { loginName, setupCode: code, password: 'Ångström 十種競技' }, SESSION);
    const { session } = await signIn(api, loginName, 'A\u030angstro\u0308m 十種競技');
    expect(session).not.toBeNull();
  });

  it('cannot use a code that has run out', async () => {
    const { loginName, code } = await newPerson(api);
    await onConnection(api.databaseUrl, (client) =>
      client.query(`UPDATE credential SET setup_expires_at = now() WHERE setup_hash IS NOT NULL`),
    );
    const input = { loginName, setupCode: code, password: 'two hammers and a net' };
    const { userErrors } = await call(api, 'passwordSetUp', input, SESSION);
    expect(userErrors).toMatchObject([{ code: 'WRONG_CREDENTIALS' }]);
  });
});

describe('what is stored of secrets', () => {
  it('is argon2id of the password with the parameters of OWASP, and hashes of codes and tokens', async () => {
    const person = await signedInPerson(api);
    const other = await newPerson(api);
    await onConnection(api.databaseUrl, async (client) => {
      const { rows: tables } = await client.query<{ name: string }>(
        `SELECT tablename AS name FROM pg_tables WHERE schemaname = 'public'`,
      );
      let all = '';
      for (const { name } of tables) {
        const { rows } = await client.query<{ row: string }>(`SELECT t::text AS row FROM ${name} AS t`);
        all += rows.map(({ row }) => row).join('\n');
      }
      expect(all).toContain(person.loginName);
      for (const secret of [person.password, person.refreshToken, person.accessToken, other.code])
        expect(all).not.toContain(secret);
      const { rows } = await client.query<{ hash: string }>(
        `SELECT password_hash AS hash FROM credential JOIN person ON id = person_id WHERE login_name = $1`,
        [person.loginName],
      );
      // OWASP Password Storage Cheat Sheet: Argon2id with at least 19 MiB, two passes, one lane.
      expect(rows[0]!.hash).toMatch(/^\$argon2id\$v=19\$m=19456,t=2,p=1\$/);
    });
  });
});

describe('a refresh token', () => {
  it('is good for one time, and gives the next one', async () => {
    const person = await signedInPerson(api);
    const { session } = await refresh(person.refreshToken);
    expect(session.refreshToken).not.toBe(person.refreshToken);
    expect(session.person.loginName).toBe(person.loginName);
    expect(await codeFor(session.accessToken)).toBeUndefined();
    const minutes = (Date.parse(session.accessExpiresAt) - Date.now()) / 60_000;
    expect(minutes).toBeGreaterThan(13);
    expect(minutes).toBeLessThan(16);
  });

  it('that comes back ends the session, also for whoever has the next one', async () => {
    const person = await signedInPerson(api);
    const other = (await signIn(api, person.loginName, person.password)).session;
    const { session } = await refresh(person.refreshToken);
    expect(await refresh(person.refreshToken)).toMatchObject({
      session: null,
      userErrors: [{ code: 'SESSION_ENDED', path: ['input', 'refreshToken'] }],
    });
    expect((await refresh(session.refreshToken)).userErrors).toMatchObject([{ code: 'SESSION_ENDED' }]);
    expect([await codeFor(session.accessToken), await codeFor(person.accessToken)]).toEqual([
      'UNAUTHENTICATED',
      'UNAUTHENTICATED',
    ]);
    expect(await codeFor(other.accessToken)).toBeUndefined();
  });

  it('sent twice at once is used once, and ends the session', async () => {
    const person = await signedInPerson(api);
    const answers = await Promise.all([1, 2, 3].map(() => refresh(person.refreshToken)));
    expect(answers.filter(({ session }) => session !== null)).toHaveLength(1);
    const { session } = answers.find(({ session: got }) => got !== null);
    expect(await codeFor(session.accessToken)).toBe('UNAUTHENTICATED');
  });

  it('does not work once it has run out', async () => {
    const person = await signedInPerson(api);
    await onConnection(api.databaseUrl, async (client) => {
      await client.query('ALTER TABLE refresh_token DISABLE TRIGGER USER');
      await client.query(`UPDATE refresh_token SET expires_at = now() WHERE session_id IN
        (SELECT s.id FROM login_session AS s JOIN person AS p ON p.id = s.person_id WHERE login_name = '${person.loginName}')`);
      await client.query('ALTER TABLE refresh_token ENABLE TRIGGER USER');
    });
    expect((await refresh(person.refreshToken)).userErrors).toMatchObject([{ code: 'SESSION_ENDED' }]);
  });
});

describe('signing out', () => {
  const signOut = (token: string, isEverywhere = false) =>
    call(api, 'signOut', { isEverywhere }, 'isSignedOut userErrors { code }', token);

  it('ends this session and no other', async () => {
    const person = await signedInPerson(api);
    const other = (await signIn(api, person.loginName, person.password)).session;
    await signOut(person.accessToken);
    expect([await codeFor(person.accessToken), await codeFor(other.accessToken)]).toEqual([
      'UNAUTHENTICATED',
      undefined,
    ]);
    expect((await refresh(person.refreshToken)).userErrors).toMatchObject([{ code: 'SESSION_ENDED' }]);
  });

  it('everywhere ends them all', async () => {
    const person = await signedInPerson(api);
    const other = (await signIn(api, person.loginName, person.password)).session;
    await signOut(person.accessToken, true);
    expect([await codeFor(person.accessToken), await codeFor(other.accessToken)]).toEqual([
      'UNAUTHENTICATED',
      'UNAUTHENTICATED',
    ]);
  });

  it('with a token of a post revokes it', async () => {
    const token = await api.token('admin');
    await signOut(token);
    expect(await codeFor(token)).toBe('UNAUTHENTICATED');
  });
});

describe('another password', () => {
  const change = (token: string, current: string, password: string) =>
    call(api, 'passwordChange', { current, password }, 'isChanged userErrors { code path }', token);

  it('is chosen with the one that holds, and ends the other sessions', async () => {
    const person = await signedInPerson(api);
    const other = (await signIn(api, person.loginName, person.password)).session;
    expect(await change(person.accessToken, 'something else', 'two hammers and a net')).toEqual({
      isChanged: false,
      userErrors: [{ code: 'WRONG_CREDENTIALS', path: ['input', 'current'] }],
    });
    expect((await change(person.accessToken, person.password, 'short')).userErrors).toEqual([
      { code: 'PASSWORD_WEAK', path: ['input', 'password'] },
    ]);
    expect((await change(person.accessToken, person.password, 'two hammers and a net')).isChanged).toBe(true);
    expect([await codeFor(person.accessToken), await codeFor(other.accessToken)]).toEqual([
      undefined,
      'UNAUTHENTICATED',
    ]);
    expect((await signIn(api, person.loginName, person.password)).session).toBeNull();
    expect((await signIn(api, person.loginName, 'two hammers and a net')).session).not.toBeNull();
  });

  it('is nothing for a token without a person', async () => {
    const document = `mutation { passwordChange(input: { current: "a", password: "b" }) { isChanged } }`;
    const { errors } = await api.send(document, {}, api.adminToken);
    expect(errors?.[0]?.extensions.code).toBe('UNAUTHENTICATED');
  });
});

describe('a closed account', () => {
  it('ends its sessions and takes no password, code or role any more', async () => {
    const person = await signedInPerson(api, [{ role: 'ADMIN' }]);
    const select = 'person { isClosed } userErrors { code }';
    const closed = await call(api, 'personClose', { personId: person.id }, select, api.adminToken);
    expect(closed).toEqual({ person: { isClosed: true }, userErrors: [] });
    expect(await codeFor(person.accessToken)).toBe('UNAUTHENTICATED');
    expect((await refresh(person.refreshToken)).session).toBeNull();
    expect((await signIn(api, person.loginName, person.password)).userErrors).toMatchObject([
      { code: 'WRONG_CREDENTIALS' },
    ]);
    const wanted = [
      ['setupCodeIssue', { personId: person.id }],
      ['roleGrant', { personId: person.id, role: 'ADMIN' }],
    ] as const;
    for (const [name, input] of wanted) {
      const { userErrors } = await call(api, name, input, 'userErrors { code path }', api.adminToken);
      expect(userErrors).toEqual([{ code: 'NOT_FOUND', path: ['input', 'personId'] }]);
    }
  });
});
