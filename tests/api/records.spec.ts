import { startApi, type TestApi } from '../support/api.js';
import { attemptOf, staffedMeet } from '../support/circle.js';
import { ADULT, CHILD, inWords, RecordScene } from '../support/record-scene.js';

let api: TestApi;
beforeAll(async () => {
  api = await startApi();
});
afterAll(() => api.close());

const sentences = (claims: readonly any[]): string[] =>
  claims.map(({ bib, sentence }) => `${bib} ${sentence}`);

describe('what a mark would be', () => {
  it('is told with the answer to the attempt, with what is outstanding', async () => {
    const scene = await RecordScene.open(api);
    await scene.starting({ mark: '48.00' });
    const discus = await scene.competition();
    const input = { competitorId: discus.competitors[0], round: 1, ...attemptOf('49.10') };
    const claims = await discus.wouldBe('attemptRecord', input);
    expect(claims.map(({ sentence }) => sentence)).toEqual([
      'is a personal best of 49.10, the first on the list',
      'is a season best of 49.10, the first on the list',
      'would be a club record of 49.10, before 48.00 (implement re-check, ratification outstanding)',
      'would be a meet record of 49.10, the first on the list (implement re-check, ratification outstanding)',
    ]);
    expect(claims[2]).toMatchObject({
      ...{
        kind: 'CLUB_RECORD',
        relation: 'BETTER',
        counts: false,
        whyNot: null,
        wind: 'LEGAL',
        decision: null,
      },
      ...{ of: scene.club, sex: 'W', age: 'senior', implementGrams: 1000, before: '48.00', isBeaten: false },
      outstanding: ['IMPLEMENT_RE_CHECK', 'RATIFICATION'],
    });
  });

  it('changes with a correction, and ends with a failure', async () => {
    const scene = await RecordScene.open(api);
    const discus = await scene.competition();
    const attemptId = await discus.record(1, 1, '49.10');
    const correct = (cell: string, expectedVersion: number): Promise<any[]> =>
      discus.wouldBe('attemptCorrect', {
        ...{ attemptId, ...attemptOf(cell), reason: 'read again', expectedVersion },
      });
    const version = await discus.version();
    expect((await correct('49.01', version)).map(({ mark }) => mark)).toEqual([
      '49.01',
      '49.01',
      '49.01',
      '49.01',
    ]);
    expect(await correct('X', version + 1)).toEqual([]);
    expect(await discus.claims()).toEqual([]);
  });

  it('waits for the wind, and is no best over the limit', async () => {
    const scene = await RecordScene.open(api);
    const event = { event: 'LONG_JUMP', title: 'Long jump, women', implementGrams: null };
    const jump = await scene.competition(event);
    const first = await jump.record(1, 1, '6.10');
    const [pending] = await jump.claims();
    expect(pending).toMatchObject({ wind: 'EXPECTED', counts: false, outstanding: ['WIND_READING'] });
    const [windy] = await jump.wouldBe('attemptWindRecord', { attemptId: first, wind: '+2.1' });
    expect(windy).toMatchObject({
      ...{ wind: 'OVER_THE_LIMIT', counts: false, whyNot: 'Wind over the limit.', outstanding: [] },
      sentence: '6.10, wind over the limit: no personal best (the first on the list)',
    });
    await jump.record(1, 2, '6.00 +2.0');
    expect(inWords(await scene.clubLists())).toEqual([
      'LONG_JUMP W senior: none | would be 6.00 | wind 6.10',
    ]);
    expect(inWords(await scene.bests(0))).toEqual([
      'LONG_JUMP: 6.00 | wind 6.10',
      'LONG_JUMP 2026-01-01: 6.00 | wind 6.10',
    ]);
  });

  it('with another implement is nothing in the lists of the category, and says so', async () => {
    const scene = await RecordScene.open(api);
    const discus = await scene.competition();
    const attempt = await discus.record(1, 1, '52.00', { implementGrams: 750 });
    expect(await discus.claims()).toEqual([]);
    await discus.enter('entryRule', {
      targetEntryId: attempt,
      decision: 'COUNT',
      reason: 'the crew gave out the wrong one',
    });
    await discus.record(1, 2, '40.00');
    const claims = await discus.claims();
    expect(claims.filter(({ whyNot }) => whyNot !== null).map(({ kind, whyNot }) => [kind, whyNot])).toEqual(
      ['PERSONAL_BEST', 'SEASON_BEST', 'CLUB_RECORD', 'MEET_RECORD'].map((kind) => [
        kind,
        'Thrown with 750 g; the list is of 1000 g.',
      ]),
    );
    expect(inWords(await scene.bests(0)).slice(0, 2)).toEqual(['DISCUS 1000: 40.00', 'DISCUS 750: 52.00']);
  });

  it('over a bar is each height that was cleared', async () => {
    const scene = await RecordScene.open(api);
    const heights = { heights: ['1.50', '1.55'] };
    const bar = await scene.competition({ event: 'HIGH_JUMP', implementGrams: null, vertical: heights });
    const turn = { competitorId: bar.competitors[0], height: '1.50', trial: 1 };
    const claims = await bar.wouldBe('jumpRecord', { ...turn, outcome: 'CLEARED' });
    expect(claims.map(({ mark }) => mark)).toEqual(['1.50', '1.50', '1.50', '1.50']);
    expect(claims[3].outstanding).toEqual(['MEASURING_OF_THE_BAR', 'RATIFICATION']);
  });
});

