import { startApi, type TestApi } from '../support/api.js';
import { Circle } from '../support/at-the-circle.js';
import { attemptOf, discusSheet, enterInJournal, staffedMeet } from '../support/circle.js';
import { CombinedScene } from '../support/combined.js';
import { enter, makeMeet } from '../support/made-meet.js';

const READ = `query ($id: ID!) { competition(id: $id) {
  plan { rounds reorderAfter reorder cuts { after through } }
  startList { id bib } orders { round competitors } progress { phase up { bib competitor round } }
  table { rows { bib place isEqual mark status series { round cell } } }
} }`;

let api: TestApi;
beforeAll(async () => {
  api = await startApi();
});
afterAll(() => api.close());

/** What somebody does in a round, as a cell of a field card. */
type CellOf = (bib: number, round: number) => string;

/** A discus set up with this plan, of competitors 1, 2, …, in which whoever is called throws until nobody is. */
async function held(plan: object | null, field: number, cellOf: CellOf): Promise<any> {
  const meet = await makeMeet(api, {}, { plan });
  for (let bib = 1; bib <= field; bib++) await enter(api, meet, { bib: String(bib) });
  const { competitionId } = meet;
  const official = await api.token('official', competitionId);
  const read = async (): Promise<any> => (await api.data(READ, { id: competitionId }, official)).competition;
  for (;;) {
    const now = await read();
    const { up } = now.progress;
    if (!up) return now;
    const cell = attemptOf(cellOf(Number(up.bib), up.round));
    const input = { competitionId, competitorId: up.competitor, round: up.round, ...cell };
    const { entry, userErrors } = await enterInJournal(api, official, 'attemptRecord', input);
    if (entry?.standing !== 'ACCEPTED') throw new Error(JSON.stringify({ up, cell, entry, userErrors }));
  }
}

function trialsOf({ table }: any): number {
  return table.rows.flatMap(({ series }: any) => series).length;
}

/** By round, who is called in it: bibs in order. */
function ordersOf({ orders, startList }: any): string[] {
  const bibs = new Map(startList.map(({ id, bib }: any) => [id, bib]));
  return orders.map(({ competitors }: any) => competitors.map((id: string) => bibs.get(id)).join(' '));
}

const places = ({ table }: any): string[] =>
  table.rows.map(({ bib, place, mark, status }: any) => `${place ?? '-'} ${bib} ${mark ?? status}`);

/** The higher the bib the further: nobody changes places. */
const byBib: CellOf = (bib) => `${40 + bib}.00`;

describe('a plan that a meet sets', () => {
  // The throws and horizontal jumps of the 2025 world championships: 12 take three, 10 a fourth, 8 a fifth, 6 a sixth.
  it('takes a field of twelve down to ten, eight and six in sixty trials, in a new order each time', async () => {
    const cuts = [
      { after: 3, through: 10 },
      { after: 4, through: 8 },
      { after: 5, through: 6 },
    ];
    const ladder = await held({ cuts, reorderAfter: [3, 4, 5] }, 12, byBib);
    expect(trialsOf(ladder)).toBe(60);
    expect(ordersOf(ladder)).toEqual([
      '1 2 3 4 5 6 7 8 9 10 11 12',
      '1 2 3 4 5 6 7 8 9 10 11 12',
      '1 2 3 4 5 6 7 8 9 10 11 12',
      '3 4 5 6 7 8 9 10 11 12',
      '5 6 7 8 9 10 11 12',
      '7 8 9 10 11 12',
    ]);
    expect(places(ladder).slice(0, 2)).toEqual(['1 12 52.00', '2 11 51.00']);
  }, 60_000);

  it.each([3, 4, 6])(
    'gives everybody %i trials where there is no cut',
    async (rounds) => {
      const all = await held({ rounds, cuts: [], reorderAfter: [] }, 10, byBib);
      expect(trialsOf(all)).toBe(10 * rounds);
      expect(ordersOf(all)).toEqual(Array.from({ length: rounds }, () => '1 2 3 4 5 6 7 8 9 10'));
      expect(all.progress.phase).toBe('complete');
    },
    60_000,
  );

  it('keeps the rule set’s cut and new order with four rounds, and drops them with three', async () => {
    const four = await held({ rounds: 4 }, 9, byBib);
    expect(four.plan).toMatchObject({ cuts: [{ after: 3, through: 8 }], reorderAfter: [3] });
    expect(ordersOf(four)[3]).toBe('2 3 4 5 6 7 8 9');
    expect((await held({ rounds: 3 }, 9, byBib)).plan).toMatchObject({ cuts: [], reorderAfter: [] });
  }, 60_000);
});

/** Bib 2 leads with 50.00, then 1 with 45.00 and 3 with 40.00; 4 and 5 have no mark. */
const mixed: CellOf = (bib) => ['45.00', '50.00', '40.00'][bib - 1] ?? 'X';

