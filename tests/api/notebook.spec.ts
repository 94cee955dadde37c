import { randomUUID } from 'node:crypto';
import { answerTo, call, signedInPerson } from '../support/accounts.js';
import { startApi, type TestApi } from '../support/api.js';
import { Circle } from '../support/at-the-circle.js';
import { discusSheet } from '../support/circle.js';
import { noteOf, throwOf } from '../support/notebook.js';

const RESULT = 'results { id status } userErrors { code path message remedy }';

let api: TestApi;
let athleteId: string;
let coach: string;
let athlete: string;
let sessionId: string;

async function newAthlete(changes: object = {}): Promise<string> {
  const named = {
    givenName: 'Odalys',
    familyName: 'Thornwick',
    sex: 'W',
    birthDate: '2001-05-04',
    ...changes,
  };
  const made = await call(api, 'athleteCreate', named, 'athlete { id } userErrors { code }', api.adminToken);
  return made.athlete.id;
}

async function newSession(onDate = '2026-04-14'): Promise<string> {
  const made = await call(api, 'practiceSessionCreate', { onDate }, 'session { id }', coach);
  return made.session.id;
}

const log = (throws: object[], session = sessionId): Promise<any> =>
  call(api, 'throwsLog', { sessionId: session, throws }, RESULT, coach);

const statuses = (done: any): string[] => done.results.map(({ status }: { status: string }) => status);
const codes = (done: any): string[] => done.userErrors.map(({ code }: { code: string }) => code);

async function read(selection: string, token = coach, id = athleteId): Promise<any> {
  const query = `query ($id: ID!) { notebookAthlete(athleteId: $id) { ${selection} } }`;
  return (await api.data(query, { id }, token)).notebookAthlete;
}

beforeAll(async () => {
  api = await startApi();
  athleteId = await newAthlete({ handedness: 'RIGHT' });
  const { accessToken } = await signedInPerson(api, [{ role: 'COACH', on: athleteId }]);
  coach = accessToken;
  athlete = (await signedInPerson(api, [{ role: 'ATHLETE', on: athleteId }])).accessToken;
  sessionId = await newSession();
}, 60_000);
afterAll(() => api.close());

describe('throws of practice', () => {
  it('are kept in the order of sending, and a resend after a lost answer keeps nothing twice', async () => {
    const batch = [
      throwOf(athleteId, { observation: noteOf() }),
      throwOf(athleteId, { round: 2, outcome: 'FOUL', mark: null, foul: 'RIM', observation: noteOf() }),
    ];
    expect(statuses(await log(batch))).toEqual(['STORED', 'STORED', 'STORED', 'STORED']);
    expect(statuses(await log(batch))).toEqual(['REPLAYED', 'REPLAYED', 'REPLAYED', 'REPLAYED']);
    const [both, again] = await Promise.all([log([batch[0]!, throwOf(athleteId, { round: 3 })]), log(batch)]);
    expect([statuses(both), statuses(again)].flat()).not.toContain('REFUSED');
    const { practiceThrows, observations } = await read('practiceThrows { round mark } observations { id }');
    expect(practiceThrows.map(({ round }: any) => round)).toEqual([1, 2, 3]);
    expect(observations).toHaveLength(2);
  });

  it('of one id with other content are refused, and keep no other out', async () => {
    const first = throwOf(athleteId, { round: 4 });
    await log([first]);
    const done = await log([
      { ...first, mark: '33.33' },
      throwOf(athleteId, { round: 5, mark: '102-06.00' }),
      throwOf(athleteId, { round: 6 }),
    ]);
    expect(statuses(done)).toEqual(['REFUSED', 'REFUSED', 'STORED']);
    expect(done.userErrors.map(({ code, path }: any) => [code, path])).toEqual([
      ['ID_REUSED', ['input', 'throws', '0', 'id']],
      ['MARK_UNIT', ['input', 'throws', '1', 'mark']],
    ]);
  });

  it('that make no sense are told what is wrong', async () => {
    const done = await log([
      throwOf(athleteId, { variant: 'GLIDE' }),
      throwOf(athleteId, { outcome: 'FOUL', mark: '31.00' }),
      throwOf(athleteId, { foul: 'RIM' }),
      throwOf(athleteId, { implementGrams: null }),
      throwOf(athleteId, { reason: 'no reason to' }),
      throwOf(athleteId, { isAnnulled: true }),
      throwOf(athleteId, { event: 'POLE_VAULT' }),
      throwOf(athleteId, { outcome: 'FOUL', mark: null, foul: 'BAR' }),
    ]);
    expect(codes(done)).toEqual([
      ...['OTHER_EVENT', 'MARK_OF_FOUL', 'NOT_A_FOUL', 'IMPLEMENT_MISSING', 'REASON_NOT_EXPECTED'],
      ...['REASON_NOT_EXPECTED', 'WRONG_EVENT', 'OTHER_EVENT'],
    ]);
    for (const { remedy } of done.userErrors) expect(remedy).not.toBe('');
  });

  it('of athletes whom somebody else coaches are refused one by one', async () => {
    const stranger = await newAthlete();
    const done = await log([throwOf(stranger), throwOf(athleteId, { round: 7 })]);
    expect([statuses(done), codes(done)]).toEqual([['REFUSED', 'STORED'], ['NOT_FOUND']]);
  });

  it('are corrected by a row that says why; what was seen stays with the throw', async () => {
    const thrown = throwOf(athleteId, { round: 8, observation: noteOf() });
    await log([thrown]);
    const { observation: _, ...bare }: any = thrown;
    const again = {
      ...bare,
      id: randomUUID(),
      mark: '13.20',
      replacesId: thrown.id,
      reason: 'figures turned',
    };
    expect(codes(await log([{ ...again, reason: null }]))).toEqual(['REASON_MISSING']);
    expect(statuses(await log([again]))).toEqual(['STORED']);
    expect(codes(await log([{ ...again, id: randomUUID() }]))).toEqual(['REPLACED_ALREADY']);
    const struck = { ...again, id: randomUUID(), replacesId: again.id, isAnnulled: true, reason: 'no throw' };
    expect(statuses(await log([struck]))).toEqual(['STORED']);
    const { practiceThrows, observations } = await read(
      'practiceThrows { throwId rowId mark isAnnulled } observations { throwId }',
    );
    const now = practiceThrows.find(({ throwId }: any) => throwId === thrown.id);
    expect(now).toEqual({ throwId: thrown.id, rowId: struck.id, mark: '13.20', isAnnulled: true });
    expect(observations.filter(({ throwId }: any) => throwId === thrown.id)).toHaveLength(1);
  });
});