describe('the lists', () => {
  it('have the holder, who is level, who held it before, and where each mark comes from', async () => {
    const scene = await RecordScene.open(api);
    await scene.starting({ mark: '45.00', onDate: '1990-05-05', place: 'Old Ground' });
    await scene.starting({ mark: '47.00', onDate: '1998-06-06', athleteId: scene.athletes[0] });
    await scene.starting({ mark: '47.00', onDate: '2003-07-07' });
    const [list, ...others] = await scene.clubLists();
    expect(others).toEqual([]);
    expect(list.best.map(({ onDate, holder }: any) => [onDate, holder])).toEqual([
      ['1998-06-06', 'M. T.'],
      ['2003-07-07', null],
    ]);
    expect(list.history.map(({ mark, relation, until }: any) => [mark.mark, relation, until])).toEqual([
      ['45.00', 'FIRST', '1998-06-06'],
      ['47.00', 'BETTER', null],
      ['47.00', 'EQUAL', null],
    ]);
    expect(list.history[0].mark).toMatchObject({ place: 'Old Ground', competition: null, attempt: null });
  });

  it('of a meet hold through its years, whatever the year in its name, and no guests', async () => {
    const scene = await RecordScene.open(api);
    const last = await staffedMeet(api, { name: 'Otter Cup 2025', startsOn: '2025-06-14' });
    const next = await staffedMeet(api, { name: 'Otter Cup 2026' });
    const before = await scene.competition({ startsAt: '2025-06-14T10:00:00Z' }, last);
    await before.record(1, 1, '44.00');
    const now = await scene.competition({}, next);
    await now.record(2, 1, '43.00');
    expect((await now.claims()).filter(({ kind }) => kind === 'MEET_RECORD')).toEqual([]);
    await now.record(2, 2, '44.00');
    expect(sentences((await now.claims()).filter(({ kind }) => kind === 'MEET_RECORD'))).toEqual([
      '2 would be level with the meet record, before 44.00 (implement re-check, ratification outstanding)',
    ]);
    expect(inWords(await scene.meetLists(null, next))).toEqual([
      'DISCUS 1000 W senior: none | would be 44.00, 44.00',
    ]);
    expect(await scene.meetLists(null, last)).toEqual(await scene.meetLists(null, next));
  });

  it('are apart by category, and open to the young who throw what is thrown there', async () => {
    const scene = await RecordScene.open(api, [{ ...ADULT, birthDate: '2009-03-17' }]);
    const shot = await scene.competition({ event: 'SHOT', categoryAge: 'U18', implementGrams: 3000 });
    await shot.record(1, 1, '14.00');
    const discus = await scene.competition({ categoryAge: 'U18' });
    await discus.record(1, 1, '40.00');
    expect(inWords(await scene.clubLists())).toEqual([
      'DISCUS 1000 W U18: none | would be 40.00',
      'DISCUS 1000 W senior: none | would be 40.00',
      'SHOT 3000 W U18: none | would be 14.00',
    ]);
    expect(inWords(await scene.clubLists(null, '(event: SHOT)'))).toHaveLength(1);
  });

  it('are with or without a roof as the rule set says', async () => {
    const scene = await RecordScene.open(api);
    await scene.starting({ event: 'SHOT', mark: '14.10', implementGrams: 4000, isIndoor: true });
    await scene.starting({ event: 'SHOT', mark: '14.00', implementGrams: 4000 });
    expect(inWords(await scene.clubLists(null, '(rules: WA)'))).toEqual(['SHOT 4000 W senior: 14.10']);
    expect(inWords(await scene.clubLists(null, '(rules: USATF)'))).toEqual([
      'SHOT 4000 W senior outdoor: 14.00',
      'SHOT 4000 W senior indoor: 14.10',
    ]);
  });
});