describe('a new order', () => {
  it('reversed has those without a mark first, then the worst, the leader last', async () => {
    const reversed = await held({ cuts: [], reorderAfter: [1], rounds: 2, reorder: 'REVERSE' }, 5, mixed);
    expect(ordersOf(reversed)).toEqual(['1 2 3 4 5', '4 5 3 1 2']);
  });

  it('with the leaders first has those without a mark last', async () => {
    const leaders = await held(
      { cuts: [], reorderAfter: [1], rounds: 2, reorder: 'LEADERS_FIRST' },
      5,
      mixed,
    );
    expect(ordersOf(leaders)).toEqual(['1 2 3 4 5', '2 1 3 4 5']);
  });

  it('can be made after several rounds, whichever is named first', async () => {
    const rising: CellOf = (bib, round) => (bib === 1 && round === 2 ? '60.00' : byBib(bib, round));
    const named = { rounds: 4, cuts: [] };
    const [one, other] = [
      await held({ ...named, reorderAfter: [1, 3] }, 3, rising),
      await held({ ...named, reorderAfter: [3, 1] }, 3, rising),
    ];
    expect(ordersOf(one)).toEqual(['1 2 3', '1 2 3', '1 2 3', '2 3 1']);
    expect(ordersOf(other)).toEqual(ordersOf(one));
    expect(other.plan.reorderAfter).toEqual([3, 1]);
    expect(places(other)).toEqual(places(one));
  });
});

describe('a mark below the line from which a meet measures', () => {
  it('is a valid trial that was not measured, and ranks behind every measured mark, all level', async () => {
    const unmeasured: CellOf = (bib) => ['O', '12.00', 'X', 'O', '30.00'][bib - 1]!;
    const ranked = await held({ rounds: 3, cuts: [] }, 5, unmeasured);
    expect(places(ranked)).toEqual(['1 5 30.00', '2 2 12.00', '3 1 O', '3 4 O', '- 3 NM']);
  });

  it('takes through a cut where measured marks do not fill it', async () => {
    const cells: CellOf = (bib) => ['O', '12.00', 'X', 'X', 'X'][bib - 1]!;
    const cut = await held({ rounds: 2, cuts: [{ after: 1, through: 3 }], reorderAfter: [] }, 5, cells);
    expect(ordersOf(cut)).toEqual(['1 2 3 4 5', '1 2']);
  });
});

describe('a change of order over the API', () => {
  it('is taken in the last round of a combined event, as long as the competition is part of one', async () => {
    const meet = await staffedMeet(api);
    const shot = await Circle.open(
      api,
      discusSheet(2, { event: 'shot', plan: { rounds: 1, cuts: [] } }),
      meet,
    );
    const heptathlon = await CombinedScene.open(api, meet, ['1']);
    const order = (): Promise<any> =>
      shot.enter('roundOrderSet', { round: 1, competitorIds: [shot.competitorOf(2)], reason: 'high jump' });
    expect((await order()).userErrors).toMatchObject([{ code: 'LAST_ROUND_ORDER' }]);
    await heptathlon.link('SHOT', shot.competition.id);
    expect((await order()).entry.standing).toBe('ACCEPTED');
    expect((await shot.read()).progress.up.bib).toBe('2');
    await heptathlon.link('SHOT', null);
    expect((await order()).userErrors).toMatchObject([{ code: 'LAST_ROUND_ORDER' }]);
  });

  it('is refused in the last round with the rule and the remedy, and taken before it', async () => {
    const meet = await makeMeet(api, {}, { plan: { rounds: 2, cuts: [], reorderAfter: [] } });
    const ids: string[] = [];
    for (const bib of ['1', '2']) ids.push((await enter(api, meet, { bib })).competitor.id);
    const { competitionId } = meet;
    const official = await api.token('official', competitionId);
    const order = (round: number): Promise<any> => {
      const input = { competitionId, round, competitorIds: [ids[1]], reason: 'also in the 400 m' };
      return enterInJournal(api, official, 'roundOrderSet', input);
    };
    expect((await order(1)).entry.standing).toBe('ACCEPTED');
    const { entry, userErrors } = await order(2);
    expect([entry, userErrors]).toMatchObject([
      null,
      [{ code: 'LAST_ROUND_ORDER', path: ['input', 'round'], rule: 'WA TR4.3' }],
    ]);
    expect(userErrors[0].remedy).toContain('record a pass');
    // Two rounds are taken, the second as it was called: what is told afterwards waits for the referee.
    for (const [round, competitorId] of [
      [1, ids[1]],
      [1, ids[0]],
      [2, ids[1]],
    ] as const) {
      const input = { competitionId, competitorId, round, ...attemptOf('40.00') };
      await enterInJournal(api, official, 'attemptRecord', input);
    }
    expect((await order(2)).entry).toMatchObject({
      standing: 'HELD',
      hold: { code: 'LAST_ROUND_REORDERED', rule: 'WA TR4.3' },
    });
  });
});
