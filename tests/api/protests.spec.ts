import { randomUUID } from 'node:crypto';
import { answerTo, call } from '../support/accounts.js';
import { startApi, type TestApi } from '../support/api.js';
import { Circle } from '../support/at-the-circle.js';
import { discusSheet } from '../support/circle.js';

let api: TestApi;
beforeAll(async () => {
  api = await startApi();
});
afterAll(() => api.close());

const STATE = 'state since postedAt protestsUntil isUnderProtest isReopened revision';
const PROTEST = `id standing form ground lodgedBy competitor trial deposit isDepositPaid timeliness next
  steps { kind outcome by rule deposit timeliness }`;
const PAYLOAD = `isReplay competition { version status resultState { ${STATE} } } userErrors { code path rule remedy }`;
const MINUTES = 60_000;
const ago = (minutes: number) => new Date(Date.now() - minutes * MINUTES).toISOString();

/** Three throwers in the last round but a failure of the first, which was protested and measured. */
async function finished(): Promise<Circle> {
  const circle = await Circle.open(api, discusSheet(3));
  const round = (cell: string) => Array.from({ length: 5 }, () => cell);
  await circle.recordCard(round('50.00'), [...round('51.00'), '51.00'], [...round('49.00'), '49.00']);
  return circle;
}

const isOf = (circle: Circle) => ({ competitionId: circle.competition.id });

async function post(circle: Circle, more: object = {}, token = circle.referee): Promise<any> {
  const { version } = await circle.read();
  const input = { ...isOf(circle), entryId: randomUUID(), expectedVersion: version, ...more };
  return call(api, 'resultPost', input, PAYLOAD, token);
}

async function lodge(circle: Circle, more: object = {}, token = circle.official): Promise<any> {
  const input = {
    ...{ ...isOf(circle), entryId: randomUUID(), form: 'WRITTEN', ground: 'RULES' },
    ...{ lodgedBy: 'team manager of Heron', reason: 'the sixth trial was valid', ...more },
  };
  return call(api, 'protestLodge', input, `protest { ${PROTEST} } ${PAYLOAD}`, token);
}

async function step(circle: Circle, name: string, more: object, token = circle.referee): Promise<any> {
  const input = {
    ...isOf(circle),
    entryId: randomUUID(),
    by: 'referee of throws',
    reason: 'the flag',
    ...more,
  };
  return call(api, name, input, `protest { ${PROTEST} } ${PAYLOAD}`, token);
}

async function sign(circle: Circle, more: object = {}): Promise<any> {
  const { version } = await circle.read();
  return circle.enter('competitionSignOff', { expectedVersion: version, ...more }, circle.referee);
}

const stateOf = async (circle: Circle, token: string | null = null) =>
  (
    await api.data(
      `query ($id: ID!) { competition(id: $id) { resultState { ${STATE} } } }`,
      { id: circle.competition.id },
      token,
    )
  ).competition.resultState;

