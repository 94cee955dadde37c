import { globalId } from '../../apps/api/src/platform/inputs/global-id.js';
import { idOf } from '../../seed/ids.js';
import { enterSquad, loadSquad, SQUAD_IDS } from '../../seed/squad/load-squad.js';
import { nameOf, SQUAD, type TrueFault } from '../../seed/squad/members.js';
import { signedInPerson } from '../support/accounts.js';
import { startApi, type TestApi } from '../support/api.js';
import { eventually } from '../support/live.js';

/** The whole squad of the demonstration: throws drawn from a written model, entered through the API. */
let api: TestApi;
let coach: string;

beforeAll(async () => {
  api = await startApi();
  await enterSquad(api.url, api.adminToken);
  const roles = SQUAD_IDS.map((id) => ({ role: 'COACH', on: globalId('Athlete', id) }));
  coach = (await signedInPerson(api, roles)).accessToken;
  await loadSquad({ baseUrl: api.url, adminToken: api.adminToken, coachToken: coach });
}, 120_000);
afterAll(() => api.close());

const EFFECT =
  'percent p draws isExact notYetKnown sentence interval { low high } refused { code sentence } attempts';
const WHOLE = `__typename ... on AthleteAnalysis {
  isFirstAnswer draws throws dataVersion
  implements { implement throws best { cm attempt } progress { bestCm } openingTrial { n refused { code } } lastAttempt { refused { code need } } }
  faults { code seen { k n share } distance { ${EFFECT} } fouls { riskDifference p sentence } q worthTesting caution }
  next { code group heldBack expectedCm } foulsByReason { reason count }
  transfer { ratio pairs refused { code } }
}`;

async function analysed(index: number, selection = WHOLE, args = 'event: DISCUS'): Promise<any> {
  const query = `query ($id: ID!) { notebookAthlete(athleteId: $id) { analysis(${args}) { ${selection} } } }`;
  const id = globalId('Athlete', SQUAD_IDS[index]!);
  return (await api.data(query, { id }, coach)).notebookAthlete.analysis;
}

/** The thorough answer, which follows the first. */
async function thorough(index: number): Promise<any> {
  let found: any;
  await eventually(
    async () => (found = await analysed(index)),
    (analysis: any) => !analysis.isFirstAnswer,
  );
  return found;
}

function truth(index: number, code: string): TrueFault {
  return SQUAD[index]!.faults.find((fault) => fault.code === code)!;
}

