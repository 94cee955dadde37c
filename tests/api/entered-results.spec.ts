import { randomUUID } from 'node:crypto';
import { startApi, type TestApi } from '../support/api.js';
import { staffedCompetition, staffedMeet, type StaffedMeet } from '../support/circle.js';

const SET = `mutation ($input: EnteredResultSetInput!) { enteredResultSet(input: $input) {
  result { id title isRelay replacesId lines { bib club place status time wind } }
  isReplay
  userErrors { code path message remedy }
} }`;

const READ = `query ($id: ID!) { meet(id: $id) {
  enteredResults { id title lines { bib } }
  clubTable {
    teams isProvisional
    combined { place club points }
    enteredResults { result { id title } lines { bib club place points } }
  }
} }`;

const RACE = {
  title: '100 m women',
  categorySex: 'W',
  lines: [
    { bib: '11', club: 'Heron', place: 1, time: '12.04', wind: '+1.3' },
    { bib: '12', club: 'Otter', place: 2, time: '12.10', wind: '+1.3' },
    { bib: '13', club: 'Otter', place: 2, time: '12.1', wind: '+1.3' },
    { bib: '14', club: 'Lynx', status: 'DNF' },
  ],
};

const RELAY = {
  title: '4 x 400 m women',
  isRelay: true,
  lines: [
    { bib: 'Otter A', club: 'Otter', place: 1, time: '3:58.20' },
    { bib: 'Heron', club: 'Heron', place: 2, time: '4:01.77' },
  ],
};