describe('a result', () => {
  /** The first thrower's last trial, a failure, was measured under protest. */
  async function protested(): Promise<{ readonly circle: Circle; readonly protestId: string }> {
    const circle = await finished();
    expect(await stateOf(circle)).toMatchObject({ state: 'RUNNING', isUnderProtest: false, revision: 0 });
    const { entry: trial } = await circle.record(1, 6, 'X', { protestedMark: '52.00' });
    expect((await circle.places())[0]).toBe('2 1. 51.00');

    // A trial under protest keeps the result from being signed, and both standings are shown.
    expect(await stateOf(circle)).toMatchObject({ state: 'UNDER_PROTEST', isUnderProtest: true });
    const { table } = await circle.read();
    expect([table.rows[0].bib, table.rowsIfProtestsSucceed[0].bib]).toEqual(['2', '1']);
    const lodged = await lodge(circle, {
      ...{ trialId: trial.id, competitorId: circle.competitorOf(1), form: 'ORAL', ground: 'JUDGEMENT' },
      ...{ deposit: '50 EUR', isDepositPaid: true },
    });
    expect(lodged.protest).toMatchObject({
      ...{ standing: 'LODGED', timeliness: 'IN_TIME', deposit: '50 EUR', isDepositPaid: true, steps: [] },
      ...{ trial: trial.id, competitor: circle.competitorOf(1), next: ['DECISION', 'WITHDRAWAL'] },
    });
    expect((await sign(circle)).userErrors).toMatchObject([{ code: 'PROTEST_OPEN' }]);

    return { circle, protestId: lodged.protest.id };
  }

  it('that is decided upon has the trial ruled with it, by an entry of the same id', async () => {
    const { circle, protestId } = await protested();
    const entryId = randomUUID();
    const upheld = { protestId, entryId, outcome: 'UPHELD', rule: 'TR8.5', deposit: 'RETURNED' };
    const decided = await step(circle, 'protestDecide', upheld);
    expect(decided.protest).toMatchObject({
      ...{ standing: 'UPHELD', next: ['DECISION', 'APPEAL'] },
      steps: [{ kind: 'DECISION', outcome: 'UPHELD', rule: 'TR8.5', deposit: 'RETURNED' }],
    });
    expect((await circle.journal()).at(-1)).toMatchObject({
      id: entryId,
      kind: 'ruling',
      authority: 'referee',
    });
    expect((await circle.places())[0]).toBe('1 1. 52.00');
    const again = await step(circle, 'protestDecide', upheld);
    expect([again.isReplay, again.competition.version]).toEqual([true, decided.competition.version]);
    const other = await step(circle, 'protestDecide', { ...upheld, outcome: 'DISMISSED' });
    expect(other.userErrors).toMatchObject([{ code: 'ID_REUSED' }]);
  });

  it('is posted, protested, appealed, signed, opened again and amended', async () => {
    const { circle, protestId } = await protested();
    await step(circle, 'protestDecide', { protestId, outcome: 'UPHELD' });
    // From the announcement on the time for protests runs: thirty minutes (WA TR8, from memory).
    const posted = await post(circle, { place: 'board at the call room' });
    const { resultState } = posted.competition;
    expect(resultState).toMatchObject({ state: 'POSTED', isUnderProtest: false });
    expect(Date.parse(resultState.protestsUntil) - Date.parse(resultState.postedAt)).toBe(30 * MINUTES);
    expect((await sign(circle)).userErrors).toMatchObject([
      { code: 'PROTEST_TIME_RUNS', rule: 'WA TR8.2', remedy: expect.stringContaining('referee') },
    ]);

    // The jury turns it round: the trial is a failure again, and the result is to be posted anew.
    const appealed = await step(
      circle,
      'protestAppeal',
      { protestId, by: 'Weir Valley', isDepositPaid: true },
      circle.official,
    );
    expect(appealed.protest).toMatchObject({
      standing: 'APPEALED',
      steps: [{}, { kind: 'APPEAL', deposit: 'PAID', timeliness: 'IN_TIME' }],
    });
    expect(appealed.competition.resultState).toMatchObject({ state: 'UNDER_PROTEST' });
    const jury = { protestId, outcome: 'DISMISSED', by: 'jury of appeal', deposit: 'RETURNED' };
    const final = await step(circle, 'protestDecide', jury, circle.director);
    expect(final.protest).toMatchObject({
      standing: 'DISMISSED',
      next: [],
      steps: [{}, {}, { kind: 'APPEAL_DECISION' }],
    });
    expect((await circle.places())[0]).toBe('2 1. 51.00');
    expect(final.competition.resultState).toMatchObject({ state: 'UNOFFICIAL', postedAt: null });
    expect((await step(circle, 'protestAppeal', { protestId })).userErrors).toMatchObject([
      { code: 'NOT_NOW' },
    ]);

    await post(circle, { postedAt: ago(31) });
    expect((await sign(circle)).userErrors).toEqual([]);
    expect(await stateOf(circle)).toMatchObject({ state: 'OFFICIAL', revision: 1 });
    await circle.enter('competitionReopen', { reason: 'a mark was read wrongly' }, circle.director);
    expect(await stateOf(circle)).toMatchObject({ state: 'UNOFFICIAL', isReopened: true, postedAt: null });
    await sign(circle);
    expect(await stateOf(circle)).toMatchObject({ state: 'AMENDED', revision: 2 });
    const { meet } = await api.data(
      `query ($id: ID!) { meet(id: $id) { resultIssue { number at amendments { revision competition { id } } } } }`,
      { id: circle.meet.id },
    );
    expect(meet.resultIssue).toEqual({
      ...{ number: 2, at: expect.any(String) },
      amendments: [{ revision: 2, competition: { id: circle.competition.id } }],
    });
  });

  it('keeps a late protest and says that it is late; the referee may sign before the time is over', async () => {
    const circle = await finished();
    await circle.record(1, 6, '50.50');
    expect(
      (await post(circle, { postedAt: new Date(Date.now() + 10 * MINUTES).toISOString() })).userErrors,
    ).toMatchObject([{ code: 'IN_THE_FUTURE', path: ['input', 'postedAt'] }]);
    const posted = await post(circle, { postedAt: ago(45) });
    expect(posted.userErrors).toEqual([]);
    expect((await post(circle)).userErrors).toMatchObject([{ code: 'ALREADY_SO' }]);
    const late = await lodge(circle);
    expect(late.protest).toMatchObject({ standing: 'LODGED', timeliness: 'LATE' });
    const inTime = await lodge(circle, { lodgedAt: ago(20), ground: 'ELIGIBILITY' });
    expect(inTime.protest.timeliness).toBe('IN_TIME');
    const despite = { despite: 'both go to the federation' };
    expect((await sign(circle)).userErrors).toMatchObject([{ code: 'PROTEST_OPEN' }]);
    expect((await sign(circle, despite)).userErrors).toEqual([]);
    expect((await circle.journal()).at(-1).body).toMatchObject(despite);
    expect(await stateOf(circle)).toMatchObject({ state: 'OFFICIAL', isUnderProtest: true });
    await step(
      circle,
      'protestWithdraw',
      { protestId: late.protest.id, deposit: 'FORFEITED' },
      circle.official,
    );
    const { protest } = await step(circle, 'protestDecide', {
      protestId: inTime.protest.id,
      outcome: 'DISMISSED',
    });
    expect(protest.standing).toBe('DISMISSED');
    expect(await stateOf(circle)).toMatchObject({ isUnderProtest: false });
  });

  it('is not posted half done without a reason, nor as somebody saw it before', async () => {
    const circle = await finished();
    expect((await post(circle)).userErrors).toMatchObject([{ code: 'NOT_COMPLETE' }]);
    expect((await post(circle, { expectedVersion: 1 })).userErrors).toMatchObject([
      { code: 'VERSION_CONFLICT' },
    ]);
    expect((await post(circle, { incomplete: 'darkness' })).competition.resultState.state).toBe('POSTED');
    // Whatever may change it makes it another result.
    await circle.record(1, 6, '60.00');
    expect(await stateOf(circle)).toMatchObject({ state: 'UNOFFICIAL', postedAt: null });
  });

  it('shows the public that it is under protest, and nothing of the protest', async () => {
    const circle = await finished();
    await lodge(circle);
    expect(await stateOf(circle)).toMatchObject({ isUnderProtest: true });
    const query = `query ($id: ID!) { competition(id: $id) { protests { reason } } }`;
    const answer = await api.send(query, { id: circle.competition.id });
    expect(answer.errors?.[0]?.extensions.code).toBe('UNAUTHENTICATED');
    const { errors } = await answerTo(
      api,
      'protestDecide',
      {
        ...isOf(circle),
        entryId: randomUUID(),
        protestId: randomUUID(),
        by: 'x',
        reason: 'x',
        outcome: 'UPHELD',
      },
      PAYLOAD,
      circle.official,
    );
    expect(errors?.[0]?.extensions.code).toBe('FORBIDDEN');
  });

  it('takes one id for one protest, in whatever competition it is sent again', async () => {
    const [circle, another] = [await finished(), await finished()];
    const entryId = randomUUID();
    const [first, again] = [await lodge(circle, { entryId }), await lodge(circle, { entryId })];
    expect([again.isReplay, again.protest]).toEqual([true, first.protest]);
    expect((await lodge(another, { entryId })).userErrors).toMatchObject([{ code: 'ID_REUSED' }]);
    expect((await lodge(circle, { trialId: randomUUID() })).userErrors).toMatchObject([
      { code: 'NOT_FOUND', path: ['input', 'trialId'] },
    ]);
  });
});

