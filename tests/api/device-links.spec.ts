import { randomUUID } from 'node:crypto';
import { answerTo, anyAddress, call } from '../support/accounts.js';
import { startApi, type TestApi } from '../support/api.js';
import { Circle } from '../support/at-the-circle.js';
import { discusSheet } from '../support/circle.js';

let api: TestApi;
let circle: Circle;
beforeAll(async () => {
  api = await startApi();
  circle = await Circle.open(api);
});
afterAll(() => api.close());

const LINK = `link { id on label from until devices used url qrSvg revokedBecause } isReplay userErrors { code path }`;
const EXCHANGED = 'token label grant { role on until } userErrors { code path }';
const UNTIL = '2999-01-01T00:00:00.000Z';

const make = (input: object = {}, token: string = circle.referee): Promise<any> =>
  call(
    api,
    'deviceLinkCreate',
    { on: circle.competition.id, label: 'Circle 2 tablet', until: UNTIL, ...input },
    LINK,
    token,
  );

const secretOf = (url: string): string => new URL(url).hash.replace('#link=', '');

const exchange = (link: string, deviceId: string = randomUUID(), more: object = {}): Promise<any> =>
  call(api, 'deviceLinkExchange', { link, deviceId, ...more }, EXCHANGED);

describe('a device link', () => {
  it('makes a tablet the official’s one for its competition, under its name', async () => {
    const { link, userErrors } = await make();
    expect(userErrors).toEqual([]);
    expect(link).toMatchObject({ on: circle.competition.id, label: 'Circle 2 tablet', devices: 1, used: 0 });
    const url = new URL(link.url);
    expect([url.origin, url.pathname, url.search]).toEqual([api.url, '/desk', '']);
    expect(link.qrSvg).toMatch(/^<svg [\s\S]*<\/svg>$/);
    const admitted = await exchange(secretOf(link.url), randomUUID(), { name: 'left' });
    expect(admitted).toMatchObject({
      label: 'Circle 2 tablet, left',
      grant: { role: 'OFFICIAL', on: circle.competition.id, until: UNTIL },
    });
    const { entry } = await circle.record(1, 1, '58.10', {}, admitted.token);
    expect(entry.standing).toBe('ACCEPTED');
    expect((await circle.journal()).at(-1)).toMatchObject({
      authority: 'official',
      device: 'Circle 2 tablet, left',
    });
  });

  it('lets in as many devices as it is for, each as often as it asks, also at once', async () => {
    const { link } = await make({ devices: 2 });
    const secret = secretOf(link.url);
    const devices = Array.from({ length: 5 }, () => randomUUID());
    const answers = await Promise.all(devices.map((device) => exchange(secret, device)));
    const inside = devices.filter((_, at) => answers[at].token !== null);
    expect(inside).toHaveLength(2);
    expect(answers.flatMap(({ userErrors }) => userErrors)).toEqual(
      Array.from({ length: 3 }, () => ({ code: 'ALL_DEVICES_IN', path: ['input', 'link'] })),
    );
    expect((await exchange(secret, inside[0])).token).not.toBeNull();
  });

  it('ends with every device that came in by it, at once', async () => {
    const { link } = await make();
    const { token } = await exchange(secretOf(link.url));
    const viewer = async () =>
      (await api.send('{ viewer { label } }', {}, token)).errors?.[0]?.extensions.code;
    expect(await viewer()).toBeUndefined();
    const revoked = await call(
      api,
      'deviceLinkRevoke',
      { linkId: link.id, reason: 'tablet lost' },
      'link { revokedBecause used } userErrors { code }',
      circle.director,
    );
    expect(revoked).toEqual({ link: { revokedBecause: 'tablet lost', used: 1 }, userErrors: [] });
    expect(await viewer()).toBe('UNAUTHENTICATED');
    expect((await exchange(secretOf(link.url))).userErrors).toMatchObject([{ code: 'NO_SUCH_LINK' }]);
  });

  it('works in its window only', async () => {
    const early = await make({ from: '2998-01-01T00:00:00Z' });
    expect((await exchange(secretOf(early.link.url))).userErrors).toMatchObject([{ code: 'NOT_YET' }]);
    const past = { from: '2020-01-01T00:00:00Z', until: '2020-01-02T00:00:00Z' };
    const late = await make(past);
    expect((await exchange(secretOf(late.link.url))).userErrors).toMatchObject([{ code: 'NO_SUCH_LINK' }]);
    expect((await make({ until: '2020-01-01T00:00:00Z' })).userErrors).toEqual([
      { code: 'WINDOW_EMPTY', path: ['input', 'until'] },
    ]);
  });

  it('cannot be guessed, and guessing waits', async () => {
    const { link } = await make();
    const secret = secretOf(link.url);
    const changed = `${secret.slice(0, -2)}${secret.endsWith('AA') ? 'BB' : 'AA'}`;
    const from = anyAddress();
    const codes = [];
    for (const guess of [changed, secret.slice(0, 22), `${secret}AAAA`, 'x', '#link=', changed]) {
      const input = { link: guess, deviceId: randomUUID() };
      const { data, errors } = await answerTo(api, 'deviceLinkExchange', input, EXCHANGED, null, from);
      codes.push(errors?.[0]?.extensions.code ?? data.deviceLinkExchange.userErrors[0]?.code);
    }
    expect(codes).toEqual([...Array.from({ length: 5 }, () => 'NO_SUCH_LINK'), 'RATE_LIMITED']);
  });

  it('is made, seen and revoked by the referee and the director of the meet alone', async () => {
    const other = await Circle.open(api);
    const { link } = await make();
    const read = async (token: string | null) => {
      const query = `query ($id: ID!) { meet(id: $id) { deviceLinks { id } } }`;
      const { data, errors } = await api.send(query, { id: circle.meet.id }, token);
      return errors?.[0]?.extensions.code ?? data.meet.deviceLinks.map(({ id }: any) => id).includes(link.id);
    };
    expect([
      await read(circle.referee),
      await read(circle.director),
      await read(circle.official),
      await read(other.director),
      await read(null),
    ]).toEqual([true, true, 'FORBIDDEN', 'FORBIDDEN', 'UNAUTHENTICATED']);
    const input = { linkId: link.id, reason: 'x' };
    const { errors } = await answerTo(api, 'deviceLinkRevoke', input, 'userErrors { code }', other.referee);
    expect(errors?.[0]?.extensions.code).toBe('FORBIDDEN');
  });

  it('is for a whole calling group, too', async () => {
    const fresh = await Circle.open(api);
    const input = { meetId: fresh.meet.id, title: 'Circle 2', competitionIds: [fresh.competition.id] };
    const { callingGroup } = await call(
      api,
      'callingGroupCreate',
      input,
      'callingGroup { id } userErrors { code }',
      fresh.director,
    );
    const { link } = await make({ on: callingGroup.id }, fresh.referee);
    expect(link.on).toBe(callingGroup.id);
    const { token } = await exchange(secretOf(link.url));
    expect((await fresh.record(1, 1, '57.10', {}, token)).entry.standing).toBe('ACCEPTED');
  });

  it('can be for the wind gauge: its devices read all, and give winds and nothing else', async () => {
    const pit = await Circle.open(api, discusSheet(2, { event: 'long-jump' }));
    const { link } = await make({ on: pit.competition.id, isWindsOnly: true }, pit.referee);
    const { token } = await exchange(secretOf(link.url));
    const { entry } = await pit.record(1, 1, '6.48');
    const code = async (mutation: string, input: object): Promise<string | undefined> => {
      const about = { competitionId: pit.competition.id, entryId: randomUUID(), ...input };
      const { errors } = await answerTo(api, mutation, about, 'userErrors { code }', token);
      return errors?.[0]?.extensions.code;
    };
    const trial = { competitorId: pit.competitorOf(2), round: 1, outcome: 'FOUL' };
    expect(await code('attemptRecord', trial)).toBe('FORBIDDEN');
    expect(await code('competitionInterrupt', { cause: 'LIGHT', seenAt: UNTIL })).toBe('FORBIDDEN');
    expect(await code('attemptWindRecord', { attemptId: entry.id, wind: '+1.3' })).toBeUndefined();
    const query = `query ($id: ID!) { viewer { grants { isWindsOnly } } competition(id: $id) { callList { name } journal(first: 9) { edges { node { kind } } } } }`;
    const { viewer, competition } = await api.data(query, { id: pit.competition.id }, token);
    expect(viewer.grants).toEqual([{ isWindsOnly: true }]);
    expect(competition.journal.edges.map(({ node }: any) => node.kind)).toEqual(['attempt', 'wind']);
  });

  it('is made once, however often the request is sent', async () => {
    const id = randomUUID();
    const [first, again] = [await make({ id }), await make({ id })];
    expect([first.isReplay, again.isReplay, again.link.url]).toEqual([false, true, first.link.url]);
    expect((await make({ id, label: 'Another' })).userErrors).toMatchObject([{ code: 'ID_REUSED' }]);
  });

  it('leaves its secret in no log', async () => {
    const { link } = await make();
    const { token } = await exchange(secretOf(link.url));
    const log = api.logged().join('\n');
    expect([log.includes(secretOf(link.url)), log.includes(token)]).toEqual([false, false]);
  });
});
