import { startApi, type TestApi } from '../support/api.js';
import { Bar, highJumpSheet } from '../support/at-the-bar.js';

let api: TestApi;
beforeAll(async () => {
  api = await startApi();
});
afterAll(() => api.close());

/*
 * The example table of WA TR26.8 and 26.9, recalled from memory: four athletes at 1.88, three of them level for first,
 * and a jump-off. Bibs 1 to 4 are A to D.
 */
const HEIGHTS = ['1.75', '1.80', '1.84', '1.88', '1.91', '1.94', '1.97'] as const;
const CARD: readonly (readonly string[])[] = [
  ['O', '-', '-', '-'],
  ['XO', 'XO', 'O', 'XO'],
  ['O', '-', 'XO', 'XO'],
  ['XO', 'XO', 'XO', 'XO'],
  ['X-', '-', '-', 'XXX'],
  ['XX', '-', 'XXX'],
  ['', 'XXX'],
];

/** The example up to and including so many heights. */
async function example(heights: number = HEIGHTS.length): Promise<Bar> {
  const bar = await Bar.open(api, highJumpSheet(4, HEIGHTS));
  for (const [index, height] of HEIGHTS.slice(0, heights).entries())
    await bar.height(height, ...CARD[index]!);
  return bar;
}

describe('a high jump', () => {
  it('shows where the bar is, who is up and for how long', async () => {
    const bar = await Bar.open(api, highJumpSheet(4, HEIGHTS));
    const before = await bar.read();
    expect(before.progress).toMatchObject({ phase: 'not started', round: 1, remaining: 4 });
    expect(before.progress.up).toEqual({
      bib: '1',
      round: 1,
      height: '1.75',
      isJumpOff: false,
      isUnderProtest: false,
    });
    // A first trial: one minute, however many are left (WA TR25.17, from memory).
    expect(before.progress.vertical).toMatchObject({
      bar: '1.75',
      nextHeight: '1.80',
      awaits: 'jump',
      timeAllowed: { seconds: 60, because: 'first trial', left: 4, startsWhen: 'called', rule: 'WA TR25.17' },
      left: [1, 2, 3, 4].map((bib) => bar.idOf(bib)),
      winner: null,
      jumpOff: null,
    });
    expect([before.plan, before.orders]).toEqual([null, []]);
    expect(before.vertical).toEqual({
      heights: HEIGHTS,
      isCombined: false,
      passGivesUp: 'HEIGHT',
      tieForFirst: 'JUMP_OFF',
    });

    const { entry } = await bar.jump(1, '1.75', 1, 'X', { foul: 'BAR' });
    expect(entry).toMatchObject({ standing: 'ACCEPTED', notices: [] });
    await bar.jump(2, '1.75', 1, '-');
    const after = await bar.read();
    expect(after.progress.up).toMatchObject({ bib: '3', round: 1 });
    expect(after.progress.vertical.calls).toEqual([{ bib: '3' }, { bib: '4' }, { bib: '1' }]);
    const first = after.table.rows.find(({ bib }: any) => bib === '1');
    expect(first).toMatchObject({ place: null, status: null, reason: 'No height cleared yet', series: [] });
    expect(first.vertical).toMatchObject({
      failuresInARow: 1,
      condition: 'in',
      atBar: 'to jump',
      heights: HEIGHTS.map((height, at) => ({ height, cell: at === 0 ? 'X' : null })),
    });
    expect(first.vertical.heights[0].trials).toEqual([
      {
        entry: entry.id,
        height: '1.75',
        trial: 1,
        cell: 'X',
        foul: 'BAR',
        incident: null,
        isProtested: false,
        behindZeroCm: null,
      },
    ]);
  });

  it('raises the bar by itself, and says what everybody needs', async () => {
    const bar = await example(4);
    const { progress, needed } = await bar.read();
    expect(progress.vertical).toMatchObject({ bar: '1.91', nextHeight: '1.94' });
    // D has three failures up to 1.88, the others two: D is fourth, and passes all with any clearance at 1.91.
    expect(needed[3]).toMatchObject({ bib: '4', place: 4, round: 1, barrier: null });
    expect(needed[3].places).toEqual([
      { place: 1, mark: '1.91', trial: 3, isShared: false, rival: expect.any(String) },
    ]);
    expect(needed[3].vertical).toEqual({ next: { height: '1.91', trial: 1 }, standard: null, fill: null });
  });

  it('ranks by failures at the height and up to it, and says so with the rule', async () => {
    const bar = await example();
    const { table, progress } = await bar.read();
    expect(await bar.rows()).toEqual([
      '1 1. 1.88 O XO O XO X- XX .',
      '2 1. 1.88 - XO - XO - - XXX',
      '3 1. 1.88 - O XO XO - XXX .',
      '4 4. 1.88 - XO XO XO XXX . .',
    ]);
    const fourth = table.rows[3];
    expect(fourth).toMatchObject({
      decidedBy: 'total failures',
      reason: '4th: equal height 1.88 and 1 failure at it; 3 failures up to it against 2',
      reasonRule: 'WA TR26.8',
      vertical: { failuresAtBest: 1, failuresToBest: 3, condition: 'three failures', atBar: 'out' },
    });
    expect(progress).toMatchObject({ phase: 'jump-off', vertical: { jumpOff: { phase: 'due', round: 1 } } });
  });

  it('goes to a jump-off, round by round with the bar down and up again, until one has won', async () => {
    const bar = await example();
    const rounds = [
      ['1.91', 'X', 'X', 'X'],
      ['1.89', 'O', 'O', 'X'],
      ['1.91', 'X', 'O'],
    ] as const;
    for (const [index, [height, ...letters]] of rounds.entries()) {
      const { progress } = await bar.read();
      expect(progress.up).toMatchObject({ bib: '1', round: index + 1, height, isJumpOff: true });
      expect(progress.vertical.jumpOff).toMatchObject({ round: index + 1, height, ruleHeight: height });
      for (const [at, letter] of letters.entries()) {
        const { entry } = await bar.jumpOff(at + 1, height, index + 1, letter);
        expect(entry).toMatchObject({ standing: 'ACCEPTED', notices: [] });
      }
    }
    const { table, progress } = await bar.read();
    expect(table.rows.map(({ place, bib, mark }: any) => [place, bib, mark])).toEqual([
      [1, '2', '1.91'],
      [2, '1', '1.89'],
      [3, '3', '1.88'],
      [4, '4', '1.88'],
    ]);
    expect(table.rows[1]).toMatchObject({ decidedBy: 'jump-off', reasonRule: 'WA TR26.9' });
    expect(table.rows[0].vertical.jumpOff).toEqual([
      { height: '1.91', trial: 1, cell: 'X' },
      { height: '1.89', trial: 2, cell: 'O' },
      { height: '1.91', trial: 3, cell: 'O' },
    ]);
    expect(table.vertical.jumpOff).toEqual([
      { round: 1, height: '1.91', tries: [1, 2, 3].map((bib) => ({ competitor: bar.idOf(bib), cell: 'X' })) },
      {
        round: 2,
        height: '1.89',
        tries: ['O', 'O', 'X'].map((cell, at) => ({ competitor: bar.idOf(at + 1), cell })),
      },
      {
        round: 3,
        height: '1.91',
        tries: ['X', 'O'].map((cell, at) => ({ competitor: bar.idOf(at + 1), cell })),
      },
    ]);
    expect(progress).toMatchObject({
      phase: 'complete',
      up: null,
      vertical: { awaits: null, jumpOff: { phase: 'decided', remaining: [bar.idOf(2)] } },
    });
  });

  it('shares first place when the jump-off is declined, and not twice', async () => {
    const bar = await example();
    const decline = (): Promise<any> => bar.enter('jumpOffDecline', { reason: 'all three are content' });
    expect((await decline()).entry.standing).toBe('ACCEPTED');
    const { table, progress } = await bar.read();
    expect(table.rows.map(({ place, isEqual }: any) => [place, isEqual])).toEqual([
      [1, true],
      [1, true],
      [1, true],
      [4, false],
    ]);
    expect(progress).toMatchObject({ phase: 'complete', vertical: { jumpOff: { phase: 'declined' } } });
    expect((await decline()).userErrors).toMatchObject([{ code: 'ALREADY_SO' }]);
  });

  it('is signed off when nothing is left to jump, and archived as its sheet', async () => {
    const bar = await example();
    const sign = async (): Promise<any> => {
      const { version: expectedVersion } = await bar.read();
      return bar.enter('competitionSignOff', { expectedVersion }, bar.circle.referee);
    };
    expect((await sign()).userErrors).toMatchObject([
      { code: 'NOT_COMPLETE', path: ['input', 'incomplete'] },
    ]);
    await bar.enter('jumpOffDecline', { reason: 'all three are content' });
    expect((await sign()).competition.status).toBe('OFFICIAL');
    const { sheet, result } = (
      await api.data(
        `query ($id: ID!) { competition(id: $id) { sheet result } }`,
        { id: bar.circle.competition.id },
        bar.circle.director,
      )
    ).competition;
    expect(sheet).toMatchObject({ event: 'high-jump', heights: HEIGHTS });
    expect(sheet.competitors[0]).toEqual({ bib: '1', series: ['O', 'XO', 'O', 'XO', 'X-', 'XX'] });
    expect(result.results.map(({ place }: any) => place)).toEqual([1, 1, 1, 4]);
    expect((await bar.jump(4, '1.94', 1, 'O')).entry).toMatchObject({
      standing: 'HELD',
      hold: { code: 'SIGNED_OFF' },
    });
  });

  it('lets the winner choose the height, with less than the smallest step', async () => {
    const bar = await Bar.open(api, highJumpSheet(2, ['1.75', '1.80', '1.85']));
    await bar.height('1.75', 'O', 'O');
    await bar.height('1.80', 'O', 'XXX');
    const won = await bar.read();
    expect(won.progress.vertical.winner).toEqual({ competitor: bar.idOf(1), isChoosingHeight: true });
    const { entry } = await bar.enter('barSet', { height: '1.81', leavesOut: [] });
    expect(entry).toMatchObject({ standing: 'ACCEPTED', notices: [] });
    await bar.height('1.81', 'O');
    expect((await bar.read()).table).toMatchObject({
      vertical: { heights: ['1.75', '1.80', '1.81', '1.85'] },
      rows: [{ bib: '1', place: 1, mark: '1.81' }, { bib: '2' }],
    });
  });
});