describe('entered results', () => {
  let api: TestApi;
  let meet: StaffedMeet;

  beforeAll(async () => {
    api = await startApi();
  });
  afterAll(() => api.close());
  beforeEach(async () => {
    meet = await staffedMeet(api);
    await api.data(
      `mutation ($id: ID!) { meetScoringSet(input: { meetId: $id, preset: DUAL }) { userErrors { code } } }`,
      { id: meet.id },
      meet.director,
    );
  });

  async function enter(input: object, token = meet.referee): Promise<any> {
    const answer = await api.data(SET, { input: { meetId: meet.id, ...input } }, token);
    return answer.enteredResultSet;
  }

  async function read(): Promise<any> {
    return (await api.data(READ, { id: meet.id })).meet;
  }

  const shown = (clubs: any[]): string[] =>
    clubs.map(({ place, club, points }) => `${place} ${club} ${points}`);

  it('are read as they were written, and count for the clubs beside what was recorded', async () => {
    const { result } = await enter(RACE);
    expect(result.lines).toEqual([
      { bib: '11', club: 'Heron', place: 1, status: null, time: '12.04', wind: '+1.3' },
      { bib: '12', club: 'Otter', place: 2, status: null, time: '12.10', wind: '+1.3' },
      { bib: '13', club: 'Otter', place: 2, status: null, time: '12.1', wind: '+1.3' },
      { bib: '14', club: 'Lynx', place: null, status: 'DNF', time: null, wind: null },
    ]);
    await enter(RELAY);
    const { enteredResults, clubTable } = await read();
    expect(enteredResults.map(({ title }: any) => title)).toEqual([RACE.title, RELAY.title]);
    // 5-3-1 and 5-0 to relays; second and third are shared.
    expect(clubTable).toMatchObject({ teams: 3, isProvisional: false });
    expect(shown(clubTable.combined)).toEqual(['1 Otter 9', '2 Heron 5', '3 Lynx 0']);
    expect(clubTable.enteredResults[0]).toEqual({
      result: { id: result.id, title: RACE.title },
      lines: [
        { bib: '11', club: 'Heron', place: 1, points: '5' },
        { bib: '12', club: 'Otter', place: 2, points: '2' },
        { bib: '13', club: 'Otter', place: 2, points: '2' },
        { bib: '14', club: 'Lynx', place: null, points: '0' },
      ],
    });
    const competitors = [{ bib: '1', club: 'Stoat' }];
    await staffedCompetition(api, meet, {
      format: 'sectorline-sheet/1',
      rules: 'WA',
      event: 'shot',
      competitors,
    });
    const { clubTable: later } = await read();
    expect(later).toMatchObject({ teams: 4, isProvisional: true });
    expect(shown(later.combined)).toContain('3 Stoat 0');
  });

  it('are corrected by others, once each, and taken back by an empty one', async () => {
    const { result: first } = await enter(RACE);
    const corrected = { ...RACE, lines: RACE.lines.slice(1, 2).map((line) => ({ ...line, place: 1 })) };
    const { result: second } = await enter({
      ...corrected,
      replacesId: first.id,
      reason: 'photo read again',
    });
    expect(second.replacesId).toBe(first.id);
    const { enteredResults, clubTable } = await read();
    expect(enteredResults).toEqual([{ id: second.id, title: RACE.title, lines: [{ bib: '12' }] }]);
    expect(shown(clubTable.combined)).toEqual(['1 Otter 5']);
    const again = await enter({ ...RACE, replacesId: first.id, reason: 'again' });
    expect(again).toMatchObject({ result: null, userErrors: [{ code: 'REPLACED_ALREADY' }] });
    await enter({ ...RACE, lines: [], replacesId: second.id, reason: 'run again on Sunday' });
    expect((await read()).enteredResults).toEqual([]);
  });

  it('may be sent again, and two corrections at once leave one', async () => {
    const id = randomUUID();
    expect(await enter({ ...RACE, id })).toMatchObject({ isReplay: false, result: { id } });
    expect(await enter({ ...RACE, id })).toMatchObject({ isReplay: true, result: { id } });
    expect(await enter({ ...RELAY, id })).toMatchObject({
      result: null,
      userErrors: [{ code: 'ID_REUSED' }],
    });
    const correction = { ...RACE, replacesId: id, reason: 'read again' };
    const answers = await Promise.all(Array.from({ length: 6 }, () => enter(correction)));
    const codes = answers.map(({ userErrors }) => userErrors[0]?.code ?? 'stored').sort();
    expect(codes).toEqual([...Array<string>(5).fill('REPLACED_ALREADY'), 'stored']);
    expect((await read()).enteredResults).toHaveLength(1);
  });

  const [winner, second, , unfinished] = RACE.lines;

  it.each([
    ['a bib twice', { lines: [winner, { ...second, bib: '11' }] }, 'BIB_TWICE', ['lines', '1', 'bib']],
    ['a gap in the places', { lines: [winner, { ...second, place: 3 }] }, 'PLACES', ['lines', '1', 'place']],
    ['no first place', { lines: [second] }, 'PLACES', ['lines', '0', 'place']],
    ['neither place nor status', { lines: [{ bib: '9' }] }, 'PLACE_OR_STATUS', ['lines', '0', 'place']],
    [
      'a place of who did not finish',
      { lines: [{ ...unfinished, place: 1 }] },
      'PLACE_OR_STATUS',
      ['lines', '0', 'place'],
    ],
    ['a correction without a reason', { replacesId: randomUUID() }, 'REASON_MISSING', ['reason']],
    ['a reason for nothing', { reason: 'why not' }, 'REASON_NOT_EXPECTED', ['reason']],
    ['a correction of nothing', { replacesId: randomUUID(), reason: 'x' }, 'NOT_FOUND', ['replacesId']],
  ])('are refused with %s', async (_what, changes, code, path) => {
    const { result, userErrors } = await enter({ ...RACE, ...changes });
    expect(result).toBeNull();
    expect(userErrors).toEqual([expect.objectContaining({ code, path: ['input', ...path] })]);
  });

  it('do not correct those of another meet', async () => {
    const { result } = await enter(RACE);
    const other = await staffedMeet(api);
    const input = { ...RACE, meetId: other.id, replacesId: result.id, reason: 'x' };
    expect(await enter(input, other.referee)).toMatchObject({ userErrors: [{ code: 'NOT_FOUND' }] });
  });

  it('are entered by the referee or a director of the meet, and by no administrator', async () => {
    const other = await staffedMeet(api);
    for (const token of [other.director, api.adminToken]) {
      const { errors } = await api.send(SET, { input: { meetId: meet.id, ...RACE } }, token);
      expect(errors?.[0]?.extensions.code).toBe('FORBIDDEN');
    }
    expect((await enter(RACE, meet.director)).userErrors).toEqual([]);
  });
});
