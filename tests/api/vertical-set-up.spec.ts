import { startApi, type TestApi } from '../support/api.js';
import { makeMeet, type MadeMeet } from '../support/made-meet.js';

const CREATE = `mutation ($input: CompetitionCreateInput!) {
  competitionCreate(input: $input) {
    competition { id event unit plan { rounds } vertical { heights isCombined passGivesUp tieForFirst } }
    isReplay
    userErrors { code path rule message remedy }
  }
}`;
const IMPORT = `mutation ($input: SheetImportInput!) {
  sheetImport(input: $input) { competition { id } isReplay userErrors { code path } }
}`;

let api: TestApi;
let meet: MadeMeet;
beforeAll(async () => {
  api = await startApi();
  meet = await makeMeet(api);
});
afterAll(() => api.close());

async function create(input: object): Promise<any> {
  const given = { meetId: meet.meetId, title: 'High jump', event: 'HIGH_JUMP', ...input };
  return (await api.data(CREATE, { input: given }, meet.director)).competitionCreate;
}

const codesAndPaths = ({ userErrors }: any): string[] =>
  userErrors.map(({ code, path }: any) => `${code} ${path.join('.')}`);

describe('a high jump or pole vault that is set up', () => {
  it('keeps its heights and the usual terms, and has no plan of rounds', async () => {
    const { competition, userErrors } = await create({ vertical: { heights: ['1.60', '1.65', '1.70'] } });
    expect(userErrors).toEqual([]);
    expect(competition).toMatchObject({
      event: 'HIGH_JUMP',
      plan: null,
      vertical: {
        heights: ['1.60', '1.65', '1.70'],
        isCombined: false,
        passGivesUp: 'HEIGHT',
        tieForFirst: 'JUMP_OFF',
      },
    });
  });

  it('may be held on other terms, and in feet and inches', async () => {
    const terms = { isCombined: true, passGivesUp: 'TRIAL', tieForFirst: 'SHARED' };
    const heights = ['5-00.00', '5-01.00', '5-02.00'];
    const { competition } = await create({ unit: 'QIN', rules: 'NFHS', vertical: { heights, ...terms } });
    expect(competition).toMatchObject({ unit: 'QIN', vertical: { heights, ...terms } });
  });

  it('is made once when the request is sent again, and not under a used id with other heights', async () => {
    const id = '01997f00-0000-7000-8000-00000000b0a1';
    const first = await create({ id, vertical: { heights: ['1.60', '1.65'] } });
    const again = await create({ id, vertical: { heights: ['1.60', '1.65'] } });
    expect(again).toEqual({ ...first, isReplay: true });
    expect(codesAndPaths(await create({ id, vertical: { heights: ['1.60', '1.64'] } }))).toEqual([
      'ID_REUSED input.id',
    ]);
  });

  it.each<[string, object, string[]]>([
    ['without heights', {}, ['VERTICAL_MISSING input.vertical']],
    [
      'with a plan',
      { vertical: { heights: ['1.60'] }, plan: { rounds: 4 } },
      ['PLAN_NOT_EXPECTED input.plan'],
    ],
    [
      'as a throw with heights',
      { event: 'DISCUS', vertical: { heights: ['1.60'] } },
      ['VERTICAL_NOT_EXPECTED input.vertical'],
    ],
    [
      'in two units',
      { vertical: { heights: ['1.60', '5-06.00', '1.70', '5-08.00'] } },
      ['WRONG_UNIT input.vertical.heights.1', 'WRONG_UNIT input.vertical.heights.3'],
    ],
    [
      'with a bar that falls or stays',
      { vertical: { heights: ['1.60', '1.60', '1.55'], hasOwnSteps: true } },
      ['BAR_NOT_RISING input.vertical.heights.1', 'BAR_NOT_RISING input.vertical.heights.2'],
    ],
    // At least 2 cm in the high jump and 5 cm in the pole vault, never by more than the last time (WA TR26.4).
    [
      'by too small a step',
      { vertical: { heights: ['1.60', '1.61'] } },
      ['BAR_STEP_TOO_SMALL input.vertical.heights.1'],
    ],
    [
      'by too small a step for a pole',
      { event: 'POLE_VAULT', vertical: { heights: ['3.00', '3.04'] } },
      ['BAR_STEP_TOO_SMALL input.vertical.heights.1'],
    ],
    [
      'by a step that grows',
      { vertical: { heights: ['1.60', '1.63', '1.68'] } },
      ['BAR_STEP_GROWS input.vertical.heights.2'],
    ],
    // 3 cm throughout in combined events (WA TR26.4).
    [
      'by other steps than a combined event has',
      { vertical: { heights: ['1.60', '1.63', '1.65'], isCombined: true } },
      ['BAR_STEP_NOT_UNIFORM input.vertical.heights.2'],
    ],
    [
      'with an implement',
      { vertical: { heights: ['1.60'] }, implementGrams: 1000 },
      ['IMPLEMENT_NOT_EXPECTED input.implementGrams'],
    ],
  ])('%s is not made', async (_what, input, problems) => {
    const answer = await create(input);
    expect(answer.competition).toBeNull();
    expect(codesAndPaths(answer)).toEqual(problems);
    for (const { message, remedy } of answer.userErrors) expect([message, remedy]).not.toContain('');
  });

  it('names the rule of a step, and takes it all the same from a meet that says so', async () => {
    const heights = ['1.00', '1.01', '1.06'];
    const refused = await create({ vertical: { heights } });
    expect(refused.userErrors.map(({ rule }: any) => rule)).toEqual(['WA TR26.4', 'WA TR26.4']);
    expect(refused.userErrors[0].remedy).toContain('hasOwnSteps');
    const { competition } = await create({ vertical: { heights, hasOwnSteps: true } });
    expect(competition.vertical.heights).toEqual(heights);
  });

  it.each([[[]], [Array.from({ length: 201 }, (_, at) => (1 + at / 100).toFixed(2))]])(
    'has one to 200 heights',
    async (heights) => {
      const given = { meetId: meet.meetId, title: 'High jump', event: 'HIGH_JUMP', vertical: { heights } };
      const { errors } = await api.send(CREATE, { input: given }, meet.director);
      expect(errors?.[0]?.extensions).toMatchObject({
        code: 'BAD_USER_INPUT',
        fields: [{ path: ['input', 'vertical', 'heights'] }],
      });
    },
  );

  it('closes its start list with the first jump', async () => {
    const { competition } = await create({ vertical: { heights: ['1.60', '1.65'] } });
    const enter = (bib: string): Promise<any> =>
      api.data(
        `mutation ($input: CompetitorEnterInput!) {
           competitorEnter(input: $input) { competitor { id } userErrors { code } }
         }`,
        { input: { competitionId: competition.id, listedName: `Nobody ${bib}`, bib } },
        meet.director,
      );
    const { competitor } = (await enter('1')).competitorEnter;
    await api.data(
      `mutation ($input: JumpRecordInput!) { jumpRecord(input: $input) { entry { id } userErrors { code } } }`,
      {
        input: {
          competitionId: competition.id,
          entryId: '01997f00-0000-7000-8000-00000000b0a2',
          competitorId: competitor.id,
          height: '1.60',
          trial: 1,
          outcome: 'CLEARED',
        },
      },
      meet.director,
    );
    expect((await enter('2')).competitorEnter.userErrors).toEqual([{ code: 'COMPETITION_STARTED' }]);
  });
});

