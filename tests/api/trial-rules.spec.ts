import { startApi, type TestApi } from '../support/api.js';
import { Circle } from '../support/at-the-circle.js';
import { discusSheet } from '../support/circle.js';

let api: TestApi;
beforeAll(async () => {
  api = await startApi();
});
afterAll(() => api.close());

const RULES = `query ($id: ID!) { competition(id: $id) {
  foulReasons { reason sentence rule isConfirmed }
  trialTime { seconds consecutiveSeconds rule isConfirmed }
} }`;

async function rulesOf(changes: object): Promise<any> {
  const circle = await Circle.open(api, discusSheet(2, changes));
  return (await api.data(RULES, { id: circle.competition.id })).competition;
}

describe('what whoever records has to know of the rules', () => {
  it('is the reasons for a failure that belong to the event, each with its rule', async () => {
    const { foulReasons } = await rulesOf({ event: 'shot' });
    const reasons = foulReasons.map(({ reason }: any) => reason);
    expect(reasons).toEqual(
      expect.arrayContaining(['TIME', 'RIM', 'BOARD', 'RELEASE', 'SECTOR', 'EARLY', 'EXIT']),
    );
    expect(reasons).not.toContain('PLANE');
    for (const { sentence, rule } of foulReasons) expect([sentence, rule]).not.toContain('');
  });

  // A throw off the cage is a failure under NFHS 6-6-9(e), not under NCAA 6-9-2(i) (a public rules comparison, mtfoa.com).
  it.each([
    ['NFHS', true],
    ['NCAA', false],
  ])('%s: whether the cage is a reason differs by rule set', async (rules, isReason) => {
    const { foulReasons } = await rulesOf({ rules });
    expect(foulReasons.some(({ reason }: any) => reason === 'CAGE')).toBe(isReason);
  });

  it('is every reason that the competition takes, and no other', async () => {
    const circle = await Circle.open(api, discusSheet(30, { event: 'triple-jump', plan: { cuts: [] } }));
    const { foulReasons } = (await api.data(RULES, { id: circle.competition.id })).competition;
    for (const [at, { reason }] of foulReasons.entries()) {
      const { entry } = await circle.record(at + 1, 1, 'X', { foul: reason });
      expect([reason, entry?.standing]).toEqual([reason, 'ACCEPTED']);
    }
    const { userErrors } = await circle.record(30, 1, 'X', { foul: 'RIM' });
    expect(userErrors).toMatchObject([{ code: 'FOUL_NOT_OF_EVENT', path: ['input', 'foul'] }]);
  });

  // Values from memory: one minute, two for consecutive trials (WA TR25.17); the rule set says so.
  it('is the time for a trial of a throw', async () => {
    const { trialTime } = await rulesOf({});
    expect(trialTime).toMatchObject({ seconds: 60, consecutiveSeconds: 120, isConfirmed: false });
    expect(trialTime.rule).toContain('TR25.17');
  });
});