describe('observations', () => {
  const note = (observations: object[], token = coach): Promise<any> =>
    call(api, 'observationsLog', { athleteId, observations }, RESULT, token);

  it('say what was looked for: what is noted outside of it is refused', async () => {
    const thrown = throwOf(athleteId, { round: 9 });
    await log([thrown]);
    const of = { throwId: thrown.id };
    const done = await note([
      noteOf({ ...of, scope: ['DT-04'] }),
      noteOf({ ...of, scope: [], marks: [] }),
      noteOf({ ...of, scope: ['SP-01'], marks: [] }),
      noteOf({
        ...of,
        scope: ['DT-29', 'DT-30'],
        marks: [
          { code: 'DT-29', severity: 1 },
          { code: 'DT-30', severity: 2 },
        ],
      }),
      noteOf({ ...of, scope: null, checklist: { name: 'three', version: 1 } }),
      noteOf({}),
      noteOf({ ...of, note: 'Left foot late' }),
    ]);
    expect(codes(done)).toEqual([
      ...[
        'NOT_IN_SCOPE',
        'SCOPE_EMPTY',
        'CODE_OF_OTHER_EVENT',
        'OPPOSITES',
        'SCOPE_MISSING',
        'THROW_NOT_NAMED',
      ],
    ]);
    expect(statuses(done).at(-1)).toBe('STORED');
    const { observations } = await read('observations { note }');
    expect(observations.map(({ note: said }: any) => said)).toContain('Left foot late');
  });

  it('of a trial at a meet need not wait for the official, and none is of a pass', async () => {
    const circle = await Circle.open(api, discusSheet(2));
    const entry = { competitionId: circle.competition.id, athleteId, bib: '77' };
    const entered = await call(
      api,
      'competitorEnter',
      entry,
      'competitor { id } userErrors { code }',
      circle.director,
    );
    const competitorId = entered.competitor.id;
    const trial = { competitionId: circle.competition.id, competitorId };
    expect(statuses(await note([noteOf({ trial: { ...trial, round: 2 } })]))).toEqual(['STORED']);
    const passed = {
      ...{
        competitionId: circle.competition.id,
        entryId: randomUUID(),
        competitorId,
        round: 1,
        outcome: 'PASS',
      },
    };
    await call(api, 'attemptRecord', passed, 'userErrors { code }', circle.official);
    expect(codes(await note([noteOf({ trial: { ...trial, round: 1 } })]))).toEqual(['NOTHING_THROWN']);
    expect(
      codes(await note([noteOf({ trial: { ...trial, competitorId: circle.competitorOf(1), round: 1 } })])),
    ).toEqual(['NOT_FOUND']);
    const query = `query ($id: ID!) { competitionNotes(competitionId: $id) { series { trials { round trial { outcome }
      observations { marks { code severity } } } } } }`;
    const { competitionNotes } = await api.data(query, { id: circle.competition.id }, coach);
    expect(competitionNotes.series[0].trials).toEqual([
      { round: 1, trial: { outcome: 'PASS' }, observations: [] },
      { round: 2, trial: null, observations: [{ marks: [{ code: 'DT-14', severity: 2 }] }] },
    ]);
  });
});

