import { startApi, type TestApi } from '../support/api.js';
import { Circle } from '../support/at-the-circle.js';

let api: TestApi;
beforeAll(async () => {
  api = await startApi();
});
afterAll(() => api.close());

const RACES = process.env['LONG'] === '1' ? 1_000 : 25;

const versionOf = async (circle: Circle): Promise<number> => (await circle.read()).version;

/** Says that a trial was valid with this mark. */
async function correct(
  circle: Circle,
  attemptId: string,
  mark: string,
  { token = circle.official, expectedVersion }: { token?: string; expectedVersion?: number } = {},
): Promise<any> {
  const input = { attemptId, outcome: 'VALID', mark, reason: 'misread tape' };
  return circle.enter(
    'attemptCorrect',
    { ...input, expectedVersion: expectedVersion ?? (await versionOf(circle)) },
    token,
  );
}

describe('a correction', () => {
  it('by the official himself, before the next competitor acts, counts at once', async () => {
    const circle = await Circle.open(api);
    const { entry } = await circle.record(1, 1, '58.10');
    expect((await correct(circle, entry.id, '58.01')).entry.standing).toBe('ACCEPTED');
    expect(await circle.seriesOf(1)).toEqual(['58.01']);
    // Nothing was changed in the journal: it has both, with the reason.
    expect((await circle.journal()).map(({ kind, body }) => [kind, body.mark, body.reason])).toEqual([
      ['attempt', 5810, undefined],
      ['correction', 5801, 'misread tape'],
    ]);
  });

  it('by the official after the next competitor has acted is a request to the referee', async () => {
    const circle = await Circle.open(api);
    const { entry } = await circle.record(1, 1, '58.10');
    await circle.record(2, 1, '57.00');
    const request = (await correct(circle, entry.id, '56.10')).entry;
    expect(request).toMatchObject({ standing: 'HELD', hold: { code: 'AWAITS_REFEREE' } });
    expect(await circle.places()).toEqual(['1 1. 58.10', '2 2. 57.00', '3 -']);
    const ruling = { targetEntryId: request.id, decision: 'COUNT', reason: 'tape read again' };
    await circle.enter('entryRule', ruling, circle.referee);
    expect(await circle.places()).toEqual(['2 1. 57.00', '1 2. 56.10', '3 -']);
  });

  it('by another official of the competition is a request, too', async () => {
    const circle = await Circle.open(api);
    const { entry } = await circle.record(1, 1, '58.10');
    const colleague = await api.token('official', circle.competition.id);
    expect((await correct(circle, entry.id, '58.01', { token: colleague })).entry).toMatchObject({
      standing: 'HELD',
      hold: { code: 'AWAITS_REFEREE' },
    });
  });

  it('by the referee or the director counts at any time', async () => {
    const circle = await Circle.open(api);
    const [[first], [second]] = (await circle.recordCard(['58.10'], ['57.00'])) as [[string], [string]];
    await correct(circle, first, '58.01', { token: circle.referee });
    await correct(circle, second, '59.00', { token: circle.director });
    expect(await circle.places()).toEqual(['2 1. 59.00', '1 2. 58.01', '3 -']);
  });

  it('that says what stands already is refused', async () => {
    const circle = await Circle.open(api);
    const { entry } = await circle.record(1, 1, '58.10');
    expect((await correct(circle, entry.id, '58.10')).userErrors).toMatchObject([{ code: 'ALREADY_SO' }]);
  });

  it('may be taken back, and then the table is as it was', async () => {
    const circle = await Circle.open(api);
    const [[first]] = (await circle.recordCard(['58.10'], ['57.00'])) as [[string]];
    const { rows } = (await circle.read()).table;
    const { entry } = await correct(circle, first, '50.00', { token: circle.referee });
    await circle.enter(
      'entryReverse',
      { targetEntryId: entry.id, reason: 'the tape was right' },
      circle.referee,
    );
    expect((await circle.read()).table.rows).toEqual(rows);
  });
});