describe('a meet as a whole', () => {
  const TRAIL = `query ($id: ID!, $first: Int!, $after: String, $kinds: [String!], $text: String, $who: String, $device: String, $competitorId: ID, $from: DateTime) {
    meet(id: $id) { auditTrail(first: $first, after: $after, kinds: $kinds, text: $text, who: $who, device: $device, competitorId: $competitorId, from: $from) {
      edges { node { id at kind bib competitorName actor authority device reason before after competition { id } } }
      pageInfo { hasNextPage endCursor } } } }`;

  it('tells who did what, when and why, what it was before, and is searched', async () => {
    const circle = await Circle.open(
      api,
      discusSheet(2, { competitors: [{ bib: '1', name: 'Odalys Thornwick' }, { bib: '2' }] }),
    );
    const [[attemptId]] = (await circle.recordCard(['50.00'], ['51.00'])) as [[string], [string]];
    const correct = {
      attemptId,
      outcome: 'VALID',
      mark: '52.00',
      reason: 'misread tape',
      expectedVersion: (await circle.read()).version,
      device: 'referee phone',
    };
    await circle.enter('attemptCorrect', correct, circle.referee);
    await lodge(circle, { reason: 'called 100% too late' });
    const crew = (name: string) => ({ ...isOf(circle), members: [{ post: 'RECORDER', name }] });
    await call(api, 'crewSet', crew('Ilse Tannhauer'), 'userErrors { code }', circle.director);
    await call(api, 'crewSet', crew('Bram Osterloh'), 'userErrors { code }', circle.director);
    const trail = async (search: object, token = circle.referee) => {
      const { meet } = await api.data(TRAIL, { id: circle.meet.id, first: 100, ...search }, token);
      return meet.auditTrail.edges.map(({ node }: any) => node);
    };
    const all = await trail({});
    expect(all.map(({ kind }: any) => kind)).toEqual([
      'crew',
      'crew',
      'protest',
      'correction',
      'attempt',
      'attempt',
    ]);
    const [last, , protest, correction] = all;
    expect(last).toMatchObject({
      before: { members: [{ name: 'Ilse Tannhauer' }] },
      after: { members: [{ name: 'Bram Osterloh' }] },
    });
    expect(protest).toMatchObject({ authority: 'official', reason: 'called 100% too late' });
    expect(correction).toMatchObject({
      ...{ bib: '1', competitorName: 'Odalys Thornwick', device: 'referee phone', reason: 'misread tape' },
      ...{ authority: 'referee', before: { mark: 5000 }, after: { mark: 5200 } },
      competition: { id: circle.competition.id },
    });
    const kindsOf = async (search: object) => (await trail(search)).map(({ kind }: any) => kind);
    expect(await kindsOf({ text: 'MISREAD' })).toEqual(['correction']);
    expect(await kindsOf({ text: '100%' })).toEqual(['protest']);
    expect(await kindsOf({ text: '1%0' })).toEqual([]);
    expect(await kindsOf({ device: 'phone' })).toEqual(['correction']);
    expect(await kindsOf({ who: correction.actor })).toEqual(['correction']);
    expect(await kindsOf({ competitorId: circle.competitorOf(1) })).toEqual(['correction', 'attempt']);
    expect(await kindsOf({ kinds: ['crew', 'attempt'], from: protest.at })).toEqual(['crew', 'crew']);
    // Page by page the same lines in the same order.
    const read: string[] = [];
    for (let after: string | null = null; ; ) {
      const { meet } = await api.data(TRAIL, { id: circle.meet.id, first: 2, after }, circle.director);
      const { edges, pageInfo } = meet.auditTrail;
      read.push(...edges.map(({ node }: any) => node.id));
      if (!pageInfo.hasNextPage) break;
      after = pageInfo.endCursor;
    }
    expect(read).toEqual(all.map(({ id }: any) => id));
    const one = await api.data(
      `query ($id: ID!) { competition(id: $id) { auditTrail(first: 1) { edges { node { kind } } } } }`,
      { id: circle.competition.id },
      circle.referee,
    );
    expect(one.competition.auditTrail.edges).toEqual([{ node: { kind: 'crew' } }]);
  });

  it('asks the referee all its questions, with what each answer would change', async () => {
    const circle = await Circle.open(api, discusSheet(2));
    await circle.recordCard(['50.00'], ['51.00']);
    const { entry } = await circle.record(1, 1, '53.00');
    await circle.record(2, 2, 'X', { protestedMark: '54.00' });
    const query = `query ($id: ID!) { meet(id: $id) { questions {
      entry about holdCode message bib ifCounted { obstacle changes { bib placeBefore placeAfter markAfter } }
      ifDismissed { obstacle changes { bib } } } } }`;
    const { meet } = await api.data(query, { id: circle.meet.id }, circle.referee);
    expect(meet.questions).toEqual([
      {
        ...{ entry: entry.id, about: 'held', holdCode: 'ROUND_TAKEN', bib: '1' },
        message: 'The competitor already has a trial in this round.',
        ifCounted: {
          obstacle: null,
          changes: [
            { bib: '1', placeBefore: 2, placeAfter: 1, markAfter: '53.00' },
            { bib: '2', placeBefore: 1, placeAfter: 2, markAfter: '51.00' },
          ],
        },
        ifDismissed: { obstacle: null, changes: [] },
      },
      expect.objectContaining({
        ...{ about: 'protest', bib: '2' },
        ifCounted: {
          obstacle: null,
          changes: [{ bib: '2', placeBefore: 1, placeAfter: 1, markAfter: '54.00' }],
        },
      }),
    ]);
  });
});
