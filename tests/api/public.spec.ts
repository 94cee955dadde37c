import { randomUUID } from 'node:crypto';
import { startApi, type TestApi } from '../support/api.js';
import { Bar, highJumpSheet } from '../support/at-the-bar.js';
import { Circle } from '../support/at-the-circle.js';
import { discusSheet } from '../support/circle.js';
import { crowdScene, PRIVATE, type CrowdScene } from '../support/crowd-scene.js';

let api: TestApi;
let crowd: CrowdScene;
beforeAll(async () => {
  api = await startApi();
  crowd = await crowdScene(api);
});
afterAll(() => api.close());

const get = (path: string, headers: Record<string, string> = {}): Promise<Response> =>
  fetch(`${api.url}${path}`, { headers });
const read = async (path: string): Promise<any> => (await get(path)).json();
const table = (circle: Circle): Promise<any> => read(`/public/competitions/${circle.competition.id}.json`);

describe('what everybody may read of a competition', () => {
  it('is each trial, the places with their reasons, what is needed now and who is up', async () => {
    const circle = await Circle.open(api, discusSheet(3, { event: 'discus' }));
    await circle.recordCard(['58.10', '57.02'], ['58.10', '57.44'], ['X']);
    const shown = await table(circle);
    expect(shown).toMatchObject({
      format: 'sectorline-public-competition/1',
      event: 'discus',
      ...{ kind: 'rounds', unit: 'cm', state: 'running', round: 2, rounds: 6, isDisputed: false },
      meet: { name: 'Heron Field Open', timeZone: 'Europe/London' },
    });
    expect(shown.calls.map(({ bib, round }: any) => [bib, round])).toEqual([
      ['3', 2],
      ['1', 3],
      ['2', 3],
    ]);
    const [first, second, third] = shown.rows;
    expect(first).toMatchObject({
      ...{ bib: '2', name: '#2', place: 1, mark: '58.10' },
      trials: [
        { round: 1, cell: '58.10', isBest: true },
        { round: 2, cell: '57.44', isBest: false },
      ],
    });
    expect(second).toMatchObject({
      ...{ place: 2, reason: '2nd: equal best 58.10; second best 57.02 against 57.44', rule: 'WA TR25.22' },
      why: { by: 'mark', nth: 2, level: ['58.10'], own: '57.02', other: '57.44' },
      needs: { places: [{ place: 1, mark: '57.44', isShared: false }] },
    });
    expect(third).toMatchObject({ place: null, mark: null, why: null, trials: [{ cell: 'X' }] });
  });

  it('says where the cut lies among more than may go on', async () => {
    const circle = await Circle.open(api, discusSheet(9));
    const marks = Array.from({ length: 9 }, (_, at) => [`4${9 - at}.00`]);
    await circle.recordCard(...marks);
    const { cuts, rows } = await table(circle);
    expect(cuts).toMatchObject([{ afterRound: 3, line: '42.00' }]);
    // Level on 42.00, and 41.00 before against nothing.
    expect(rows[8].needs.cut).toEqual({ afterRound: 3, isIn: false, mark: '42.00', isEqualEnough: true });
    expect(rows[0].needs.cut).toMatchObject({ isIn: true });
  });

  it('at a bar is where it lies, and the tries at each height', async () => {
    const bar = await Bar.open(api, highJumpSheet(2, ['1.70', '1.75']));
    await bar.height('1.70', 'O', 'XO');
    const shown = await table(bar.circle);
    expect(shown).toMatchObject({
      kind: 'bar',
      bar: { height: '1.75' },
      heights: ['1.70', '1.75'],
      rounds: null,
    });
    expect(shown.rows.map(({ heights }: any) => heights.map(({ cell }: any) => cell))).toEqual([
      ['O', null],
      ['XO', null],
    ]);
    expect(shown.rows[1].why).toMatchObject({ by: 'height', decidedBy: 'failures at height' });
  });

  it('says plainly that it was stopped, and no closer why than the crowd has to know', async () => {
    const circle = await Circle.open(api);
    const seenAt = '2026-06-13T12:00:00Z';
    const stop = { cause: 'INJURY', note: 'a dog from the quarry', seenAt };
    await circle.enter('competitionInterrupt', stop);
    expect((await table(circle)).stop).toEqual({
      ...{ cause: 'safety', since: '2026-06-13T12:00:00.000Z', notBefore: null },
    });
    await circle.enter('competitionInterrupt', { ...stop, cause: 'LIGHTNING' });
    const shown = await table(circle);
    expect(shown.stop).toMatchObject({ cause: 'lightning', notBefore: '2026-06-13T12:30:00.000Z' });
    expect(shown.calls).toEqual([]);
  });

  it('says that a result is complete, under protest, official', async () => {
    const circle = await Circle.open(api, discusSheet(2, { plan: { rounds: 1, cuts: [] } }));
    await circle.record(1, 1, '50.00');
    await circle.record(2, 1, 'X', { protestedMark: '51.00' });
    const shown = await table(circle);
    expect(shown).toMatchObject({ state: 'under protest', isDisputed: true });
    expect(shown.ifProtestsSucceed.map(({ place, mark }: any) => [place, mark])).toEqual([
      [1, '51.00'],
      [2, '50.00'],
    ]);
    const single = await Circle.open(api, discusSheet(1, { plan: { rounds: 1, cuts: [] } }));
    await single.recordCard(['50.00']);
    expect((await table(single)).state).toBe('unofficial');
    const { version: expectedVersion } = await single.read();
    await single.enter('competitionSignOff', { expectedVersion }, single.referee);
    expect((await table(single)).state).toBe('official');
  });
});

