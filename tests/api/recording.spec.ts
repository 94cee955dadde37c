import { randomUUID } from 'node:crypto';
import { startApi, type TestApi } from '../support/api.js';
import { Circle } from '../support/at-the-circle.js';
import { discusSheet, staffedMeet } from '../support/circle.js';

let api: TestApi;
beforeAll(async () => {
  api = await startApi();
});
afterAll(() => api.close());

describe('a trial that is accepted', () => {
  it('opens the competition and shows at once in table, call, needed marks and journal', async () => {
    const circle = await Circle.open(api);
    const before = await circle.read();
    const entryId = randomUUID();
    const payload = await circle.record(1, 1, '58.10', { entryId });
    expect(payload).toEqual({
      entry: { id: entryId, sequence: 1, standing: 'ACCEPTED', notices: [], hold: null },
      isReplay: false,
      competition: { version: expect.any(Number), status: 'OPEN' },
      userErrors: [],
    });
    expect(payload.competition.version).toBeGreaterThan(before.version);

    const { version, status, table, progress, needed, questions } = await circle.read();
    expect([version, status, table.version]).toEqual([
      payload.competition.version,
      'OPEN',
      payload.competition.version,
    ]);
    expect(table.rows[0]).toMatchObject({ bib: '1', place: 1, mark: '58.10', decidedBy: 'first' });
    expect(table.rows[0].series).toEqual([
      {
        entry: entryId,
        round: 1,
        cell: '58.10',
        wind: null,
        isWindPending: false,
        foul: null,
        protestedMark: null,
      },
    ]);
    expect(progress).toEqual({
      phase: 'running',
      round: 1,
      remaining: 17,
      up: { bib: '2', round: 1 },
      next: { bib: '3', round: 1 },
      then: { bib: '1', round: 2 },
    });
    // Any mark is second; 58.10 itself shares the lead, as neither would have a second mark.
    expect(needed.find(({ bib }: any) => bib === '2')).toMatchObject({
      place: null,
      round: 1,
      places: [
        { place: 2, mark: '0.01', isShared: false, rivalBest: null, equalMark: null },
        { place: 1, mark: '58.10', isShared: true, rivalBest: '58.10', equalMark: 'shares' },
      ],
    });
    expect([questions, table.isDisputed, table.isOfficial]).toEqual([[], false, false]);
    expect(await circle.journal()).toMatchObject([
      { id: entryId, sequence: 1, kind: 'attempt', standing: 'accepted' },
    ]);
  });

  it('is written as on a field card, whatever became of it', async () => {
    const circle = await Circle.open(api, discusSheet(2));
    await circle.record(1, 1, 'X', { foul: 'SECTOR' });
    await circle.record(1, 2, '-');
    await circle.record(1, 3, '58.10');
    await circle.record(1, 4, 'r');
    const { rows } = (await circle.read()).table;
    expect(rows[0].series.map(({ cell, foul }: any) => [cell, foul])).toEqual([
      ['X', 'SECTOR'],
      ['-', null],
      ['58.10', null],
      ['r', null],
    ]);
    expect(rows[0]).toMatchObject({ place: 1, mark: '58.10' });
  });

  // WA Technical Rules, rule 25.22: the second best performance of those who are level decides, and so on.
  it('breaks a tie by the next best mark and says so', async () => {
    const circle = await Circle.open(api, discusSheet(2));
    await circle.recordCard(['58.10', '57.02'], ['57.44', '58.10']);
    const { rows } = (await circle.read()).table;
    expect(rows).toMatchObject([
      { bib: '2', place: 1, mark: '58.10', isEqual: false },
      { bib: '1', place: 2, mark: '58.10', isEqual: false, decidedBy: '2nd best' },
    ]);
    expect(rows[1].reason).toBe('2nd: equal best 58.10; second best 57.02 against 57.44');
    expect(rows[1].reasonRule).toContain('TR25.22');
  });

  it('shares a place when nothing separates', async () => {
    const circle = await Circle.open(api);
    await circle.recordCard(['58.10'], ['58.10'], ['50.00']);
    expect(await circle.places()).toEqual(['1 1. 58.10', '2 1. 58.10', '3 3. 50.00']);
  });

  it('is accepted out of turn, and says so', async () => {
    const circle = await Circle.open(api);
    expect((await circle.record(3, 1, '58.10')).entry).toMatchObject({
      standing: 'ACCEPTED',
      notices: ['OUT_OF_TURN'],
    });
    expect((await circle.read()).progress.up).toEqual({ bib: '1', round: 1 });
  });

  it('asks to read the tape again when the mark is far outside what anybody throws', async () => {
    const circle = await Circle.open(api);
    const { entry } = await circle.record(1, 1, '158.10');
    expect(entry).toMatchObject({ standing: 'ACCEPTED', notices: ['FAR_OUTSIDE'] });
  });

  it('waits for its wind where wind is measured', async () => {
    const circle = await Circle.open(api, discusSheet(2, { event: 'long-jump' }));
    const { entry } = await circle.record(1, 1, '7.10');
    const trialOf = async () => (await circle.read()).table.rows[0].series[0];
    expect(await trialOf()).toMatchObject({ wind: null, isWindPending: true });
    await circle.record(2, 1, '7.05 +0.3');
    const wind = await circle.enter('attemptWindRecord', { attemptId: entry.id, wind: '+2.1' });
    expect(wind.entry).toMatchObject({ standing: 'ACCEPTED' });
    expect(await trialOf()).toMatchObject({ cell: '7.10', wind: '+2.1', isWindPending: false });
  });

  it('keeps the mark of a failure that is protested on the spot until the referee rules', async () => {
    const circle = await Circle.open(api, discusSheet(2));
    await circle.record(1, 1, '58.10');
    const { entry } = await circle.record(2, 1, 'X', { protestedMark: '60.00' });
    const disputed = await circle.read();
    expect(disputed.table).toMatchObject({
      isDisputed: true,
      rows: [
        { bib: '1', place: 1 },
        { bib: '2', place: null, status: null, reason: 'No valid mark yet' },
      ],
      rowsIfProtestsSucceed: [
        { bib: '2', place: 1 },
        { bib: '1', place: 2 },
      ],
    });
    expect(disputed.questions).toMatchObject([{ entry: entry.id, about: 'protest', holdCode: null }]);
    await circle.enter(
      'entryRule',
      { targetEntryId: entry.id, decision: 'COUNT', reason: 'no mark outside the ring' },
      circle.referee,
    );
    expect(await circle.places()).toEqual(['2 1. 60.00', '1 2. 58.10']);
    expect((await circle.read()).table).toMatchObject({ isDisputed: false, rowsIfProtestsSucceed: null });
  });
});

