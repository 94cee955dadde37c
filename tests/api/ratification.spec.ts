import { randomUUID } from 'node:crypto';
import { startApi, type TestApi } from '../support/api.js';
import { attemptOf } from '../support/circle.js';
import { inWords, RecordScene, type RecordedCompetition } from '../support/record-scene.js';

let api: TestApi;
let scene: RecordScene;
let discus: RecordedCompetition;
beforeAll(async () => {
  api = await startApi();
});
afterAll(() => api.close());
beforeEach(async () => {
  scene = await RecordScene.open(api);
  await scene.starting({ mark: '48.00' });
  discus = await scene.competition();
});

const list = async (): Promise<string | undefined> => inWords(await scene.clubLists())[0];
const codes = ({ userErrors }: any): string[] => userErrors.map(({ code }: any) => code);

const DECISIONS = `query ($id: ID!) { competition(id: $id) { recordDecisions {
  attempt kind decision holds mark recheck measuring despite reason authority decidedBy
} } }`;

async function decisions(token: string | null = discus.official): Promise<any[]> {
  return (await api.data(DECISIONS, { id: discus.id }, token)).competition.recordDecisions;
}

describe('a record', () => {
  it('is one when the referee has ratified it', async () => {
    const attempt = await discus.record(1, 1, '49.10');
    expect(await list()).toBe('DISCUS 1000 W senior: 48.00 | would be 49.10');
    const { decision, userErrors } = await discus.ratify(attempt, '49.10');
    expect([decision, userErrors]).toEqual([
      expect.objectContaining({ decision: 'RATIFIED', holds: true, despite: [], authority: 'referee' }),
      [],
    ]);
    expect(await list()).toBe('DISCUS 1000 W senior: 49.10');
    const [claim] = (await discus.claims(null)).filter(({ kind }) => kind === 'CLUB_RECORD');
    expect(claim).toMatchObject({ counts: true, outstanding: [], decision: 'RATIFIED' });
    expect(claim.sentence).toBe('is a club record of 49.10, before 48.00');
    expect((await scene.meetLists())[0].best).toEqual([]);
  });

  it('that is declined stands in nobody’s way, and a decision is undone by another', async () => {
    const first = await discus.record(1, 1, '49.10');
    await discus.record(1, 2, '48.50');
    await discus.ratify(first, '49.10', { decision: 'REFUSED', reason: 'the circle was too large' });
    expect(await list()).toBe('DISCUS 1000 W senior: 48.00 | would be 48.50');
    const refused = (await discus.claims()).find(
      ({ kind, attempt }) => kind === 'CLUB_RECORD' && attempt === first,
    );
    expect(refused).toMatchObject({ counts: false, whyNot: 'The referee declined it.', decision: 'REFUSED' });
    expect(codes(await discus.ratify(first, '49.10', { decision: 'REFUSED' }))).toEqual(['ALREADY_SO']);
    await discus.ratify(first, '49.10', { decision: 'WITHDRAWN', reason: 'measured again: it was right' });
    expect(await list()).toBe('DISCUS 1000 W senior: 48.00 | would be 49.10');
    expect(codes(await discus.ratify(first, '49.10', { decision: 'WITHDRAWN' }))).toEqual([
      'NOTHING_DECIDED',
    ]);
    await discus.ratify(first, '49.10');
    expect(await list()).toBe('DISCUS 1000 W senior: 49.10');
    expect((await decisions()).map(({ decision, holds }) => `${decision} ${holds}`)).toEqual([
      'REFUSED false',
      'WITHDRAWN false',
      'RATIFIED true',
    ]);
  });

  it('is no more when its attempt is corrected or its competitor disqualified', async () => {
    const attemptId = await discus.record(1, 1, '49.10');
    await discus.ratify(attemptId, '49.10');
    const correct = async (cell: string): Promise<void> => {
      const { entry } = await discus.enter('attemptCorrect', {
        ...{ attemptId, ...attemptOf(cell), reason: 'read again', expectedVersion: await discus.version() },
      });
      expect(entry.standing).toBe('ACCEPTED');
    };
    await correct('49.20');
    expect(await list()).toBe('DISCUS 1000 W senior: 48.00 | would be 49.20');
    expect((await decisions())[0]).toMatchObject({ decision: 'RATIFIED', holds: false, mark: '49.10' });
    expect(codes(await discus.ratify(attemptId, '49.10'))).toEqual(['MARK_CHANGED']);
    await correct('49.10');
    expect(await list()).toBe('DISCUS 1000 W senior: 49.10');
    await discus.enter('competitorDisqualify', {
      ...{ competitorId: discus.competitors[0], rule: 'TR7', reason: 'conduct' },
    });
    expect(await list()).toBe('DISCUS 1000 W senior: 48.00');
    expect(codes(await discus.ratify(attemptId, '49.10'))).toEqual(['NO_SUCH_MARK']);
  });

  it('is not ratified against what stands in its way, nor past what the referee does not say that he knows', async () => {
    const attempt = await discus.record(1, 1, '47.00');
    const bare = { recheck: null, measuring: null };
    const refused = await discus.ratify(attempt, '47.00', bare);
    expect(codes(refused)).toEqual(['NOT_THE_BEST', 'RECHECK', 'MEASURING']);
    expect(refused.userErrors[1]).toMatchObject({ path: ['input', 'despite'] });
    expect(
      codes(await discus.ratify(attempt, '47.00', { despite: ['NOT_THE_BEST'], recheck: 'FAILED' })),
    ).toEqual(['RECHECK']);
    const despite = ['NOT_THE_BEST', 'RECHECK', 'MEASURING'];
    const { decision } = await discus.ratify(attempt, '47.00', { ...bare, despite });
    expect(decision).toMatchObject({ decision: 'RATIFIED', despite, recheck: null });
    expect(await list()).toBe('DISCUS 1000 W senior: 48.00');
  });

  it('is never made of a mark that the wind or no list allows', async () => {
    const jump = await scene.competition({ event: 'LONG_JUMP', implementGrams: null });
    const windy = await jump.record(1, 1, '6.30 +2.1');
    expect(codes(await jump.ratify(windy, '6.30', { despite: ['WIND'] }))).toEqual(['WIND']);
    const foul = await discus.record(2, 1, 'X');
    expect(codes(await discus.ratify(foul, '40.00'))).toEqual(['NO_SUCH_MARK']);
    expect(codes(await discus.ratify(randomUUID(), '40.00'))).toEqual(['NO_SUCH_MARK']);
  });
});

