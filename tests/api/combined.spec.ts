import { combinedPoints } from '#rules';
import { randomUUID } from 'node:crypto';
import { startApi, type TestApi } from '../support/api.js';
import { call, CombinedScene, held, refused, rowOf } from '../support/combined.js';
import { enterInJournal, staffedCompetition, staffedMeet, type StaffedMeet } from '../support/circle.js';

let api: TestApi;
let meet: StaffedMeet;

beforeAll(async () => {
  api = await startApi();
  meet = await staffedMeet(api);
});
afterAll(() => api.close());

describe('a combined event is set up', () => {
  const create = (input: object, token = meet.director): Promise<any> =>
    call(api, token, 'combinedEventCreate', { meetId: meet.id, title: 'Combined', ...input });

  it('once for an id, by the meet’s rules or its own, with what ties mean there', async () => {
    const id = randomUUID();
    const input = { id, programme: 'DECATHLON' };
    const made = await create(input);
    expect(made).toMatchObject({ isReplay: false, userErrors: [] });
    expect(await create(input)).toMatchObject({ isReplay: true, combinedEvent: made.combinedEvent });
    expect(await create({ ...input, programme: 'HEPTATHLON' })).toMatchObject({
      userErrors: [{ code: 'ID_REUSED' }],
    });
    const { combinedEvent } = await create({ programme: 'PENTATHLON_INDOOR', rules: 'NCAA' });
    const read = `query ($id: ID!) { combinedEvent(id: $id) { rules ties scoringSex components { event hasWind } } }`;
    expect((await api.data(read, { id: combinedEvent.id })).combinedEvent).toEqual({
      ...{ rules: 'NCAA', ties: 'MORE_EVENTS', scoringSex: 'W' },
      components: ['HURDLES_60', 'HIGH_JUMP', 'SHOT', 'LONG_JUMP', 'RUN_800'].map((event) => ({
        event,
        hasWind: false,
      })),
    });
  });

  it.each([
    ['tables of the other sex', { programme: 'HEPTATHLON', scoringSex: 'M' }, 'SCORING_SEX', 'scoringSex'],
    ['no tables where both are', { programme: 'THROWS_PENTATHLON' }, 'SCORING_SEX', 'scoringSex'],
    [
      'an edition that is not here',
      { programme: 'DECATHLON', edition: '1912' },
      'UNKNOWN_EDITION',
      'edition',
    ],
  ])('not with %s', async (_what, input, code, field) => {
    const { combinedEvent, userErrors } = await create(input);
    expect(combinedEvent).toBeNull();
    expect(userErrors).toEqual([expect.objectContaining({ code, path: ['input', field] })]);
  });

  it('with entrants of different bibs, who leave again unless the journal names them', async () => {
    const scene = await CombinedScene.open(api, meet, ['1', '2']);
    const enter = (input: object): Promise<any> =>
      call(api, meet.director, 'combinedEntrantEnter', { combinedEventId: scene.id, ...input });
    const again = await enter({ listedName: 'Someone Else', bib: '1' });
    expect(again.userErrors).toEqual([
      expect.objectContaining({ code: 'BIB_TAKEN', path: ['input', 'bib'] }),
    ]);
    expect((await enter({ bib: '9' })).userErrors[0].code).toBe('ATHLETE_OR_NAME');
    await scene.time('1', 'HURDLES_100', '13.90 +0.3');
    const withdraw = (bib: string): Promise<any> =>
      call(api, meet.director, 'combinedEntrantWithdraw', { entrantId: scene.entrants[bib] });
    expect((await withdraw('1')).userErrors[0].code).toBe('IN_JOURNAL');
    expect((await withdraw('2')).userErrors).toEqual([]);
    expect((await scene.read()).standing.rows.map(({ bib }: any) => bib)).toEqual(['1']);
  });

  it('and listed with its meet', async () => {
    const own = await staffedMeet(api);
    const scene = await CombinedScene.open(api, own, []);
    const read = `query ($id: ID!) { meet(id: $id) { combinedEvents { id title standing { isProvisional } } } }`;
    expect((await api.data(read, { id: own.id })).meet.combinedEvents).toEqual([
      { id: scene.id, title: 'Heptathlon women', standing: { isProvisional: true } },
    ]);
  });
});