describe('who may see', () => {
  it('names as the display rules say, and own bests only of adults who are shown by name', async () => {
    const scene = await RecordScene.open(api);
    const discus = await scene.competition();
    await discus.record(1, 1, '49.10');
    await discus.record(2, 1, '20.00');
    const seen = await discus.claims(null);
    expect(seen.map(({ kind, name }) => `${kind} ${name}`)).toEqual([
      'PERSONAL_BEST Maren Thistlewood',
      'SEASON_BEST Maren Thistlewood',
      'CLUB_RECORD Maren Thistlewood',
      'MEET_RECORD Maren Thistlewood',
    ]);
    await discus.record(2, 2, '50.00');
    const child = (await discus.claims(null)).filter(({ bib }) => bib === '2');
    expect(child.map(({ kind, name }) => `${kind} ${name}`)).toEqual([
      'CLUB_RECORD W. O.',
      'MEET_RECORD W. O.',
    ]);
    expect((await discus.claims()).filter(({ bib }) => bib === '2').map(({ name }) => name)).toContain(
      'Wenna Oakfold',
    );
    const [list] = await scene.clubLists();
    expect(list.wouldBe.map(({ holder }: any) => holder)).toEqual(['Maren Thistlewood', 'W. O.']);
    expect(JSON.stringify([await scene.clubLists(), await scene.meetLists(), seen])).not.toContain(
      CHILD.familyName,
    );
  });

  it('an old mark of who was a child then: not by name, though of age now', async () => {
    const scene = await RecordScene.open(api);
    await scene.starting({ athleteId: scene.athletes[0], mark: '30.00', onDate: '2009-05-05', age: 'U16' });
    expect((await scene.clubLists())[0].best[0].holder).toBe('M. T.');
    expect((await scene.clubLists(scene.meet.director))[0].best[0].holder).toBe('Maren Thistlewood');
  });

  it('bests in the rows of a table, and never from a kept answer', async () => {
    const scene = await RecordScene.open(api);
    const discus = await scene.competition();
    await discus.record(1, 1, '49.10');
    await discus.record(2, 1, '20.00');
    const query = `query ($id: ID!) { competition(id: $id) { table { rows { bib bests { kind mark counts } } } } }`;
    const read = async (token: string | null): Promise<any[]> =>
      (await api.data(query, { id: discus.id }, token)).competition.table.rows;
    const both = ['PERSONAL_BEST', 'SEASON_BEST'].map((kind) => ({ kind, mark: '49.10', counts: true }));
    expect(await read(null)).toEqual([
      { bib: '1', bests: both },
      { bib: '2', bests: [] },
    ]);
    expect((await read(discus.official))[1].bests).toHaveLength(2);
    await scene.starting({ athleteId: scene.athletes[0], mark: '60.00', onDate: '2020-05-05' });
    expect((await read(null))[0].bests.map(({ kind }: any) => kind)).toEqual(['SEASON_BEST']);
  });

  it('nothing of a meet that is not published, but those who work there', async () => {
    const scene = await RecordScene.open(api);
    const { meetCreate } = await api.data(
      `mutation { meetCreate(input: { name: "Hidden Trials", venue: "", startsOn: "2026-05-01",
         timeZone: "Europe/London", rules: WA }) { meet { id } } }`,
      {},
      api.adminToken,
    );
    const { id } = meetCreate.meet;
    const hidden = { id, director: await api.token('director', id), referee: await api.token('referee', id) };
    const trials = await scene.competition({ startsAt: null }, hidden);
    await trials.record(1, 1, '55.00');
    const discus = await scene.competition();
    await discus.record(1, 1, '49.10');
    expect((await discus.claims(null)).map(({ before }) => before)).toEqual([null, null, null, null]);
    expect(inWords(await scene.clubLists())).toEqual(['DISCUS 1000 W senior: none | would be 49.10']);
    expect(inWords(await scene.clubLists(hidden.director))).toEqual([
      'DISCUS 1000 W senior: none | would be 55.00',
    ]);
  });

  it('bests of an athlete: directors and administrators alone', async () => {
    const scene = await RecordScene.open(api);
    const query = `query ($id: ID!) { athlete(id: $id) { bests { kind } } }`;
    for (const [token, code] of [
      [null, 'UNAUTHENTICATED'],
      [scene.meet.referee, 'FORBIDDEN'],
    ] as const) {
      const { errors } = await api.send(query, { id: scene.athletes[1] }, token);
      expect(errors?.[0]?.extensions.code).toBe(code);
    }
    expect(await scene.bests(1, api.adminToken)).toEqual([]);
  });
});
