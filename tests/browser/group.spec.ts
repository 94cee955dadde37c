import { Circle } from '../support/at-the-circle.js';
import { discusSheet } from '../support/circle.js';
import { openField, type Field } from './support/field.js';
import { ThumbOfficial } from './support/official.js';
import { Tablet } from './support/tablet.js';

const UP = `query ($id: ID!) { callingGroup(id: $id) { progress { up { bib competition round } } } }`;

describe('two competitions that are called in one order', () => {
  let field: Field;
  let tablet: Tablet;
  beforeAll(async () => {
    field = await openField();
    tablet = await Tablet.open();
  });
  afterAll(async () => {
    await tablet.discard();
    await field.close();
  });

  it('are entered at one desk, each in its own journal, in the order in which the server calls', async () => {
    const { api } = field;
    const competitors = (first: number) => [0, 1].map((at) => ({ bib: String(first + at) }));
    const plan = { rounds: 3, cuts: [], reorderAfter: [] };
    const older = await Circle.open(api, discusSheet(2, { competitors: competitors(1), plan }));
    const younger = await Circle.open(
      api,
      discusSheet(2, { competitors: competitors(11), plan }),
      older.meet,
    );
    const made = await api.data(
      `mutation ($input: CallingGroupCreateInput!) {
         callingGroupCreate(input: $input) { callingGroup { id } userErrors { code message } }
       }`,
      {
        input: {
          meetId: older.meet.id,
          title: 'Discus together',
          competitionIds: [older.competition.id, younger.competition.id],
        },
      },
      older.director,
    );
    const { id } = made.callingGroupCreate.callingGroup;
    const page = await tablet.page(field.deskFor(await api.token('official', id)));
    const official = new ThumbOfficial(page);
    await page.locator('.up .up-who .bib', { hasText: /^1$/ }).waitFor();
    // The order is set anew while the tablet is out: it reads it again.
    const { callingGroup } = await api.data(
      `query ($id: ID!) { callingGroup(id: $id) { version } }`,
      { id },
      older.director,
    );
    const competitorIds = [
      ...[younger.competitorOf(11), older.competitorOf(1)],
      ...[younger.competitorOf(12), older.competitorOf(2)],
    ];
    const set = { callingGroupId: id, expectedVersion: callingGroup.version, competitorIds };
    const { callingOrderSet } = await api.data(
      `mutation ($input: CallingOrderSetInput!) { callingOrderSet(input: $input) { userErrors { code message } } }`,
      { input: set },
      older.director,
    );
    expect(callingOrderSet.userErrors).toEqual([]);
    await page.reload();
    await page.locator('.up .up-who .bib', { hasText: /^11$/ }).waitFor();
    const order: string[] = [];
    for (;;) {
      const { up } = (await api.data(UP, { id }, older.director)).callingGroup.progress;
      if (!up) break;
      order.push(up.bib);
      await official.enter(up.bib, `4${up.round}.${up.bib.padStart(2, '0')}`);
      await official.isSent();
    }
    expect(order).toHaveLength(12);
    expect(await older.seriesOf(2)).toEqual(['41.02', '42.02', '43.02']);
    expect(await younger.seriesOf(11)).toEqual(['41.11', '42.11', '43.11']);
    expect(await page.locator('.nobody').count()).toBe(1);
  });
});