describe('times', () => {
  it('give points at once, totals after every event, and places with their reasons', async () => {
    const scene = await CombinedScene.open(api, meet);
    const first = await scene.time('1', 'HURDLES_100', '12.69 +0.5');
    expect(first).toMatchObject({
      entry: { sequence: 1, standing: 'ACCEPTED', notices: [] },
      isReplay: false,
    });
    expect(first.combinedEvent).toMatchObject({ status: 'OPEN' });
    await scene.time('2', 'HURDLES_100', '13.0');
    await scene.mark('2', 'HIGH_JUMP', '1.86');
    const read = await scene.read();
    // By hand 0.24 s are added before the formula.
    const hurdles = combinedPoints('W', '100mh', 1324)!;
    const highJump = combinedPoints('W', 'high-jump', 186)!;
    const [leader, second, waiting] = read.standing.rows;
    expect(leader).toMatchObject({ bib: '2', place: 1, total: hurdles + highJump, decidedBy: 'first' });
    expect(leader.results.slice(0, 2)).toMatchObject([
      { event: 'HURDLES_100', outcome: 'VALID', mark: '13.0', timing: 'HAND', wind: null, points: hurdles },
      {
        event: 'HIGH_JUMP',
        mark: '1.86',
        points: highJump,
        isEntered: true,
        runningTotal: leader.total,
        placeAfter: 1,
      },
    ]);
    const total = combinedPoints('W', '100mh', 1269)!;
    expect(second).toMatchObject({
      bib: '1',
      place: 2,
      total,
      reason: `2nd: ${total} points, ${leader.total - total} behind`,
    });
    expect(second.results[0]).toMatchObject({
      runningTotal: total,
      placeAfter: 1,
      wind: '+0.5',
      timing: 'ELECTRONIC',
    });
    expect(waiting).toMatchObject({ bib: '3', place: null, status: null, reason: 'No result yet' });
    expect(read.components.slice(0, 3).map(({ progress }: any) => progress)).toEqual([
      'RUNNING',
      'RUNNING',
      'TO_COME',
    ]);
    expect(read.standing).toMatchObject({ isProvisional: true, isComplete: false, isDisputed: false });
  });

  it('may be sent again under their id, with another content not', async () => {
    const scene = await CombinedScene.open(api, meet);
    const entryId = randomUUID();
    const sent = await scene.time('1', 'HURDLES_100', '13.90 +0.3', meet.referee, { entryId });
    const again = await scene.time('1', 'HURDLES_100', '13.90 +0.3', meet.referee, { entryId });
    expect([sent.isReplay, again.isReplay, again.entry]).toEqual([false, true, sent.entry]);
    expect(await scene.time('1', 'HURDLES_100', '13.91 +0.3', meet.referee, { entryId })).toEqual(
      refused('ID_REUSED', 'entryId'),
    );
    const other = await CombinedScene.open(api, meet);
    expect(await other.time('1', 'HURDLES_100', '13.90 +0.3', meet.referee, { entryId })).toEqual(
      refused('ID_REUSED', 'entryId'),
    );
    const at = await Promise.all(
      ['1', '2', '3'].flatMap((bib) => [
        scene.time(bib, 'RUN_200', '25.10 +0.0'),
        scene.time(bib, 'RUN_800', '2:20.00'),
      ]),
    );
    expect(at.map(({ entry }) => entry.sequence).sort((a, b) => a - b)).toEqual([2, 3, 4, 5, 6, 7]);
  });

  it('are corrected with a reason and the version that was seen, and taken back', async () => {
    const scene = await CombinedScene.open(api, meet);
    const { entry, combinedEvent } = await scene.time('1', 'HURDLES_100', '13.90 +0.3');
    const correction = { targetEntryId: entry.id, outcome: 'FINISHED', time: '13.09', reason: 'photo' };
    const stale = await scene.enter('combinedTimeCorrect', { ...correction, expectedVersion: 0 });
    expect(stale.userErrors).toEqual([
      expect.objectContaining({ code: 'VERSION_CONFLICT', currentVersion: combinedEvent.version }),
    ]);
    await scene.enter('combinedTimeCorrect', { ...correction, expectedVersion: combinedEvent.version });
    // The wind was left out of the correction and stays.
    const [row] = (await scene.read()).standing.rows;
    expect(row.results[0]).toMatchObject({ mark: '13.09', wind: '+0.3' });
    const reversal = {
      targetEntryId: entry.id,
      reason: 'wrong heat',
      expectedVersion: await scene.version(),
    };
    await scene.enter('combinedEntryReverse', reversal);
    expect(rowOf(await scene.read(), '1')).toMatchObject({ place: null, total: 0 });
    const journal = `query ($id: ID!) { combinedEvent(id: $id) { journal(first: 10) { edges { node { sequence kind body authority } } } } }`;
    const { edges } = (await api.data(journal, { id: scene.id }, meet.referee)).combinedEvent.journal;
    expect(edges.map(({ node }: any) => [node.sequence, node.kind, node.body.reason])).toEqual([
      [1, 'result', undefined],
      [2, 'correction', 'photo'],
      [3, 'reversal', 'wrong heat'],
    ]);
  });

  it.each([
    ['without a time', 'HURDLES_100', { outcome: 'FINISHED' }, 'MARK_MISSING', 'time'],
    [
      'with a time of who did not finish',
      'HURDLES_100',
      { outcome: 'DNF', time: '13.90' },
      'MARK_NOT_EXPECTED',
      'time',
    ],
    [
      'with wind where none is measured',
      'RUN_800',
      { outcome: 'FINISHED', time: '2:20.00', wind: '+1.0' },
      'WIND_NOT_MEASURED',
      'wind',
    ],
    [
      'of a race that is not in the programme',
      'RUN_1500',
      { outcome: 'FINISHED', time: '5:20.00' },
      'UNKNOWN_EVENT',
      'event',
    ],
    ['of a put', 'SHOT', { outcome: 'FINISHED', time: '12.00' }, 'MARK_NOT_EXPECTED', 'time'],
    [
      'with the wind of no time',
      'HURDLES_100',
      { outcome: 'DNS', wind: '+1.0' },
      'WIND_NOT_EXPECTED',
      'wind',
    ],
  ])('are refused %s', async (_what, event, input, code, field) => {
    const scene = await CombinedScene.open(api, meet, ['1']);
    const answer = await scene.enter('combinedTimeRecord', {
      entrantId: scene.entrants['1'],
      event,
      ...input,
    });
    expect(answer).toEqual(refused(code, field));
    expect((await scene.read()).version).toBe(1);
  });

  it('marks in feet and inches are not converted', async () => {
    const scene = await CombinedScene.open(api, meet, ['1']);
    expect(await scene.mark('1', 'SHOT', '40-06.25')).toEqual(refused('MARK_UNIT', 'mark'));
  });
});

