import { en } from '../../apps/web/labels/en.js';
import { Circle } from '../support/at-the-circle.js';
import { discusSheet } from '../support/circle.js';
import { openField, type Field } from './support/field.js';
import { written } from './support/journal.js';
import { ThumbOfficial } from './support/official.js';
import { Tablet } from './support/tablet.js';

const LINK = `mutation ($input: DeviceLinkCreateInput!) {
  deviceLinkCreate(input: $input) { link { url } userErrors { code message } }
}`;

describe('what is put right at the desk', () => {
  let field: Field;
  let tablet: Tablet;
  beforeAll(async () => {
    field = await openField();
  });
  afterAll(() => field.close());
  beforeEach(async () => {
    tablet = await Tablet.open();
  });
  afterEach(() => tablet.discard());

  it('is an entry of its own: taken back, corrected, moved to its line', async () => {
    const circle = await Circle.open(field.api, discusSheet(3));
    const official = new ThumbOfficial(await tablet.page(field.deskFor(circle.official)));
    const { page } = official;
    await official.enter('1', '40.00');
    await page.locator('.said .button').click();
    await official.enter('1', '41.00');

    await official.see('standing');
    await page.locator('.row[data-bib="1"] button.cell').first().click();
    await page.locator('.dialog input[value="correct"]').check();
    for (const digit of '4150')
      await page.locator('.dialog').getByRole('button', { name: digit, exact: true }).click();
    await page.locator('.dialog input[value="misheard"]').check();
    await page.locator('.dialog .button.main').click();
    await page.locator('.dialog').waitFor({ state: 'detached' });

    await page.locator('.row[data-bib="1"] button.cell').first().click();
    await page.locator('.dialog input[value="wrongLine"]').check();
    await page.locator('.dialog .chip', { hasText: '3' }).first().click();
    await page.locator('.dialog .button.main').click();
    await page.locator('.dialog').waitFor({ state: 'detached' });
    await official.isSent();
    expect((await written(circle)).map(({ kind, standing, mark }) => ({ kind, standing, mark }))).toEqual([
      { kind: 'attempt', standing: 'accepted', mark: 4000 },
      { kind: 'reversal', standing: 'accepted', mark: undefined },
      { kind: 'attempt', standing: 'accepted', mark: 4100 },
      { kind: 'correction', standing: 'accepted', mark: 4150 },
      { kind: 'move', standing: 'accepted', mark: undefined },
    ]);
    expect(await circle.seriesOf(3)).toEqual(['41.50']);
    expect(await circle.seriesOf(1)).toEqual([]);
  });

  it('is decided anew when somebody else has changed something in between', async () => {
    const circle = await Circle.open(field.api, discusSheet(3));
    const official = new ThumbOfficial(await tablet.page(field.deskFor(circle.official)));
    const { page } = official;
    await official.enter('1', '40.00');
    await official.isSent();
    await field.network.shut();
    await circle.record(3, 1, '45.00', {}, circle.referee);
    await official.see('standing');
    await page.locator('.row[data-bib="1"] button.cell').first().click();
    await page.locator('.dialog input[value="correct"]').check();
    await page.locator('.dialog input[value="foul"]').check();
    await page.locator('.dialog input[value="judges"]').check();
    await page.locator('.dialog .button.main').click();
    await field.network.open();
    await official.see('more');
    await page.getByText(en['returned.conflict']).waitFor();
    await official.button(en['returned.again']).click();
    // "Sent" still stands there from before, until the device has taken the correction up again.
    await page.getByText(en['returned.conflict']).waitFor({ state: 'detached' });
    for (let looks = 0; looks < 200 && (await written(circle)).length < 3; looks++) {
      await page.waitForTimeout(100);
    }
    const journal = await written(circle);
    expect(journal.map(({ kind, standing }) => `${kind} ${standing}`)).toEqual([
      'attempt accepted',
      'attempt accepted',
      'correction held',
    ]);
  });

  it('goes on without a network with somebody who is on no list', async () => {
    const circle = await Circle.open(field.api, discusSheet(2));
    const official = new ThumbOfficial(await tablet.page(field.deskFor(circle.official)));
    const { page } = official;
    await page.locator('.up').waitFor();
    await field.network.shut();
    const inDialog = page.locator('.dialog');
    await official.see('more');
    await official.button(en['late.add']).click();
    await page.getByLabel(en['list.bib']).fill('77');
    await page.getByLabel(en['late.name']).fill('Runa Askvold');
    await inDialog.locator('button[type=submit]').click();
    await page.locator('.starters .button', { hasText: 'Runa Askvold' }).waitFor();

    const change = async (bib: string, way: string) => {
      await page.locator('.starters .button', { has: page.locator(`.bib:text-is("${bib}")`) }).click();
      await inDialog.locator(`input[value="${way}"]`).check();
    };
    await change('1', 'bib');
    await page.getByLabel(en['list.bib']).last().fill('2');
    await inDialog.locator('.button.main').click();
    await change('1', 'away');
    await page.getByLabel(en['away.where']).fill('Long jump');
    await inDialog.locator('.button.main').click();
    await official.button(en['note.write']).click();
    await inDialog.locator('input[value="near-miss"]').check();
    await inDialog.locator('textarea').fill('discus over the net, nobody hit');
    await inDialog.locator('.button.main').click();

    await official.see('entry');
    // Who wore 1 wears 2 and is up; who is away is called last, after the one who was added.
    await official.enter('2', '40.00');
    await official.enter('77', 'X SECTOR');
    await official.see('more');
    await official.button(en['card.sign']).click();
    await field.network.open();
    await official.isSent();
    expect((await circle.journal()).map(({ kind, standing }) => `${kind} ${standing}`)).toEqual(
      ['late-entry', 'bibs', 'excuse', 'note', 'attempt', 'attempt', 'card-signed'].map(
        (kind) => `${kind} accepted`,
      ),
    );
    expect(await circle.places()).toEqual(['2 1. 40.00', '1 -', '77 -']);
    expect((await circle.read()).progress.up).toMatchObject({ bib: '1', round: 1 });
  });

  it('has its winds from a second device that enters nothing else', async () => {
    const jump = { event: 'long-jump', competitors: [{ bib: '1' }, { bib: '2' }] };
    const circle = await Circle.open(field.api, discusSheet(2, jump));
    const official = new ThumbOfficial(await tablet.page(field.deskFor(circle.official)));
    await official.enter('1', '6.48');
    await official.enter('2', 'X');
    await official.isSent();
    const gauge = await Tablet.open();
    try {
      const until = new Date(Date.now() + 3_600_000).toISOString();
      const input = { on: circle.competition.id, label: 'Gauge', until, isWindsOnly: true };
      const { deviceLinkCreate } = await field.api.data(LINK, { input }, circle.referee);
      const [desk] = field.deskFor('').split('#');
      const other = new ThumbOfficial(await gauge.page(`${desk}#${deviceLinkCreate.link.url.split('#')[1]}`));
      await other.button(en['key.sign']).click();
      for (const digit of '04') await other.button(digit).click();
      await other.button(en.record).click();
      await other.page.getByText(en['wind.allThere']).waitFor();
      await other.isSent();
      await official.see('standing');
      await official.page.locator('.row[data-bib="1"]').getByText('−0.4').waitFor();
    } finally {
      await gauge.discard();
    }
  });
});