describe('a decision', () => {
  it('may be sent again, and is answered with what it made', async () => {
    const attempt = await discus.record(1, 1, '49.10');
    const id = randomUUID();
    expect(await discus.ratify(attempt, '49.10', { id })).toMatchObject({
      isReplay: false,
      decision: { id },
    });
    expect(await discus.ratify(attempt, '49.10', { id })).toMatchObject({ isReplay: true, decision: { id } });
    expect(codes(await discus.ratify(attempt, '49.10', { id, kind: 'MEET_RECORD' }))).toEqual(['ID_REUSED']);
    const other = await scene.competition();
    const elsewhere = await other.record(1, 1, '49.10');
    expect(codes(await other.ratify(elsewhere, '49.10', { id }))).toEqual(['ID_REUSED']);
  });

  it('is one of two that come at once, and a new version of the competition', async () => {
    const attempt = await discus.record(1, 1, '49.10');
    const before = await discus.version();
    const answers = await Promise.all(Array.from({ length: 4 }, () => discus.ratify(attempt, '49.10')));
    expect(answers.map((answer) => codes(answer)[0] ?? 'made').sort()).toEqual([
      ...['ALREADY_SO', 'ALREADY_SO', 'ALREADY_SO', 'made'],
    ]);
    expect(await discus.version()).toBe(before + 1);
  });

  it('is the referee’s or a director’s of the meet, and read by those who work there', async () => {
    const attempt = await discus.record(1, 1, '49.10');
    const other = await RecordScene.open(api);
    const mutation = `mutation ($input: RecordRatifyInput!) { recordRatify(input: $input) { isReplay } }`;
    const input = {
      ...{ competitionId: discus.id, attemptId: attempt, kind: 'CLUB_RECORD', decision: 'REFUSED' },
      ...{ mark: '49.10', reason: 'x' },
    };
    for (const token of [discus.official, other.meet.referee, api.adminToken]) {
      const { errors } = await api.send(mutation, { input }, token);
      expect(errors?.[0]?.extensions.code).toBe('FORBIDDEN');
    }
    await discus.ratify(attempt, '49.10', {}, scene.meet.director);
    expect(await decisions()).toEqual([
      expect.objectContaining({ authority: 'director', recheck: 'passed', measuring: 'STEEL_TAPE', attempt }),
    ]);
    const { errors } = await api.send(DECISIONS, { id: discus.id });
    expect(errors?.[0]?.extensions.code).toBe('UNAUTHENTICATED');
  });
});