describe('the squad', () => {
  const ROISIN = SQUAD.findIndex((member) => nameOf(member) === 'Roisin Eldergrove');
  const VERITY = SQUAD.findIndex((member) => nameOf(member) === 'Verity Greenholt');
  const IMKE = SQUAD.findIndex((member) => nameOf(member) === 'Imke Dunfallow');
  const CHILD = 0;

  it('has effects that are there found, and of those that are not nothing is claimed', async () => {
    const first = await analysed(ROISIN);
    expect(first.throws).toBeGreaterThan(200);
    const { faults } = await thorough(ROISIN);
    const of = (code: string): any => faults.find((fault: any) => fault.code === code);
    const late = of('DT-14').distance;
    expect([late.draws, late.notYetKnown, of('DT-14').worthTesting]).toEqual([20_000, false, true]);
    expect(late.interval.low).toBeLessThan(-100 * truth(ROISIN, 'DT-14').costs);
    expect(late.interval.high).toBeGreaterThan(-100 * truth(ROISIN, 'DT-14').costs);
    expect(of('DT-31').fouls.riskDifference).toBeGreaterThan(0.1);
    expect(of('DT-31').fouls.p).toBeLessThan(0.05);
    // Every number can be opened.
    const { best } = (await analysed(ROISIN)).implements[0];
    expect(late.attempts.length).toBeGreaterThan(200);
    const page = `query ($id: ID!) { notebookAthlete(athleteId: $id) { history(first: 100) { edges { node { id mark } } pageInfo { hasNextPage } } } }`;
    const { notebookAthlete } = await api.data(page, { id: globalId('Athlete', SQUAD_IDS[ROISIN]!) }, coach);
    expect(notebookAthlete.history.pageInfo.hasNextPage).toBe(true);
    expect(best.attempt).toMatch(/^[0-9a-f-]{36}$/);
  }, 60_000);

  it('is told of few effects that are none: one interval in ten misses, and the squad together does not', async () => {
    const all = await Promise.all(
      [2, 3, 4, 5, 6, 7].map(async (index) => ({ index, found: await analysed(index) })),
    );
    const none = all.flatMap(({ index, found }) =>
      found.faults.filter(
        ({ code, distance }: any) => truth(index, code).costs === 0 && distance.refused === null,
      ),
    );
    expect(none.length).toBeGreaterThan(6);
    expect(none.filter(({ distance }: any) => !distance.notYetKnown).length).toBeLessThanOrEqual(2);
    const query = `{ squadFault(event: DISCUS, code: "DT-06") { meanInterval { low high } } }`;
    const { low, high } = (await api.data(query, {}, coach)).squadFault.meanInterval;
    expect([low < 0, high > 0]).toEqual([true, true]);
  }, 60_000);

  it('is told plainly what is missing', async () => {
    const {
      faults,
      implements: [discus],
    } = await analysed(VERITY);
    const rare = faults.find((fault: any) => fault.code === 'DT-12').distance;
    expect(['LT_INFORMATIVE_SERIES', 'LT_PER_STATE']).toContain(rare.refused.code);
    expect(rare.refused.sentence).toMatch(/needed|missing/);
    expect(rare.percent).toBeNull();
    expect(discus.lastAttempt.refused).toMatchObject({ code: 'LT_SERIES', need: 6 });
  });

  it('is pooled over athletes; children are in no comparison', async () => {
    const query = `{ squadFault(event: DISCUS, code: "DT-14") { done total childrenLeftOut meanPercent meanInterval { low high }
      athletes { athlete { name } own { percent } pooledPercent } } }`;
    let found: any;
    await eventually(
      async () => (found = (await api.data(query, {}, coach)).squadFault),
      ({ done, total }: any) => done === total,
    );
    expect([found.total, found.childrenLeftOut]).toEqual([6, 2]);
    expect(found.meanInterval.low).toBeLessThan(-4.5);
    expect(found.meanInterval.high).toBeGreaterThan(-5);
    const names = found.athletes.map(({ athlete }: any) => athlete.name);
    expect(names).not.toContain('Bryony Applemoor');
  }, 60_000);

  it('does not push points of the arm for those who grow', async () => {
    const { next } = await thorough(IMKE);
    const arm = next.find(({ code }: any) => code === 'DT-20');
    expect([arm.heldBack, arm.group]).toEqual(['ARM_OR_SHOULDER_IN_GROWTH', null]);
    expect(next[0].heldBack).toBeNull();
  }, 60_000);

  it('shows a child own progress and one thing to try, and has no field for more', async () => {
    const child = await analysed(
      CHILD,
      `__typename ... on ChildAnalysis { tryNext { code point } implements { implement progress { bestCm } } points { code seen { n } } }`,
    );
    expect(child.__typename).toBe('ChildAnalysis');
    expect(child.implements).toHaveLength(1);
    expect(child.points.map(({ code }: any) => code)).toEqual(['DT-06', 'DT-14']);
    const schema = `{ __type(name: "ChildAnalysis") { fields { name } } }`;
    const { __type } = await api.data(schema);
    const names = __type.fields.map(({ name }: any) => name);
    for (const word of ['next', 'faults', 'outlook', 'percentile', 'expected', 'rank', 'transfer'])
      expect(names.filter((name: string) => name.toLowerCase() === word)).toEqual([]);
    const outlook = `query ($id: ID!) { notebookAthlete(athleteId: $id) { outlook(event: DISCUS, standard: "25.00", on: "2026-09-01") { chance } } }`;
    const { notebookAthlete } = await api.data(
      outlook,
      { id: globalId('Athlete', SQUAD_IDS[CHILD]!) },
      coach,
    );
    expect(notebookAthlete.outlook).toBeNull();
  });

  it('says what goes together, and never what does what', async () => {
    const all = await Promise.all([2, 3, 4, 5, 6, 7].map((index) => analysed(index)));
    const sentences = all.flatMap(({ faults }) =>
      faults.flatMap(({ distance, fouls, seen }: any) => [
        distance.sentence,
        fouls.sentence,
        seen?.sentence ?? '',
      ]),
    );
    expect(sentences.length).toBeGreaterThan(30);
    for (const sentence of sentences)
      expect(sentence).not.toMatch(
        /\b(costs?|causes?|because|leads? to|due to|loses?|improves?|proves?|should)\b/i,
      );
    expect(sentences.filter((sentence) => /associated with/.test(sentence)).length).toBeGreaterThan(5);
  }, 60_000);

  it('is asked for again when a throw is added, and not computed again when none is', async () => {
    const before = await thorough(VERITY);
    const again = await analysed(VERITY);
    expect(again).toEqual(before);
    const session = { id: idOf('practice 2026-08-05') };
    const throwLog = `mutation ($input: ThrowsLogInput!) { throwsLog(input: $input) { results { status } } }`;
    const thrown = {
      id: idOf('one more'),
      athleteId: globalId('Athlete', SQUAD_IDS[VERITY]!),
      event: 'DISCUS',
    };
    const rest = { variant: 'FULL_TURN', implementGrams: 1000, round: 99, outcome: 'VALID', mark: '46.00' };
    await api.data(throwLog, { input: { sessionId: session.id, throws: [{ ...thrown, ...rest }] } }, coach);
    const after = await analysed(VERITY);
    expect(after.throws).toBe(before.throws + 1);
    expect(after.dataVersion).not.toBe(before.dataVersion);
  }, 60_000);

  it('is listed by name, with who is due and what was not looked for, and without a mark', async () => {
    const query = `{ squadOverview(on: "2026-09-10") { athlete { name isChild } lastThrowOn throwsInFourWeeks isDue
      notAssessed { code lastLookedFor } } }`;
    const { squadOverview } = await api.data(query, {}, coach);
    expect(squadOverview).toHaveLength(8);
    expect(squadOverview[0]).toMatchObject({
      athlete: { name: 'Bryony Applemoor', isChild: true },
      isDue: false,
    });
    expect(squadOverview[0].notAssessed.map(({ code }: any) => code)).toContain('DT-14');
  });
});