describe('an entry that is sent again', () => {
  it('gets the answer that it got then, and changes nothing', async () => {
    const circle = await Circle.open(api);
    const entryId = randomUUID();
    const first = await circle.record(1, 1, '58.10', { entryId });
    await circle.record(2, 1, '59.00');
    const before = await circle.read();
    const again = await circle.record(1, 1, '58.10', { entryId });
    expect(again).toEqual({
      ...first,
      isReplay: true,
      competition: { version: before.version, status: 'OPEN' },
    });
    expect(await circle.read()).toEqual(before);
    expect(await circle.journal()).toHaveLength(2);
  });

  it('is the same entry though device and clock are others by now', async () => {
    const circle = await Circle.open(api);
    const entryId = randomUUID();
    await circle.record(1, 1, '58.10', { entryId, device: 'tablet', deviceAt: '2026-06-13T10:00:00Z' });
    const again = await circle.record(1, 1, '58.10', { entryId, device: 'phone' });
    expect([again.isReplay, again.entry.sequence]).toEqual([true, 1]);
    expect(await circle.journal()).toMatchObject([
      { device: 'tablet', deviceAt: '2026-06-13T10:00:00.000Z' },
    ]);
  });

  it('is answered alike when it was held', async () => {
    const circle = await Circle.open(api);
    const entryId = randomUUID();
    const first = await circle.record(1, 2, '58.10', { entryId });
    await circle.record(1, 1, '50.00');
    // By now it counts; what it was told then was that it is held.
    const again = await circle.record(1, 2, '58.10', { entryId });
    expect(first.entry).toMatchObject({ standing: 'HELD', hold: { code: 'EARLIER_ROUND_OPEN' } });
    expect(again.entry).toEqual(first.entry);
  });

  it('may come many times at once', async () => {
    const circle = await Circle.open(api);
    const entryId = randomUUID();
    const answers = await Promise.all(
      Array.from({ length: 20 }, () => circle.record(1, 1, '58.10', { entryId })),
    );
    expect(answers.filter(({ isReplay }) => !isReplay)).toHaveLength(1);
    expect(new Set(answers.map(({ entry }) => JSON.stringify(entry)))).toHaveProperty('size', 1);
    expect(await circle.journal()).toHaveLength(1);
  });

  const reused = {
    entry: null,
    isReplay: false,
    competition: null,
    userErrors: [
      { code: 'ID_REUSED', path: ['input', 'entryId'], remedy: expect.stringContaining('new id') },
    ],
  };

  it('is refused when it says something else', async () => {
    const circle = await Circle.open(api);
    const entryId = randomUUID();
    await circle.record(1, 1, '58.10', { entryId });
    const before = await circle.read();
    expect(await circle.record(1, 1, '58.11', { entryId })).toMatchObject(reused);
    expect(await circle.record(2, 1, '58.10', { entryId })).toMatchObject(reused);
    expect(
      await circle.enter('attemptReplace', { entryId, attemptId: entryId, reason: 'hindered' }),
    ).toMatchObject(reused);
    expect(await circle.read()).toEqual(before);
  });

  it('is refused in another competition', async () => {
    const meet = await staffedMeet(api);
    const [first, second] = [
      await Circle.open(api, undefined, meet),
      await Circle.open(api, undefined, meet),
    ];
    const entryId = randomUUID();
    await first.record(1, 1, '58.10', { entryId });
    expect(await second.record(1, 1, '58.10', { entryId })).toMatchObject(reused);
    expect(await second.journal()).toEqual([]);
  });
});

