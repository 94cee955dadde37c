import { randomUUID } from 'node:crypto';
import {
  answerTo,
  anyAddress,
  call,
  giveRole,
  newPerson,
  signedInPerson,
  signIn,
} from '../support/accounts.js';
import { startApi, type TestApi } from '../support/api.js';
import { Circle } from '../support/at-the-circle.js';

let api: TestApi;
beforeAll(async () => {
  api = await startApi();
});
afterAll(() => api.close());

const GRANT =
  'grant { id role on until isOpen givenBy reason revokedBy revokedBecause } userErrors { code path }';

async function codeOf(...request: Parameters<typeof answerTo>): Promise<string | undefined> {
  const { errors, data } = await answerTo(...request);
  return errors?.[0]?.extensions.code ?? data[request[1]].userErrors[0]?.code;
}

describe('a role', () => {
  it('holds from the moment it is given to the moment it is taken away, for sessions that are open', async () => {
    const circle = await Circle.open(api);
    const person = await signedInPerson(api);
    const record = async (round: number) => {
      const input = { competitorId: circle.competitorOf(1), round, outcome: 'FOUL' };
      const entry = { competitionId: circle.competition.id, entryId: randomUUID(), ...input };
      return codeOf(api, 'attemptRecord', entry, 'userErrors { code }', person.accessToken);
    };
    expect(await record(1)).toBe('FORBIDDEN');
    const grantId = await giveRole(api, person.id, { role: 'OFFICIAL', on: circle.competition.id });
    expect(await record(1)).toBeUndefined();
    const taken = await call(api, 'roleRevoke', { grantId, reason: 'went home' }, GRANT, circle.director);
    expect(taken.grant).toMatchObject({ isOpen: false, revokedBecause: 'went home' });
    expect(await record(2)).toBe('FORBIDDEN');
    const journal = await circle.journal();
    expect(journal.map(({ actor }) => Buffer.from(`Person:${actor}`).toString('base64url'))).toEqual([
      person.id,
    ]);
  });

  it('stays on record when it was taken away, with who, when and why', async () => {
    const circle = await Circle.open(api);
    const { id } = await newPerson(api);
    const input = { personId: id, role: 'REFEREE', on: circle.meet.id, reason: 'chief of throws' };
    const { grant } = await call(api, 'roleGrant', input, GRANT, circle.director);
    await call(api, 'roleRevoke', { grantId: grant.id, reason: 'a mistake' }, GRANT, circle.director);
    const again = await call(
      api,
      'roleRevoke',
      { grantId: grant.id, reason: 'again' },
      GRANT,
      circle.director,
    );
    expect(again.userErrors).toEqual([{ code: 'ALREADY_SO', path: ['input', 'grantId'] }]);
    const select = '{ id reason givenBy givenAt revokedBy revokedAt revokedBecause person { displayName } }';
    const { meet } = await api.data(
      `query ($id: ID!) { meet(id: $id) { roles ${select} } }`,
      { id: circle.meet.id },
      circle.director,
    );
    expect(meet.roles).toEqual([
      {
        ...{ id: grant.id, reason: 'chief of throws', givenBy: grant.givenBy, revokedBy: grant.givenBy },
        ...{ revokedBecause: 'a mistake', person: { displayName: 'Orla Fennick' } },
        givenAt: expect.any(String),
        revokedAt: expect.any(String),
      },
    ]);
  });

  it('is given by a director at the own meet alone, and not of an athlete or of everything', async () => {
    const circle = await Circle.open(api);
    const other = await Circle.open(api);
    const { id: personId } = await newPerson(api);
    const athlete = await call(
      api,
      'athleteCreate',
      { givenName: 'Odalys', familyName: 'Thornwick', sex: 'W' },
      'athlete { id } userErrors { code }',
      api.adminToken,
    );
    const give = (role: string, on: string | null) =>
      codeOf(api, 'roleGrant', { personId, role, on }, 'userErrors { code }', circle.director);
    expect([
      await give('OFFICIAL', circle.competition.id),
      await give('REFEREE', circle.meet.id),
      await give('DIRECTOR', circle.meet.id),
      await give('OFFICIAL', other.competition.id),
      await give('REFEREE', other.meet.id),
      await give('COACH', athlete.athlete.id),
      await give('ADMIN', null),
    ]).toEqual([undefined, undefined, undefined, 'FORBIDDEN', 'FORBIDDEN', 'FORBIDDEN', 'FORBIDDEN']);
    for (const [role, on] of [
      ['REFEREE', circle.competition.id],
      ['OFFICIAL', circle.meet.id],
      ['GUARDIAN', circle.meet.id],
      ['ADMIN', circle.meet.id],
      ['DIRECTOR', null],
    ] as const) {
      const given = await call(api, 'roleGrant', { personId, role, on }, GRANT, api.adminToken);
      expect([role, given.userErrors]).toEqual([role, [{ code: 'NOT_FOUND', path: ['input', 'on'] }]]);
    }
  });

  it('is given for no longer than whoever gives it has it', async () => {
    const circle = await Circle.open(api);
    const until = '2999-01-01T00:00:00.000Z';
    const director = await api.token('director', circle.meet.id, { until: Date.parse(until) / 1000 });
    const { id: personId } = await newPerson(api);
    const input = { personId, role: 'REFEREE', on: circle.meet.id };
    const own = await call(api, 'roleGrant', input, GRANT, director);
    expect(own.grant.until).toBe(until);
    const longer = { ...input, until: '2999-01-02T00:00:00Z' };
    expect((await call(api, 'roleGrant', longer, GRANT, director)).userErrors).toEqual([
      { code: 'BEYOND_OWN', path: ['input', 'until'] },
    ]);
    const token = { role: 'REFEREE', on: circle.meet.id, label: 'x', until: longer.until };
    expect(await codeOf(api, 'tokenIssue', token, 'userErrors { code }', director)).toBe('BEYOND_OWN');
  });

  it('is given once, however often the request is sent', async () => {
    const { id: personId } = await newPerson(api);
    const input = { id: randomUUID(), personId, role: 'ADMIN' };
    const select = 'isReplay userErrors { code }';
    expect([
      await call(api, 'roleGrant', input, select, api.adminToken),
      await call(api, 'roleGrant', input, select, api.adminToken),
      (await call(api, 'roleGrant', { ...input, reason: 'other' }, select, api.adminToken)).userErrors,
    ]).toEqual([
      { isReplay: false, userErrors: [] },
      { isReplay: true, userErrors: [] },
      [{ code: 'ID_REUSED' }],
    ]);
  });
});