describe('what may have been seen and does not fit', () => {
  it('a time of somebody who did not start an earlier event is held until that is corrected', async () => {
    const scene = await CombinedScene.open(api, meet);
    const { entry: absent } = await scene.time('1', 'HURDLES_100', 'DNS');
    const late = await scene.time('1', 'RUN_200', '24.90 +0.1');
    expect(late).toEqual(held('OUT_OF_EVENT'));
    expect(late.entry.hold).toMatchObject({
      rule: 'WA TR39, combined events',
      message: expect.stringContaining('No. 1'),
    });
    const before = await scene.read();
    expect(rowOf(before, '1')).toMatchObject({ status: 'DNS', place: null, total: 0 });
    expect(before.standing.isDisputed).toBe(true);
    const ruling = { targetEntryId: late.entry.id, reason: 'seen' };
    expect(await scene.enter('combinedEntryRule', { ...ruling, decision: 'COUNT' })).toEqual(
      refused('NOT_BY_RULING', 'decision'),
    );
    const questions = `query ($id: ID!) { combinedEvent(id: $id) { questions { entry holdCode } } }`;
    expect((await api.data(questions, { id: scene.id }, meet.referee)).combinedEvent.questions).toEqual([
      { entry: late.entry.id, holdCode: 'OUT_OF_EVENT' },
    ]);
    await scene.enter('combinedTimeCorrect', {
      ...{ targetEntryId: absent.id, outcome: 'FINISHED', time: '14.20', wind: '+0.3', reason: 'wrong bib' },
      expectedVersion: await scene.version(),
    });
    expect(rowOf(await scene.read(), '1')).toMatchObject({
      place: 1,
      total: combinedPoints('W', '100mh', 1420)! + combinedPoints('W', '200m', 2490)!,
    });
  });

  it('a second time waits for the referee, who rules which counts', async () => {
    const scene = await CombinedScene.open(api, meet);
    await scene.time('1', 'HURDLES_100', '13.90 +0.3');
    const second = await scene.time('1', 'HURDLES_100', '13.70 +0.3');
    expect(second).toEqual(held('RESULT_TAKEN'));
    const ruling = { targetEntryId: second.entry.id, decision: 'COUNT', reason: 'photo' };
    expect((await scene.enter('combinedEntryRule', ruling)).userErrors).toEqual([]);
    expect(rowOf(await scene.read(), '1').results[0]).toMatchObject({ mark: '13.70' });
    expect(await scene.enter('combinedEntryRule', ruling)).toEqual(refused('ALREADY_SO', 'decision'));
  });

  it('who gives up keeps the points so far and has no place', async () => {
    const scene = await CombinedScene.open(api, meet);
    await scene.time('1', 'HURDLES_100', '13.90 +0.3');
    await scene.time('2', 'HURDLES_100', 'DNF');
    const out = { entrantId: scene.entrants['1'], status: 'DNF', fromEvent: 'HIGH_JUMP' };
    await scene.enter('combinedStartSet', out);
    expect(await scene.enter('combinedStartSet', { ...out, status: 'DNS', fromEvent: null })).toEqual(
      refused('HAS_RESULTS', 'status'),
    );
    await scene.enter('combinedStartSet', { entrantId: scene.entrants['3'], status: 'DNS' });
    const read = await scene.read();
    expect(
      read.standing.rows.map(({ bib, place, status, total }: any) => [bib, place, status, total]),
    ).toEqual([
      ['2', 1, null, 0],
      ['1', null, 'DNF', combinedPoints('W', '100mh', 1390)],
      ['3', null, 'DNS', 0],
    ]);
    expect(read.sheet.rows.find(({ bib }: any) => bib === '1').marks).toMatchObject({
      '100mh': '13.90',
      'high-jump': 'DNS',
    });
  });
});