describe('an entry that can never be right is refused and leaves no trace', () => {
  let circle: Circle;
  let elsewhere: Circle;
  beforeAll(async () => {
    circle = await Circle.open(api);
    elsewhere = await Circle.open(api);
    await circle.record(1, 1, '58.10');
  });

  const unchanged = async (work: () => Promise<any>): Promise<any> => {
    const before = [await circle.read(), await circle.journal()];
    const { entry, isReplay, userErrors } = await work();
    expect([entry, isReplay]).toEqual([null, false]);
    expect([await circle.read(), await circle.journal()]).toEqual(before);
    expect(userErrors).toHaveLength(1);
    expect(userErrors[0].message).not.toBe('');
    expect(userErrors[0].remedy).not.toBe('');
    return userErrors[0];
  };

  // Rule numbers of World Athletics' Technical Rules as the rule set cites them.
  it.each<[string, object, string, string | null]>([
    ['ROUND_NOT_IN_PLAN', { round: 7, outcome: 'VALID', mark: '58.10' }, 'round', 'WA TR25.6'],
    ['MARK_MISSING', { round: 1, outcome: 'VALID' }, 'mark', 'WA TR32'],
    ['MARK_NOT_EXPECTED', { round: 1, outcome: 'FOUL', mark: '58.10' }, 'mark', 'WA TR32'],
    ['MARK_NOT_EXPECTED', { round: 1, outcome: 'PASS', protestedMark: '58.10' }, 'protestedMark', 'WA TR32'],
    ['MARK_UNIT', { round: 1, outcome: 'VALID', mark: '190-07.25' }, 'mark', null],
    ['WIND_NOT_MEASURED', { round: 1, outcome: 'VALID', mark: '58.10', wind: '+0.3' }, 'wind', 'WA CR31'],
    ['FOUL_NOT_OF_EVENT', { round: 1, outcome: 'FOUL', foul: 'BOARD' }, 'foul', null],
  ])('%s: %j', async (code, judgement, field, rule) => {
    const error = await unchanged(() =>
      circle.enter('attemptRecord', { competitorId: circle.competitorOf(2), ...judgement }),
    );
    expect(error).toMatchObject({ code, path: ['input', field] });
    if (rule === null) expect(error.rule).toBeNull();
    else expect(error.rule).toContain(rule);
  });

  it('UNKNOWN_COMPETITOR: of another competition', async () => {
    const input = { competitorId: elsewhere.competitorOf(1), round: 1, outcome: 'PASS' };
    const error = await unchanged(() => circle.enter('attemptRecord', input));
    expect(error).toMatchObject({ code: 'UNKNOWN_COMPETITOR', path: ['input', 'competitorId'] });
  });

  it('UNKNOWN_ENTRY: of another competition', async () => {
    const { entry } = await elsewhere.record(1, 1, '50.00');
    const input = { targetEntryId: entry.id, reason: 'slip' };
    const error = await unchanged(() => circle.enter('entryReverse', input));
    expect(error).toMatchObject({ code: 'UNKNOWN_ENTRY', path: ['input', 'targetEntryId'] });
  });

  it('NOT_FOUND: a competition that is not there', async () => {
    const competitionId = Buffer.from(`Competition:${randomUUID()}`).toString('base64url');
    const error = await unchanged(() => circle.record(2, 1, '58.10', { competitionId }));
    expect(error).toMatchObject({ code: 'NOT_FOUND', path: ['input', 'competitionId'] });
  });
});