describe('beside the competitions', () => {
  it('a meet is seen at a glance, with what is delayed and why', async () => {
    const circle = await Circle.open(api);
    const slots = [
      {
        competitionIds: [circle.competition.id],
        facility: 'cage',
        startsAt: '2026-06-13T10:00:00Z',
        minutes: 60,
      },
    ];
    const plan = { meetId: circle.meet.id, expectedRevision: 0, slots };
    await api.data(
      `mutation ($input: TimetableSetInput!) { timetableSet(input: $input) { userErrors { code } } }`,
      { input: { ...plan, facilities: [{ key: 'cage', name: 'Cage, north' }], sharedGrounds: [] } },
      circle.director,
    );
    await api.data(
      `mutation ($input: TimetableDelayInput!) { timetableDelay(input: $input) { userErrors { code } } }`,
      {
        input: {
          ...{ competitionId: circle.competition.id, expectedRevision: 1, minutes: 20 },
          reason: 'the cage gate had to be mended',
        },
      },
      circle.director,
    );
    const meet = await read(`/public/meets/${circle.meet.id}.json`);
    const delay = {
      ...{ plannedAt: '2026-06-13T10:00:00.000Z', startsAt: '2026-06-13T10:20:00.000Z' },
      reason: 'the cage gate had to be mended',
    };
    expect(meet).toMatchObject({
      format: 'sectorline-public-meet/1',
      hasClubTable: false,
      competitions: [{ facility: 'Cage, north', state: 'scheduled', competitors: 3, delay, leaders: [] }],
    });
    expect(await table(circle)).toMatchObject({ delay, startsAt: delay.startsAt });
    await circle.recordCard(['50.00']);
    expect(await read(`/public/meets/${circle.meet.id}.json`)).toMatchObject({
      competitions: [{ state: 'running', round: 1, delay: null, leaders: [{ mark: '50.00' }] }],
    });
  });

  it('a club has its athletes, its points, and pages for those alone who are shown by their whole name', async () => {
    const { scene, discus } = crowd;
    const { meets, name } = await read(`/public/clubs/${scene.clubId}.json`);
    expect(name).toBe(scene.club);
    expect(meets).toHaveLength(1);
    const { lines } = meets[0].competitions[0];
    expect(lines.map((line: any) => [line.name, line.mark, line.athlete !== null])).toEqual([
      ['Maren Thistlewood', '36.22', true],
      ['W. O.', '31.05', false],
      ['#3', null, false],
    ]);
    expect(await read(`/public/athletes/${lines[0].athlete}.json`)).toMatchObject({
      name: 'Maren Thistlewood',
      meets: [{ competitions: [{ id: discus.id, lines: [{ mark: '36.22' }] }] }],
    });
    for (const athlete of scene.athletes.slice(1)) {
      expect((await get(`/public/athletes/${athlete}.json`)).status).toBe(404);
    }
    expect(await read(`/public/club-tables/${scene.meet.id}.json`)).toMatchObject({
      isProvisional: true,
      clubs: [{ place: 1, club: scene.club, points: '8' }],
      events: [{ points: [{ points: '5' }, { points: '3' }] }],
    });
  });
});

describe('the crowd', () => {
  it('may read from any site, keeps it a while, and is told when nothing has changed', async () => {
    const circle = await Circle.open(api);
    await circle.recordCard(['50.00']);
    const path = `/public/competitions/${circle.competition.id}.json`;
    const answer = await get(path, { origin: 'https://harriers.example' });
    expect(answer.headers.get('access-control-allow-origin')).toBe('*');
    expect(answer.headers.get('content-type')).toBe('application/json; charset=utf-8');
    expect(answer.headers.get('cache-control')).toBe('public, max-age=2');
    const etag = answer.headers.get('etag')!;
    const again = await get(path, { 'if-none-match': etag });
    expect([again.status, await again.text()]).toEqual([304, '']);
    await circle.record(2, 1, '51.00');
    const fresh = await get(path, { 'if-none-match': etag });
    expect([fresh.status, fresh.headers.get('etag') === etag]).toEqual([200, false]);
  });

  it('is told in a problem that something is not there, or not for the public', async () => {
    const { hidden } = crowd;
    const paths = [
      ...['competitions/nothing.json', `competitions/${crowd.discus.id}`, `meets/${crowd.discus.id}.json`],
      ...[`meets/${hidden.meetId}.json`, `competitions/${hidden.competitionId}.json`],
      `athletes/${Buffer.from(`Athlete:${randomUUID()}`).toString('base64url')}.json`,
    ];
    for (const path of paths) {
      const answer = await get(`/public/${path}`, { authorization: `Bearer ${api.adminToken}` });
      expect([path, answer.status, answer.headers.get('content-type')]).toEqual([
        path,
        404,
        'application/problem+json; charset=utf-8',
      ]);
    }
  });

  it('finds nothing private in any document', async () => {
    const { scene, discus } = crowd;
    const { meets } = await read(`/public/clubs/${scene.clubId}.json`);
    const paths = [
      ...[`meets/${scene.meet.id}`, `club-tables/${scene.meet.id}`, `competitions/${discus.id}`],
      ...[`clubs/${scene.clubId}`, `athletes/${meets[0].competitions[0].lines[0].athlete}`],
    ];
    for (const path of paths) {
      const text = await (await get(`/public/${path}.json`)).text();
      expect(text).toContain('Maren Thistlewood'.slice(0, path.startsWith('club-t') ? 0 : undefined));
      for (const [what, words] of Object.entries(PRIVATE)) {
        expect([path, what, words.filter((word) => text.includes(word))]).toEqual([path, what, []]);
      }
    }
  });
});