describe('who is called at the bar', () => {
  it('is named in full to the crew, to everybody else as the meet shows names', async () => {
    const competitors = [{ bib: '7', name: 'Ferrin Ashgrove' }];
    const bar = await Bar.open(api, highJumpSheet(0, HEIGHTS, { competitors }));
    const query = `query ($id: ID!) { competition(id: $id) {
      progress { up { name } vertical { calls { name } } } table { rows { name } }
    } }`;
    const namesFor = async (token: string | null): Promise<string[]> => {
      const { competition } = await api.data(query, { id: bar.circle.competition.id }, token);
      const { progress, table } = competition;
      return [progress.up.name, progress.vertical.calls[0].name, table.rows[0].name];
    };
    expect(await namesFor(bar.circle.official)).toEqual(Array(3).fill('Ferrin Ashgrove'));
    expect(await namesFor(null)).toEqual(Array(3).fill('F. A.'));
  });
});

describe('a pole vault', () => {
  it('notes how each vaulter wants the uprights, and when the clock starts', async () => {
    const bar = await Bar.open(api, highJumpSheet(2, ['3.20', '3.40'], { event: 'pole-vault' }));
    const set = (bib: number, behindZeroCm: number): Promise<any> =>
      bar.enter('uprightsSet', { competitorId: bar.idOf(bib), behindZeroCm });
    expect((await set(1, 60)).entry).toMatchObject({ standing: 'ACCEPTED', notices: [] });
    // 0 to 80 cm behind the zero line (WA TR28, from memory); further is possible on some stands.
    expect((await set(2, 85)).entry).toMatchObject({ notices: ['UPRIGHTS_OUTSIDE_RULE'] });
    expect((await set(2, 201)).userErrors).toMatchObject([
      { code: 'UPRIGHTS_OUT_OF_RANGE', path: ['input', 'behindZeroCm'] },
    ]);
    expect((await bar.read()).progress.vertical).toMatchObject({
      behindZeroCm: 60,
      timeAllowed: { startsWhen: 'uprights set' },
    });
    await bar.jump(1, '3.20', 1, 'X', { foul: 'BAR' });
    await set(1, 45);
    const { vertical } = (await bar.read()).table.rows[0];
    expect(vertical.behindZeroCm).toBe(45);
    expect(vertical.heights[0].trials[0]).toMatchObject({ cell: 'X', behindZeroCm: 60 });
  });

  it('is measured in feet and inches where the sheet is, and in nothing else then', async () => {
    const bar = await Bar.open(
      api,
      highJumpSheet(1, ['10-06.00', '11-00.00'], { rules: 'NFHS', event: 'pole-vault' }),
    );
    expect((await bar.jump(1, '3.20', 1, 'O')).userErrors).toMatchObject([
      { code: 'MARK_UNIT', path: ['input', 'height'] },
    ]);
    expect((await bar.jump(1, '10-06.00', 1, 'O')).entry.standing).toBe('ACCEPTED');
    expect(await bar.rows()).toEqual(['1 1. 10-06.00 O .']);
  });

  it('keeps what happened out of the ordinary', async () => {
    const bar = await Bar.open(api, highJumpSheet(1, ['3.20'], { event: 'pole-vault' }));
    const { userErrors } = await bar.jump(1, '3.20', 1, 'X', { incident: 'WIND_AFTER_CLEARING' });
    expect(userErrors).toMatchObject([{ code: 'INCIDENT_NOT_OF_OUTCOME', path: ['input', 'incident'] }]);
    const { entry } = await bar.jump(1, '3.20', 1, 'X', { incident: 'POLE_BROKEN' });
    const again = { attemptId: entry.id, reason: 'the pole broke' };
    await bar.enter('attemptReplace', again, bar.circle.referee);
    await bar.jump(1, '3.20', 1, 'O');
    expect(await bar.rows()).toEqual(['1 1. 3.20 O']);
  });
});