describe('what is said beside throws', () => {
  const say = (name: string, input: object): Promise<any> =>
    call(api, name, { athleteId, ...input }, 'id isReplay userErrors { code path }', coach);

  it('is kept under versions, ended by another row, and read as it stands', async () => {
    const three = { event: 'DISCUS', name: 'three for today', codes: ['DT-04', 'DT-14'] };
    const id = randomUUID();
    await say('checklistSet', { id, ...three });
    expect((await say('checklistSet', { id, ...three })).isReplay).toBe(true);
    await say('checklistSet', { ...three, codes: ['DT-20'] });
    const unknown = await say('checklistSet', { ...three, codes: ['DT-04', 'DT-99'] });
    expect(unknown.userErrors).toEqual([{ code: 'CODE_UNKNOWN', path: ['input', 'codes', '1'] }]);
    const focus = {
      event: 'DISCUS',
      code: 'DT-14',
      how: 'TASK',
      what: 'Step over the towel',
      from: '2026-04-01',
    };
    const { id: focusId } = await say('focusStart', focus);
    expect(codes(await say('focusEnd', { focusId, to: '2026-03-31' }))).toEqual(['WINDOW_EMPTY']);
    expect(codes(await say('focusEnd', { focusId, to: '2026-04-20' }))).toEqual([]);
    expect(codes(await say('focusEnd', { focusId, to: '2026-04-21' }))).toEqual(['ALREADY_SO']);
    await say('stageSet', { event: 'DISCUS', stage: 'BASICS', from: '2026-01-01' });
    await say('stageSet', { event: 'DISCUS', stage: 'DEVELOPING', from: '2026-03-01' });
    await say('consentRecord', {
      purpose: 'VIDEO',
      isGiven: true,
      by: 'GUARDIAN',
      name: 'R. Thornwick',
      on: '2026-01-05',
    });
    const found = await read(
      `checklists { name version codes } focuses { code from to what } stages { stage } consents { purpose isGiven }`,
    );
    expect(found).toEqual({
      checklists: [{ name: 'three for today', version: 2, codes: ['DT-20'] }],
      focuses: [{ code: 'DT-14', from: '2026-04-01', to: '2026-04-20', what: 'Step over the towel' }],
      stages: [{ stage: 'DEVELOPING' }],
      consents: [{ purpose: 'VIDEO', isGiven: true }],
    });
  });

  it('is shown to the athlete once it is released, and results always are', async () => {
    const selection = `practiceThrows { throwId } observations { id } focuses { code } stages { stage }
      analysis(event: DISCUS) { __typename }`;
    const before = await read(selection, athlete);
    expect(before).toMatchObject({ observations: [], focuses: [], stages: [], analysis: null });
    expect(before.practiceThrows.length).toBeGreaterThan(3);
    for (const what of ['NOTES', 'FOCUS', 'ANALYSIS']) await say('releaseSet', { what, isOpen: true });
    const after = await read(selection, athlete);
    expect(after.observations.length).toBeGreaterThan(0);
    expect(after).toMatchObject({
      focuses: [{ code: 'DT-14' }],
      stages: [],
      analysis: { __typename: 'AthleteAnalysis' },
    });
    await say('releaseSet', { what: 'NOTES', isOpen: false });
    expect((await read(selection, athlete)).observations).toEqual([]);
    const refused = await answerTo(
      api,
      'stageSet',
      { athleteId, event: 'DISCUS', stage: 'BASICS', from: '2026-01-01' },
      'id',
      athlete,
    );
    expect(refused.errors?.[0]?.extensions.code).toBe('FORBIDDEN');
  });
});

describe('own words', () => {
  const change = (name: string, input: object): Promise<any> =>
    call(api, name, input, 'codes isReplay userErrors { code }', coach);
  const draft = {
    ...{
      event: 'DISCUS',
      name: 'Free hand open',
      looksLike: '{block} hand open',
      point: 'Close your free hand',
    },
    ...{ phase: 'P1', segment: 'BLOCK_ARM', view: 'SIDE', relevantFrom: 'BASICS' },
  };

  it('are defined, merged and split without losing what was noted under them', async () => {
    const {
      codes: [code],
    } = await change('faultDefine', { draft });
    expect(code).toMatch(/^DT-X\d\d$/);
    expect(codes(await change('faultDefine', { draft }))).toEqual(['NAME_TAKEN']);
    expect(codes(await change('faultChange', { kind: 'RETIRE', code: 'DT-04' }))).toEqual(['BUILT_IN']);
    const thrown = throwOf(athleteId, { round: 20, observation: noteOf({ scope: [code], marks: [] }) });
    expect(statuses(await log([thrown]))).toEqual(['STORED', 'STORED']);
    await change('faultChange', { kind: 'MERGE', code, into: 'DT-05' });
    const refused = await log([
      throwOf(athleteId, { round: 21, observation: noteOf({ scope: [code], marks: [] }) }),
    ]);
    expect(codes(refused)).toContain('CODE_RETIRED');
    const { analysis } = await read(
      'analysis(event: DISCUS) { ... on AthleteAnalysis { faults { code seen { n } } } }',
    );
    expect(analysis.faults.find((one: any) => one.code === 'DT-05')).toEqual({
      code: 'DT-05',
      seen: { n: 1 },
    });
    expect(analysis.faults.some((one: any) => one.code === code)).toBe(false);
  });
});