describe('the version that a correction was decided on', () => {
  it('must be the newest', async () => {
    const circle = await Circle.open(api);
    const { entry } = await circle.record(1, 1, '58.10');
    const seen = await versionOf(circle);
    await circle.record(2, 1, '57.00');
    const now = await versionOf(circle);
    const before = await circle.journal();
    const late = await correct(circle, entry.id, '58.01', { token: circle.referee, expectedVersion: seen });
    expect(late).toMatchObject({
      entry: null,
      userErrors: [{ code: 'VERSION_CONFLICT', path: ['input', 'expectedVersion'], currentVersion: now }],
    });
    expect(await circle.journal()).toEqual(before);
  });

  it('is not looked at when the same correction is sent again', async () => {
    const circle = await Circle.open(api);
    const { entry } = await circle.record(1, 1, '58.10');
    const input = {
      entryId: '00000000-0000-7000-8000-0000000000c1',
      attemptId: entry.id,
      outcome: 'VALID',
      mark: '58.01',
      reason: 'misread tape',
      expectedVersion: await versionOf(circle),
    };
    const first = await circle.enter('attemptCorrect', input);
    const again = await circle.enter('attemptCorrect', input);
    expect(again).toMatchObject({ entry: first.entry, isReplay: true, userErrors: [] });
  });

  it('lets exactly one of two win who correct at the same moment', async () => {
    const circle = await Circle.open(api);
    const { entry } = await circle.record(1, 1, '58.10');
    for (let race = 1; race <= RACES; race++) {
      const expectedVersion = await versionOf(circle);
      const marks = [4_000 + race, 6_000 + race].map((markCm) => (markCm / 100).toFixed(2));
      const answers = await Promise.all(
        [circle.referee, circle.director].map((token, at) =>
          correct(circle, entry.id, marks[at]!, { token, expectedVersion }),
        ),
      );
      const won = answers.findIndex((answer) => answer.entry !== null);
      expect(answers[won].entry.standing).toBe('ACCEPTED');
      expect(answers[1 - won].userErrors).toMatchObject([{ code: 'VERSION_CONFLICT' }]);
      expect(await circle.seriesOf(1)).toEqual([marks[won]]);
    }
    expect(await circle.journal()).toHaveLength(1 + RACES);
  }, 120_000);
});

describe('an entry that should never have been made', () => {
  it('is taken back by the official without a version until the next competitor acts', async () => {
    const circle = await Circle.open(api);
    const { entry } = await circle.record(1, 1, '58.10');
    const reversal = await circle.enter('entryReverse', { targetEntryId: entry.id, reason: 'pressed twice' });
    expect(reversal.entry.standing).toBe('ACCEPTED');
    expect(await circle.seriesOf(1)).toEqual([]);
    expect((await circle.read()).progress.up).toEqual({ bib: '1', round: 1 });
  });

  it('waits for the referee afterwards', async () => {
    const circle = await Circle.open(api);
    const [[first]] = (await circle.recordCard(['58.10'], ['57.00'])) as [[string]];
    const { entry } = await circle.enter('entryReverse', { targetEntryId: first, reason: 'pressed twice' });
    expect(entry).toMatchObject({ standing: 'HELD', hold: { code: 'AWAITS_REFEREE' } });
    expect(await circle.seriesOf(1)).toEqual(['58.10']);
  });
});

describe('trials on the wrong line', () => {
  it('are swapped in one entry', async () => {
    const circle = await Circle.open(api);
    const [[first], [second]] = (await circle.recordCard(['58.10'], ['57.00'])) as [[string], [string]];
    const move = {
      moves: [
        { attemptId: first, competitorId: circle.competitorOf(2), round: 1 },
        { attemptId: second, competitorId: circle.competitorOf(1), round: 1 },
      ],
      reason: 'called in the wrong order',
      expectedVersion: await versionOf(circle),
    };
    expect((await circle.enter('attemptsMove', move, circle.referee)).entry.standing).toBe('ACCEPTED');
    expect(await circle.places()).toEqual(['2 1. 58.10', '1 2. 57.00', '3 -']);
  });

  it('cannot end up two in one round', async () => {
    const circle = await Circle.open(api);
    const [[first]] = (await circle.recordCard(['58.10'], ['57.00'])) as [[string]];
    const move = {
      moves: [{ attemptId: first, competitorId: circle.competitorOf(2), round: 1 }],
      reason: 'wrong line',
      expectedVersion: await versionOf(circle),
    };
    const { userErrors } = await circle.enter('attemptsMove', move, circle.referee);
    expect(userErrors).toMatchObject([{ code: 'ROUND_CLASH' }]);
  });
});

describe('a replacement trial', () => {
  it('is granted by the referee; the struck trial stays in the journal', async () => {
    const circle = await Circle.open(api);
    const { entry } = await circle.record(1, 1, 'X');
    const replacement = { attemptId: entry.id, reason: 'a ball crossed the circle' };
    const asked = await circle.enter('attemptReplace', replacement);
    expect(asked.entry).toMatchObject({ standing: 'HELD', hold: { code: 'AWAITS_REFEREE' } });
    await circle.enter(
      'entryRule',
      { targetEntryId: asked.entry.id, decision: 'COUNT', reason: 'hindered' },
      circle.referee,
    );
    expect((await circle.read()).progress.up).toEqual({ bib: '1', round: 1 });
    expect((await circle.record(1, 1, '58.10')).entry.standing).toBe('ACCEPTED');
    expect(await circle.seriesOf(1)).toEqual(['58.10']);
    expect(await circle.journal()).toHaveLength(4);
  });
});

describe('the order of one round', () => {
  it('is set by an official because of another event, and the others follow in theirs', async () => {
    const circle = await Circle.open(api);
    await circle.enter('roundOrderSet', {
      round: 1,
      competitorIds: [circle.competitorOf(3)],
      reason: 'also in the 400 m',
    });
    const { progress } = await circle.read();
    expect([progress.up, progress.next, progress.then].map(({ bib }) => bib)).toEqual(['3', '1', '2']);
  });
});