describe('a field event is counted from a competition of the meet', () => {
  const sheet = (bibs: readonly string[], more: object = {}): object => ({
    ...{ format: 'sectorline-sheet/1', rules: 'WA', event: 'shot', plan: { rounds: 3, cuts: [] } },
    competitors: bibs.map((bib) => ({ bib })),
    ...more,
  });

  it('as it stands, competitors matched by bib, and what does not fit is said', async () => {
    const scene = await CombinedScene.open(api, meet);
    const shot = await staffedCompetition(api, meet, sheet(['1', '2', '7']));
    expect((await scene.link('SHOT', shot.id)).userErrors).toEqual([]);
    const put = (bib: string, round: number, cell: object): Promise<any> =>
      enterInJournal(api, shot.official, 'attemptRecord', {
        ...{ competitionId: shot.id, competitorId: shot.competitors[bib], round, ...cell },
      });
    await put('1', 1, { outcome: 'VALID', mark: '12.10' });
    await put('2', 1, { outcome: 'FOUL' });
    const read = await scene.read();
    expect(rowOf(read, '1').results[2]).toMatchObject({
      ...{ event: 'SHOT', mark: '12.10', points: combinedPoints('W', 'shot', 1210) },
      ...{ isEntered: false, isProvisional: true },
    });
    expect(rowOf(read, '2').results[2]).toMatchObject({ outcome: null, points: null });
    const component = read.components[2];
    expect(component).toMatchObject({ source: 'LINKED', progress: 'RUNNING', competition: { id: shot.id } });
    expect(component.problems).toEqual([
      { code: 'NOT_IN_COMPETITION', bib: '3' },
      { code: 'NOT_IN_COMBINED_EVENT', bib: '7' },
    ]);
    expect(await scene.mark('1', 'SHOT', '12.10')).toEqual(refused('COMPONENT_LINKED', 'event'));
    // An official of the competition also keeps the times.
    expect((await scene.time('1', 'HURDLES_100', '13.90 +0.3', shot.official)).entry.standing).toBe(
      'ACCEPTED',
    );
    for (const round of [2, 3]) await put('2', round, { outcome: 'FOUL' });
    expect(rowOf(await scene.read(), '2').results[2]).toMatchObject({ outcome: 'NM', points: 0 });
    await enterInJournal(api, shot.official, 'competitorStartSet', {
      ...{ competitionId: shot.id, competitorId: shot.competitors['7'], status: 'DNS' },
    });
  });

  it('who does not start there is out, and a later time is held', async () => {
    const scene = await CombinedScene.open(api, meet);
    const shot = await staffedCompetition(api, meet, sheet(['1', '2', '3']));
    await scene.link('SHOT', shot.id);
    await scene.time('1', 'HURDLES_100', '13.90 +0.3');
    await enterInJournal(api, shot.official, 'competitorStartSet', {
      ...{ competitionId: shot.id, competitorId: shot.competitors['1'], status: 'DNS' },
    });
    expect(await scene.time('1', 'RUN_200', '25.00 +0.0')).toEqual(held('OUT_OF_EVENT'));
    expect(rowOf(await scene.read(), '1')).toMatchObject({ status: 'DNF', place: null });
  });

  it('of the same event and meet, in metres, and before marks are entered; other terms are said, not refused', async () => {
    const scene = await CombinedScene.open(api, meet);
    const code = async (event: string, id: string): Promise<string | undefined> =>
      (await scene.link(event, id)).userErrors[0]?.code;
    const shot = await staffedCompetition(api, meet, sheet(['1']));
    expect(await code('JAVELIN', shot.id)).toBe('WRONG_EVENT');
    expect(await code('RUN_200', shot.id)).toBe('NOT_A_FIELD_EVENT');
    expect(await code('DISCUS', shot.id)).toBe('NOT_A_FIELD_EVENT');
    const inches = await staffedCompetition(api, meet, sheet(['1'], { rules: 'NFHS' }), 'QIN');
    expect(await code('SHOT', inches.id)).toBe('WRONG_UNIT');
    const other = await staffedMeet(api);
    const away = await staffedCompetition(api, other, sheet(['1']));
    expect(await code('SHOT', away.id)).toBe('NOT_FOUND');
    await scene.mark('1', 'SHOT', '11.00');
    expect(await code('SHOT', shot.id)).toBe('HAS_RESULTS');
    const six = await staffedCompetition(api, meet, {
      ...sheet(['1', '2', '3']),
      event: 'javelin',
      plan: {},
    });
    expect(await code('JAVELIN', six.id)).toBeUndefined();
    expect((await scene.read()).components[5].problems).toEqual([{ code: 'NOT_THREE_TRIALS', bib: null }]);
    const { combinedEvent } = await scene.link('JAVELIN', six.id);
    expect(combinedEvent.version).toBe(await scene.version());
    expect((await scene.link('JAVELIN', null)).userErrors).toEqual([]);
    expect((await scene.read()).components[5]).toMatchObject({ source: 'ENTERED', problems: [] });
  });
});