describe('a coach, an athlete and a guardian', () => {
  it('see the athlete whom their role is for, with the bests, and no other', async () => {
    const made = await Promise.all(
      ['Odalys', 'Maelis'].map((givenName) =>
        call(
          api,
          'athleteCreate',
          { givenName, familyName: 'Thornwick', sex: 'W', birthDate: '2011-04-02' },
          'athlete { id } userErrors { code }',
          api.adminToken,
        ),
      ),
    );
    const [own, other] = made.map(({ athlete }) => athlete.id as string);
    const query = `query ($id: ID!) { athlete(id: $id) { givenName birthDate bests { kind } } }`;
    for (const role of ['COACH', 'ATHLETE', 'GUARDIAN']) {
      const person = await signedInPerson(api, [{ role, on: own! }]);
      const seen = await api.data(query, { id: own }, person.accessToken);
      expect(seen.athlete).toEqual({ givenName: 'Odalys', birthDate: '2011-04-02', bests: [] });
      const { errors } = await api.send(query, { id: other }, person.accessToken);
      expect(errors?.[0]?.extensions.code).toBe('FORBIDDEN');
    }
  });
});

describe('an account', () => {
  it('has a login name of its own', async () => {
    const { loginName } = await newPerson(api);
    const input = { loginName: loginName.toUpperCase(), displayName: 'Bruno Tarwick' };
    expect(await codeOf(api, 'personCreate', input, 'userErrors { code }', api.adminToken)).toBe(
      'NAME_TAKEN',
    );
  });

  it('gets another code from a director only if it could do no more than the director', async () => {
    const circle = await Circle.open(api);
    const other = await Circle.open(api);
    const { id: personId } = await newPerson(api);
    const issue = () => codeOf(api, 'setupCodeIssue', { personId }, 'userErrors { code }', circle.director);
    await giveRole(api, personId, { role: 'REFEREE', on: circle.meet.id });
    expect(await issue()).toBeUndefined();
    await giveRole(api, personId, { role: 'OFFICIAL', on: other.competition.id });
    expect(await issue()).toBe('FORBIDDEN');
  });

  it('is seen by its person, and by those who give roles', async () => {
    const person = await signedInPerson(api);
    const stranger = await signedInPerson(api);
    const read = async (token: string | null) =>
      (await api.send(`query ($id: ID!) { person(id: $id) { loginName } }`, { id: person.id }, token)).data
        ?.person;
    expect([await read(person.accessToken), await read(stranger.accessToken), await read(null)]).toEqual([
      { loginName: person.loginName },
      null,
      null,
    ]);
  });
});

