import { startApi, type TestApi } from '../support/api.js';
import { Circle } from '../support/at-the-circle.js';

let api: TestApi;
beforeAll(async () => {
  api = await startApi();
});
afterAll(() => api.close());

const SAFETY = `query ($id: ID!) { competition(id: $id) { safety {
  isInterrupted isConfirmed hasNewWarmUp waitsUntil waitRule caution
  stops { entry cause caution note seenAt } checklist { code sentence source }
} } }`;

async function safetyOf(circle: Circle, token: string | null = circle.official): Promise<any> {
  return (await api.data(SAFETY, { id: circle.competition.id }, token)).competition.safety;
}

const stop = (circle: Circle, cause: string, seenAt: string, more: object = {}): Promise<any> =>
  circle.enter('competitionInterrupt', { cause, seenAt, ...more });

async function clear(circle: Circle, clearedAt: string, more: object = {}, token?: string): Promise<any> {
  const { checklist } = await safetyOf(circle);
  const confirmed = checklist.map(({ code }: any) => code);
  return circle.enter('competitionClear', { confirmed, clearedAt, ...more }, token);
}

describe('safety at the circle', () => {
  it('shows the checklist of the event with the caution, before anybody has said anything', async () => {
    const circle = await Circle.open(api);
    const safety = await safetyOf(circle);
    expect(safety).toMatchObject({ isInterrupted: false, isConfirmed: false, stops: [], waitsUntil: null });
    expect(safety.checklist.map(({ code }: any) => code)).toContain('CAGE_WHOLE');
    expect(safety.caution).toContain('local law decide');
  });

  it('stops the calling until the all-clear, and says who did it and when in the journal', async () => {
    const circle = await Circle.open(api);
    await circle.recordCard(['58.10']);
    const { entry } = await stop(circle, 'PERSON_IN_SECTOR', '2026-06-06T14:00:00Z', { note: 'at 40 m' });
    expect(entry).toMatchObject({ standing: 'ACCEPTED' });
    expect((await circle.read()).progress).toMatchObject({ up: null, next: null });
    expect(await safetyOf(circle)).toMatchObject({
      isInterrupted: true,
      stops: [{ entry: entry.id, cause: 'PERSON_IN_SECTOR', note: 'at 40 m' }],
    });
    await clear(circle, '2026-06-06T14:05:00Z', { newWarmUp: true });
    expect((await circle.read()).progress.up).toMatchObject({ bib: '2', round: 1 });
    const kinds = (await circle.journal()).map(({ kind, authority }: any) => `${kind} by ${authority}`);
    expect(kinds).toEqual(['attempt by official', 'interruption by official', 'all-clear by official']);
    expect(await safetyOf(circle)).toMatchObject({ isInterrupted: false, hasNewWarmUp: true });
  });

  it('holds a trial that took place all the same and shows it to the referee', async () => {
    const circle = await Circle.open(api);
    await stop(circle, 'LIGHTNING', '2026-06-06T14:00:00Z');
    const { entry } = await circle.record(1, 1, '58.10');
    expect(entry).toMatchObject({
      standing: 'HELD',
      hold: {
        code: 'DURING_INTERRUPTION',
        rule: expect.stringContaining('safety'),
        remedy: expect.any(String),
      },
    });
    const { questions } = await circle.read(circle.referee);
    expect(questions).toMatchObject([{ entry: entry.id, about: 'held', holdCode: 'DURING_INTERRUPTION' }]);
  });

  it('names the end of the wait after lightning and refuses to go on before it, with rule and remedy', async () => {
    const circle = await Circle.open(api);
    await stop(circle, 'LIGHTNING', '2026-06-06T14:00:00Z');
    await stop(circle, 'LIGHTNING', '2026-06-06T14:10:00Z');
    expect(await safetyOf(circle)).toMatchObject({
      waitsUntil: '2026-06-06T14:40:00.000Z',
      waitRule: expect.any(String),
    });
    const { entry, userErrors } = await clear(circle, '2026-06-06T14:39:59Z');
    expect(entry).toBeNull();
    expect(userErrors).toMatchObject([
      {
        code: 'WAIT_NOT_OVER',
        path: ['input', 'clearedAt'],
        rule: expect.any(String),
        remedy: expect.any(String),
      },
    ]);
    const despite = { despite: 'seen on the radar: gone' };
    const byOfficial = await clear(circle, '2026-06-06T14:39:59Z', despite);
    expect(byOfficial.userErrors).toMatchObject([{ code: 'NOT_ALLOWED', path: ['input', 'despite'] }]);
    const byReferee = await clear(circle, '2026-06-06T14:39:59Z', despite, circle.referee);
    expect(byReferee.entry).toMatchObject({ standing: 'ACCEPTED' });
  });

  it('refuses an all-clear that leaves a point of the list out', async () => {
    const circle = await Circle.open(api);
    const answer = await clear(circle, '2026-06-06T14:00:00Z', { confirmed: ['WEATHER'] });
    expect(answer.userErrors).toMatchObject([{ code: 'CHECKS_MISSING', path: ['input', 'confirmed'] }]);
  });

  it('tells the public that it is interrupted and why, and keeps the note for the crew', async () => {
    const circle = await Circle.open(api);
    await stop(circle, 'INJURY', '2026-06-06T14:00:00Z', { note: 'first aid at the cage' });
    await api.data(
      `mutation ($input: MeetPublishInput!) { meetPublish(input: $input) { userErrors { code } } }`,
      { input: { meetId: circle.meet.id } },
      circle.director,
    );
    expect(await safetyOf(circle, null)).toMatchObject({
      isInterrupted: true,
      stops: [{ cause: 'INJURY', note: null }],
    });
  });
});
