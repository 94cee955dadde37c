import { randomUUID } from 'node:crypto';
import { officialResults } from '#persistence';
import { readGlobalId } from '../../apps/api/src/platform/inputs/global-id.js';
import { answerTo, call } from '../support/accounts.js';
import { startApi, type TestApi } from '../support/api.js';
import { Circle } from '../support/at-the-circle.js';
import { discusSheet, staffedMeet } from '../support/circle.js';

let api: TestApi;
beforeAll(async () => {
  api = await startApi();
});
afterAll(() => api.close());

const PAYLOAD = `entry { sequence standing } isReplay competition { status }
  userErrors { code path }`;
const ASKED = `${PAYLOAD} request { id kind reason version authority confirmedBy }`;

/** Two rounds thrown, at a meet that demands two persons. */
async function finished(): Promise<Circle> {
  const meet = await staffedMeet(api, { needsSecondPerson: true });
  const circle = await Circle.open(
    api,
    discusSheet(2, { plan: { rounds: 1, cuts: [], reorderAfter: [] } }),
    meet,
  );
  await circle.recordCard(['58.10'], ['57.44']);
  return circle;
}

async function sign(circle: Circle, token: string, entryId: string = randomUUID()): Promise<any> {
  const { version } = await circle.read();
  const input = { competitionId: circle.competition.id, entryId, expectedVersion: version };
  return call(api, 'competitionSignOff', input, ASKED, token);
}

const confirm = (
  circle: Circle,
  requestId: string,
  token: string,
  entryId: string = randomUUID(),
): Promise<any> =>
  call(
    api,
    'competitionConfirm',
    { competitionId: circle.competition.id, entryId, requestId },
    PAYLOAD,
    token,
  );

function archived(circle: Circle) {
  const { uuid } = readGlobalId(circle.competition.id)!;
  return api.database.read((at) => officialResults.latest(at, api.organisationId, uuid));
}

const subjectOf = (token: string): string =>
  JSON.parse(Buffer.from(token.split('.')[1]!, 'base64url').toString()).sub;