describe('a token of a post', () => {
  it('is revoked under its id, at once and for good', async () => {
    const circle = await Circle.open(api);
    const input = { role: 'OFFICIAL', on: circle.competition.id, label: 'Circle 2 tablet' };
    const issued = await call(api, 'tokenIssue', input, 'token tokenId', circle.director);
    const viewer = async () =>
      (await api.send('{ viewer { label } }', {}, issued.token)).errors?.[0]?.extensions.code;
    expect(await viewer()).toBeUndefined();
    const revoke = { tokenId: issued.tokenId, reason: 'tablet lost' };
    const select = 'isRevoked userErrors { code }';
    expect(await codeOf(api, 'tokenRevoke', revoke, select, circle.director)).toBe('FORBIDDEN');
    expect((await call(api, 'tokenRevoke', revoke, select, api.adminToken)).isRevoked).toBe(true);
    expect(await viewer()).toBe('UNAUTHENTICATED');
    expect(await codeOf(api, 'tokenRevoke', revoke, select, api.adminToken)).toBe('ALREADY_SO');
  });

  it('is none of coaches, athletes and guardians, who are people', async () => {
    for (const role of ['COACH', 'ATHLETE', 'GUARDIAN']) {
      const input = { role, label: 'x' };
      expect(await codeOf(api, 'tokenIssue', input, 'userErrors { code }', api.adminToken)).toBe(
        'NEEDS_PERSON',
      );
    }
  });
});

describe('guessing', () => {
  const wrong = (loginName: string, from: string) =>
    answerTo(api, 'signIn', { loginName, password: 'not this one' }, 'userErrors { code }', null, from);

  it('waits after five failures for an account, wherever they come from, and for no other account', async () => {
    const [person, other] = [await signedInPerson(api), await signedInPerson(api)];
    for (let time = 0; time < 5; time += 1) {
      const { data } = await wrong(person.loginName, anyAddress());
      expect(data.signIn.userErrors).toEqual([{ code: 'WRONG_CREDENTIALS' }]);
    }
    const { errors } = await wrong(person.loginName, anyAddress());
    expect(errors?.[0]?.extensions).toMatchObject({ code: 'RATE_LIMITED', retryAfterMs: expect.any(Number) });
    expect(errors?.[0]?.extensions.retryAfterMs).toBeLessThanOrEqual(60_000);
    expect((await signIn(api, other.loginName, other.password)).session).not.toBeNull();
  });

  it('waits after five failures from an address, whoever is tried', async () => {
    const from = anyAddress();
    const answers = [];
    for (let time = 0; time < 6; time += 1) answers.push(await wrong(`nobody-${time}`, from));
    expect(answers.map(({ errors }) => errors?.[0]?.extensions.code)).toEqual([
      ...Array.from({ length: 5 }, () => undefined),
      'RATE_LIMITED',
    ]);
  });

  it('does not count what succeeds: a crew behind one address signs in together', async () => {
    const from = anyAddress();
    const person = await signedInPerson(api);
    for (let time = 0; time < 8; time += 1) {
      const { loginName, password } = person;
      const { data } = await answerTo(
        api,
        'signIn',
        { loginName, password },
        'userErrors { code }',
        null,
        from,
      );
      expect(data.signIn.userErrors).toEqual([]);
    }
  });

  it('is not made cheaper by aliases: a document proves once who one is', async () => {
    const one = `signIn(input: { loginName: "someone", password: "a" }) { userErrors { code } }`;
    const twice = `mutation { a: ${one} b: ${one} }`;
    const hidden = `mutation { ...A ...B } fragment A on Mutation { a: ${one} } fragment B on Mutation { b: ${one} }`;
    for (const query of [twice, hidden]) {
      const { status, errors } = await api.send(query);
      expect([status, errors?.[0]?.extensions.code]).toEqual([400, 'QUERY_TOO_EXPENSIVE']);
    }
  });

  it('learns nothing from the answer about who has an account', async () => {
    const person = await signedInPerson(api);
    const select = 'session { accessToken } userErrors { code message path remedy }';
    const [known, unknown] = await Promise.all(
      [person.loginName, 'nobody-at-all'].map((loginName) =>
        call(api, 'signIn', { loginName, password: 'not this one' }, select),
      ),
    );
    expect(known).toEqual(unknown);
  });
});

it('no password, code or token reaches the log', async () => {
  const { loginName, code } = await newPerson(api);
  const password = 'two hammers and a net';
  const { session } = await call(
    api,
    'passwordSetUp',
    { loginName, setupCode: code, password },
    'session { accessToken refreshToken }',
  );
  await signIn(api, loginName, 'two hammers and a nut');
  await call(api, 'sessionRefresh', { refreshToken: session.refreshToken }, 'userErrors { code }');
  await api.send(
    `mutation { signIn(input: { loginName: "${loginName}", password: "${password}" }) { nothing } }`,
  );
  await api.send('{ viewer { label } }', {}, `${session.accessToken}x`);
  const log = api.logged().join('\n');
  expect(log).toContain('"message":"request"');
  const secrets = [code, password, 'two hammers and a nut', session.accessToken, session.refreshToken];
  for (const secret of secrets) expect(log).not.toContain(secret);
});
