import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Page } from 'playwright-core';
import { makeMeet, type MadeMeet } from '../support/made-meet.js';
import { openField, type Field } from './support/field.js';
import { Tablet } from './support/tablet.js';

const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

let field: Field;
let laptop: Tablet;
beforeAll(async () => {
  field = await openField();
  laptop = await Tablet.open();
});
afterAll(async () => {
  await laptop.discard();
  await field.close();
});

/* WCAG 2.2 A and AA as axe-core checks them. */
async function axeFindings(page: Page): Promise<string[]> {
  await page.evaluate(AXE);
  return page.evaluate(async () => {
    const { axe } = globalThis as any;
    const { violations } = await axe.run(document, { resultTypes: ['violations'] });
    return violations.map(({ id, nodes }: any) => `${id}: ${nodes[0].html}`);
  });
}

async function shot(page: Page, name: string): Promise<void> {
  const folder = process.env['SCREENSHOTS'];
  if (folder) await page.screenshot({ path: `${folder}/${name}.png`, fullPage: true });
}

async function listOf({ competitionId, director }: MadeMeet): Promise<string[]> {
  const { competition } = await field.api.data(
    'query ($id: ID!) { competition(id: $id) { callList { name } } }',
    { id: competitionId },
    director,
  );
  return competition.callList.map(({ name }: any) => name);
}

const TABLE = [
  'competition;family_name;given_name;sex;born;club;seed_mark',
  'Discus women;Quill;Maud;W;1999-02-11;Heron Lane;41.20',
  'Discus women;Quil;Maud;W;1999-02-11;Heron Lane;40.00',
  'Hammer women;Ferrow;Ada;W;2001-05-14;;',
].join('\n');

describe('the entries of the office', () => {
  it('look at a table, ask who is whom, store it whole, and put the list into another order by keys', async () => {
    const meet = await makeMeet(field.api);
    const page = await laptop.page(`${field.api.url}/office#token=${meet.director}`, {
      width: 1100,
      height: 900,
    });
    await page.getByRole('link', { name: 'Entries' }).click();
    const table = page.getByLabel('Or paste the table here');
    await table.fill(TABLE);
    await page.getByRole('button', { name: 'Look at the table' }).click();
    await page.getByRole('cell', { name: 'The meet has no such competition.' }).waitFor();
    await shot(page, 'problems');
    expect(await axeFindings(page)).toEqual([]);
    await table.fill(TABLE.replace('Hammer', 'Discus'));
    await page.getByRole('button', { name: 'Look at the table' }).click();
    const store = page.getByRole('button', { name: 'Store all 3 lines' });
    await store.waitFor();
    expect(await store.isDisabled()).toBe(true);
    await shot(page, 'questions');
    expect(await axeFindings(page)).toEqual([]);
    // The radio lies under its label, as it does for a finger.
    await page.getByText('A new club').click();
    await page.getByText('Somebody new').click();
    await store.click();
    await page.getByText('3 lines are stored.').waitFor();
    expect(await listOf(meet)).toEqual(['Maud Quill', 'Maud Quil', 'Ada Ferrow']);
    await page.getByText('Start lists and tables').click();
    await page.getByRole('combobox', { name: 'Competition' }).selectOption({ label: 'Discus women' });
    const up = page.getByRole('button', { name: 'Ada Ferrow: earlier' });
    await up.focus();
    await page.keyboard.press('Enter');
    await page.keyboard.press('Enter');
    await page.getByLabel('Flight of Ada Ferrow').fill('A');
    await page.keyboard.press('Tab');
    await shot(page, 'order');
    expect(await axeFindings(page)).toEqual([]);
    await page.getByRole('button', { name: 'Save this order' }).click();
    await page.getByText('The order is saved.').waitFor();
    expect(await listOf(meet)).toEqual(['Ada Ferrow', 'Maud Quill', 'Maud Quil']);
    await page.getByText('All entries as CSV').waitFor();
    await page.setViewportSize({ width: 390, height: 844 });
    await shot(page, 'phone');
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
  });
});