describe('where a meet demands two persons', () => {
  it('a signature makes nothing official until another referee or director confirms it', async () => {
    const circle = await finished();
    const { version } = await circle.read();
    const asked = await sign(circle, circle.official);
    expect(asked).toMatchObject({
      entry: null,
      competition: { status: 'OPEN' },
      request: { kind: 'SIGN_OFF', version, authority: 'official', confirmedBy: null },
      userErrors: [],
    });
    expect([await archived(circle), (await circle.read()).version]).toEqual([null, version]);

    const confirmed = await confirm(circle, asked.request.id, circle.referee);
    expect(confirmed).toMatchObject({ entry: { standing: 'ACCEPTED' }, competition: { status: 'OFFICIAL' } });
    expect(await archived(circle)).toMatchObject({
      revision: 1,
      signedBy: subjectOf(circle.official),
      confirmedBy: subjectOf(circle.referee),
    });
    expect((await circle.journal()).at(-1)).toMatchObject({ kind: 'sign-off', authority: 'referee' });
    const query = `query ($id: ID!) { competition(id: $id) {
      decisionRequests { id askedBy confirmedBy confirmingAuthority entryId } } }`;
    const { competition } = await api.data(query, { id: circle.competition.id }, circle.official);
    expect(competition.decisionRequests).toEqual([
      {
        ...{ id: asked.request.id, askedBy: subjectOf(circle.official), entryId: expect.any(String) },
        ...{ confirmedBy: subjectOf(circle.referee), confirmingAuthority: 'referee' },
      },
    ]);
  });

  it('the same person is not the second one, and an official is none', async () => {
    const circle = await finished();
    const { request } = await sign(circle, circle.referee);
    expect((await confirm(circle, request.id, circle.referee)).userErrors).toEqual([
      { code: 'SAME_PERSON', path: ['input', 'requestId'] },
    ]);
    const input = { competitionId: circle.competition.id, entryId: randomUUID(), requestId: request.id };
    const { errors } = await answerTo(api, 'competitionConfirm', input, PAYLOAD, circle.official);
    expect(errors?.[0]?.extensions.code).toBe('FORBIDDEN');
    expect((await circle.read()).status).toBe('OPEN');
  });

  it('a result that has changed since has to be signed anew', async () => {
    const circle = await finished();
    const { request } = await sign(circle, circle.official);
    await circle.enter(
      'competitorDisqualify',
      { competitorId: circle.competitorOf(2), rule: 'TR7.1', reason: 'conduct' },
      circle.referee,
    );
    expect((await confirm(circle, request.id, circle.referee)).userErrors).toMatchObject([
      { code: 'CHANGED_SINCE' },
    ]);
    const again = await sign(circle, circle.official);
    expect((await confirm(circle, again.request.id, circle.referee)).competition.status).toBe('OFFICIAL');
  });

  it('what could never become official is refused when it is asked for', async () => {
    const circle = await finished();
    await circle.record(1, 1, '60.00');
    expect((await sign(circle, circle.official)).userErrors).toMatchObject([{ code: 'OPEN_QUESTIONS' }]);
    const { request, userErrors } = await call(
      api,
      'competitionReopen',
      { competitionId: circle.competition.id, entryId: randomUUID(), reason: 'appeal' },
      ASKED,
      circle.director,
    );
    expect([request, userErrors]).toMatchObject([null, [{ code: 'ALREADY_SO' }]]);
  });

  it('both words may be sent again without harm', async () => {
    const circle = await finished();
    const [askId, entryId] = [randomUUID(), randomUUID()];
    const first = await sign(circle, circle.official, askId);
    const again = await sign(circle, circle.official, askId);
    expect([again.request, again.isReplay]).toEqual([first.request, true]);
    expect((await sign(circle, circle.referee, askId)).userErrors).toMatchObject([{ code: 'ID_REUSED' }]);
    const done = await confirm(circle, askId, circle.referee, entryId);
    const repeated = await confirm(circle, askId, circle.referee, entryId);
    expect([repeated.entry, repeated.isReplay]).toEqual([done.entry, true]);
    expect((await confirm(circle, askId, circle.director)).userErrors).toMatchObject([
      { code: 'ALREADY_SO' },
    ]);
  });

  it('two who confirm at once do it once', async () => {
    const circle = await finished();
    const { request } = await sign(circle, circle.official);
    const answers = await Promise.all(
      [circle.referee, circle.director].map((token) => confirm(circle, request.id, token)),
    );
    expect(answers.filter(({ entry }) => entry !== null)).toHaveLength(1);
    expect(answers.flatMap(({ userErrors }) => userErrors)).toMatchObject([{ code: 'ALREADY_SO' }]);
  });

  it('an official result is opened again by two as well', async () => {
    const circle = await finished();
    await confirm(circle, (await sign(circle, circle.official)).request.id, circle.referee);
    const input = { competitionId: circle.competition.id, entryId: randomUUID(), reason: 'appeal upheld' };
    const asked = await call(api, 'competitionReopen', input, ASKED, circle.director);
    expect(asked).toMatchObject({ entry: null, request: { kind: 'REOPENING', reason: 'appeal upheld' } });
    expect((await circle.read()).status).toBe('OFFICIAL');
    expect((await confirm(circle, asked.request.id, circle.director)).userErrors).toMatchObject([
      { code: 'SAME_PERSON' },
    ]);
    expect((await confirm(circle, asked.request.id, circle.referee)).competition.status).toBe('OPEN');
  });
});

describe('that a meet demands two persons', () => {
  const SET = 'meet { needsSecondPerson } userErrors { code }';

  it('is for its director to say and for an administrator to take back', async () => {
    const circle = await Circle.open(api);
    const set = (needsSecondPerson: boolean, token: string) =>
      answerTo(api, 'meetSecondPersonSet', { meetId: circle.meet.id, needsSecondPerson }, SET, token);
    const on = await set(true, circle.director);
    expect(on.data.meetSecondPersonSet).toEqual({ meet: { needsSecondPerson: true }, userErrors: [] });
    await circle.recordCard(['58.10'], ['57.00'], ['56.00']);
    const { version } = await circle.read();
    const input = { expectedVersion: version, incomplete: 'darkness' };
    expect((await circle.enter('competitionSignOff', input, circle.referee)).entry).toBeNull();
    expect((await set(false, circle.director)).errors?.[0]?.extensions.code).toBe('FORBIDDEN');
    expect((await set(false, api.adminToken)).data.meetSecondPersonSet.meet.needsSecondPerson).toBe(false);
  });

  it('and where it does not, one referee signs and an official does not', async () => {
    const circle = await Circle.open(api);
    await circle.recordCard(['58.10']);
    const { version } = await circle.read();
    const input = { competitionId: circle.competition.id, entryId: randomUUID(), expectedVersion: version };
    const sent = { ...input, incomplete: 'darkness' };
    const { errors } = await answerTo(api, 'competitionSignOff', sent, ASKED, circle.official);
    expect(errors?.[0]?.extensions.code).toBe('FORBIDDEN');
    expect((await call(api, 'competitionSignOff', sent, ASKED, circle.referee)).competition.status).toBe(
      'OFFICIAL',
    );
  });
});
