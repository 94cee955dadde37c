import type { Page } from 'playwright-core';
import { en as common } from '../../apps/web/labels/en.js';
import { en } from '../../apps/web/labels/notebook/en.js';
import { coachedSquad, type CoachedSquad } from './support/coached-squad.js';
import { openField, type Field } from './support/field.js';
import { Tablet } from './support/tablet.js';

const PRACTICE = `query ($id: ID!) { notebookAthlete(athleteId: $id) {
  practiceThrows { mark outcome isMeasured effortPercent }
  observations { scope marks { code severity } markKnown }
} }`;

describe('the notebook', () => {
  let field: Field;
  let phone: Tablet;
  let squad: CoachedSquad;
  let page: Page;
  beforeAll(async () => {
    field = await openField();
    squad = await coachedSquad(field.api);
    phone = await Tablet.open();
    page = await phone.page(field.pageFor('/notebook', squad.coach));
  });
  afterAll(async () => {
    await phone.discard();
    await field.close();
  });

  const button = (name: string) => page.getByRole('button', { name, exact: true });

  it('shows who is due for a look, by name and not by faults', async () => {
    await page.locator('.squad .choice').waitFor();
    const cards = await page.locator('.card').allTextContents();
    expect(cards.map((text) => text.slice(0, 4))).toEqual(['Wren', 'Ada ']);
    expect(cards.find((text) => text.includes('Wren'))).toContain('Not assessed');
  });

  it('takes a throw in four taps with no network, keeps it when the battery dies, and sends it', async () => {
    await page.getByRole('link', { name: en['section.practice'], exact: true }).click();
    // What is thrown is said once and kept.
    await button('Wren Ashdown').click();
    await page.getByLabel(en['thrown.grams']).fill('600');
    await page.getByLabel(en['thrown.grams']).blur();
    await page.evaluate(() => navigator.serviceWorker.ready);
    await field.network.shut();
    await page.reload();
    await page.locator('.sections').waitFor();
    const taps = [
      () => button('Wren Ashdown').click(),
      () => page.locator('.point').first().locator('.answer[data-answer="2"]').click(),
      () => button(en['practice.nextRest']).click(),
    ];
    for (const tap of taps) await tap();
    expect(taps.length).toBeLessThanOrEqual(4);
    await page.locator('.kept', { hasText: 'Throw 1' }).waitFor();
    await page.locator('[data-saved="waiting"]', { hasText: '2 saved here' }).waitFor();
    await phone.kill();
    await phone.start();
    page = await phone.page(field.pageFor('/notebook', '').split('#')[0]!);
    await page.locator('[data-saved="waiting"]').waitFor();
    await field.network.open();
    await page.locator('[data-saved="sent"]').waitFor();
    const { notebookAthlete } = await field.api.data(PRACTICE, { id: squad.child }, squad.coach);
    expect(notebookAthlete).toEqual({
      practiceThrows: [{ mark: null, outcome: 'VALID', isMeasured: false, effortPercent: null }],
      observations: [
        { scope: ['DT-04', 'DT-14', 'DT-25'], marks: [{ code: 'DT-04', severity: 2 }], markKnown: false },
      ],
    });
    expect(await page.getByText(common['saved.allSent']).count()).toBe(1);
  });
});