describe('a sheet that is taken in', () => {
  const importSheet = async (input: object): Promise<any> =>
    (await api.data(IMPORT, { input: { meetId: meet.meetId, title: 'Card', ...input } }, meet.director))
      .sheetImport;

  const sheet = {
    format: 'sectorline-sheet/1',
    rules: 'WA',
    event: 'high-jump',
    heights: ['1.75', '1.80'],
    competitors: [
      { bib: 'A', series: ['O', 'XXX'] },
      { bib: 'B', series: ['O', 'XXX'] },
    ],
    jumpOff: [
      { height: '1.80', tries: { B: 'X', A: 'X' } },
      { height: '1.78', tries: { B: 'O', A: 'X' } },
    ],
  };

  it('is answered with the same competition when it is sent again, and refused when it is another', async () => {
    const id = '01997f00-0000-7000-8000-00000000b0a3';
    const first = await importSheet({ id, sheet });
    expect(first).toMatchObject({ isReplay: false, userErrors: [] });
    expect(await importSheet({ id, sheet })).toEqual({ ...first, isReplay: true });
    const other = { ...sheet, jumpOff: sheet.jumpOff.slice(0, 1) };
    expect((await importSheet({ id, sheet: other })).userErrors).toEqual([
      { code: 'ID_REUSED', path: ['input', 'id'] },
    ]);
  });

  it('leaves out a round of the jump-off that nobody took', async () => {
    const id = '01997f00-0000-7000-8000-00000000b0a4';
    const withEmpty = { ...sheet, jumpOff: [{ height: '1.80', tries: {} }] };
    expect(await importSheet({ id, sheet: withEmpty })).toMatchObject({ userErrors: [] });
    expect(await importSheet({ id, sheet: withEmpty })).toMatchObject({ isReplay: true, userErrors: [] });
  });
});