describe('who may record', () => {
  let circle: Circle;
  let other: Circle;
  beforeAll(async () => {
    circle = await Circle.open(api);
    other = await Circle.open(api);
  });

  const codeFor = async (token: string | null): Promise<string | undefined> => {
    const { errors } = await api.send(
      `mutation ($input: AttemptRecordInput!) { attemptRecord(input: $input) { isReplay } }`,
      {
        input: {
          competitionId: circle.competition.id,
          entryId: randomUUID(),
          competitorId: circle.competitorOf(1),
          round: 1,
          outcome: 'PASS',
        },
      },
      token,
    );
    return errors?.[0]?.extensions.code;
  };
  const nowS = (): number => Math.floor(Date.now() / 1000);

  it('nobody without a token', async () => {
    expect(await codeFor(null)).toBe('UNAUTHENTICATED');
  });

  it('no official, referee or director of another competition or meet', async () => {
    for (const token of [other.official, other.referee, other.director]) {
      expect(await codeFor(token)).toBe('FORBIDDEN');
    }
  });

  it('no administrator: results are never edited from outside the meet', async () => {
    expect(await codeFor(api.adminToken)).toBe('FORBIDDEN');
  });

  it('no official before or after the window of the token', async () => {
    const { id } = circle.competition;
    const late = await api.token('official', id, { until: nowS() - 1 });
    const early = await api.token('official', id, { from: nowS() + 3600 });
    expect([await codeFor(late), await codeFor(early)]).toEqual(['UNAUTHENTICATED', 'UNAUTHENTICATED']);
  });

  it('and nothing of those attempts is kept', async () => {
    expect(await circle.journal()).toEqual([]);
  });

  it('its official, the referee and the director, each with his own right', async () => {
    await circle.record(1, 1, '58.10');
    await circle.record(2, 1, '58.20', {}, circle.referee);
    await circle.record(3, 1, '58.30', {}, circle.director);
    const journal = await circle.journal();
    expect(journal.map(({ authority }) => authority)).toEqual(['official', 'referee', 'director']);
    expect(new Set(journal.map(({ actor }) => actor))).toHaveProperty('size', 3);
  });

  it('an official decides nothing that is the referee’s', async () => {
    const { errors } = await api.send(
      `mutation ($input: CompetitorDisqualifyInput!) { competitorDisqualify(input: $input) { isReplay } }`,
      {
        input: {
          competitionId: circle.competition.id,
          entryId: randomUUID(),
          competitorId: circle.competitorOf(1),
          rule: 'TR7.1',
          reason: 'conduct',
        },
      },
      circle.official,
    );
    expect(errors?.[0]?.extensions.code).toBe('FORBIDDEN');
  });

  it('the public reads the table, but neither journal nor questions', async () => {
    const read = (fields: string) =>
      api.send(`query ($id: ID!) { competition(id: $id) { ${fields} } }`, { id: circle.competition.id });
    expect((await read('table { rows { bib } }')).errors).toBeUndefined();
    for (const fields of ['journal(first: 5) { edges { cursor } }', 'questions { entry }']) {
      const { data, errors } = await read(fields);
      expect(errors?.[0]?.extensions.code).toBe('UNAUTHENTICATED');
      expect(Object.values(data.competition)).toEqual([null]);
    }
  });
});
