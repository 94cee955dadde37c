import { randomUUID } from 'node:crypto';
import type { Page } from 'playwright-core';
import { en as shared } from '../../apps/web/labels/en.js';
import { en as account } from '../../apps/web/labels/account/en.js';
import { en } from '../../apps/web/labels/office/en.js';
import { call } from '../support/accounts.js';
import { Circle } from '../support/at-the-circle.js';
import { discusSheet } from '../support/circle.js';
import { axeFindings, broadFindings, htmlFindings } from './support/audit.js';
import { openField, type Field } from './support/field.js';
import { Tablet } from './support/tablet.js';

const WIDTHS = [320, 390, 1280];

const button = (page: Page, name: string) => page.getByRole('button', { name, exact: true });
const said = (page: Page, kind: string) => page.locator(`.said-line .notice.${kind}`);

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

/** Three rounds by three throwers, a second trial of the first in round 1, and a failure measured under protest. */
async function disputed(): Promise<Circle> {
  const plan = { rounds: 3, cuts: [], reorderAfter: [] };
  const circle = await Circle.open(field.api, discusSheet(3, { plan }));
  await circle.recordCard(['50.00', '50.10'], ['51.00', '51.10', '51.20'], ['49.00', '49.10', '49.20']);
  await circle.record(1, 1, '53.00');
  await circle.record(1, 3, 'X', { protestedMark: '52.00' });
  return circle;
}

/** Fills what is in sight, by label. */
async function fill(page: Page, fields: Readonly<Record<string, string>>): Promise<void> {
  for (const [label, text] of Object.entries(fields))
    await page.getByLabel(label, { exact: true }).locator('visible=true').first().fill(text);
}

async function open(page: Page, section: string): Promise<void> {
  await page.locator(`.sections a[href="#/${section}"]`).click();
}

describe('the office', () => {
  it('takes a referee from a held entry and a protest to the second signature', async () => {
    const circle = await disputed();
    const two = { meetId: circle.meet.id, needsSecondPerson: true };
    await call(field.api, 'meetSecondPersonSet', two, 'userErrors { code }', circle.director);
    const page = await tablet.page(field.officeFor(circle.referee));

    // What each answer would change stands beside it; the held trial does not count.
    await open(page, 'questions');
    const held = page.locator('.card', { hasText: en['about.held'] });
    await held.locator('.effects li', { hasText: '53.00' }).waitFor();
    await fill(held as unknown as Page, { [shared['question.why']]: 'written twice' });
    await held.getByRole('button', { name: shared['question.dismiss'] }).click();
    await said(page, 'done').waitFor();

    // A protest about the measured failure: both standings are in sight until it is decided.
    await open(page, 'meet');
    await page.locator('.card h3 a').click();
    await page.getByRole('region', { name: en['standing.ifUpheld'] }).waitFor();
    await page.getByText(en['lodge.title']).click();
    await fill(page, { [en['lodge.by']]: 'team manager', [en['lodge.why']]: 'the foot was inside' });
    await page.getByRole('combobox', { name: en['lodge.for'] }).selectOption(circle.competitorOf(1));
    await page.getByRole('combobox', { name: en['lodge.trial'] }).selectOption({ index: 3 });
    await button(page, en['lodge.go']).click();
    await page.locator('.state', { hasText: en['protest.LODGED'] }).waitFor();
    await page.getByLabel(en['way.UPHELD']).check();
    await fill(page, { [en['decide.by']]: 'referee of throws', [en.reason]: 'the photograph' });
    await button(page, en['way.UPHELD']).click();
    await page.locator('.state', { hasText: en['protest.UPHELD'] }).waitFor();
    expect(await circle.places()).toEqual(['1 1. 52.00', '2 2. 51.20', '3 3. 49.20']);

    // Posted; the chief judge signs at the desk of the office, and the referee before the time for protests is over.
    await button(page, en['signing.post']).click();
    await page.locator('.state.posted').waitFor();
    const judge = await tablet.page(field.officeFor(circle.official));
    await judge.locator('.card h3 a').click();
    await button(judge, en['signing.sign']).click();
    await said(judge, 'done').waitFor();
    await page.getByText(en['signing.despite']).waitFor();
    expect(await button(page, en['signing.confirm']).isDisabled()).toBe(true);
    await fill(page, { [en['signing.despite']]: 'all clubs have agreed' });
    await button(page, en['signing.confirm']).click();
    await page.locator('.state.official').waitFor();
    expect((await circle.journal()).at(-1)).toMatchObject({
      ...{ kind: 'sign-off', authority: 'referee', device: 'test referee' },
      body: { despite: 'all clubs have agreed' },
    });

    // All of it is found again: who, what it was, why.
    await open(page, 'trail');
    await fill(page, { [en['trail.text']]: 'photograph' });
    await button(page, en['trail.search']).click();
    await page.locator('.trail li').nth(2).waitFor({ state: 'detached' });
    await page.locator('.trail li', { hasText: en['kind.protest-decision'] }).waitFor();
    expect(await page.locator('.trail li').count()).toBe(2);
    for (const one of [page, judge]) await one.close();
  });

  it('says who was added at the circle, with an athlete on record', async () => {
    const circle = await Circle.open(field.api, discusSheet(2));
    const runa = { givenName: 'Runa', familyName: 'Askvold', sex: 'W', birthDate: '2008-02-03' };
    await call(field.api, 'athleteCreate', runa, 'userErrors { code }', circle.director);
    const added = { entryId: randomUUID(), bib: '9', listedName: 'R. Askvold', listedClub: 'Tarn Valley' };
    await circle.enter('competitorAdd', added);
    const page = await tablet.page(field.officeFor(circle.director));
    await page.locator('.card h3 a').click();
    await fill(page, { [en['who.search']]: 'askv' });
    await page.getByRole('combobox', { name: en['who.athlete'] }).selectOption({ label: 'Askvold, Runa' });
    await button(page, en['who.match']).click();
    await page.getByText(en['who.title']).waitFor({ state: 'detached' });
    expect((await circle.journal()).at(-1)).toMatchObject({ kind: 'match', authority: 'director' });
    await page.locator('td, th', { hasText: 'Runa Askvold' }).first().waitFor();
    await page.close();
  });

  it('says honestly that nothing can be decided without a network', async () => {
    const circle = await disputed();
    const page = await tablet.page(field.officeFor(circle.referee));
    await open(page, 'questions');
    const held = page.locator('.card', { hasText: en['about.held'] });
    await fill(held as unknown as Page, { [shared['question.why']]: 'written twice' });
    await field.network.shut();
    try {
      await held.getByRole('button', { name: shared['question.dismiss'] }).click();
      await said(page, 'refused').waitFor();
      await page.locator('[data-link="offline"]').waitFor();
      expect((await circle.read()).questions).toHaveLength(2);
    } finally {
      await field.network.open();
    }
    await page.close();
  });

  it.each(['light', 'dark'] as const)(
    'is for everybody: every screen in %s, at three widths',
    async (scheme) => {
      const circle = await disputed();
      const lodged = {
        ...{ competitionId: circle.competition.id, entryId: randomUUID(), form: 'ORAL', ground: 'RULES' },
        ...{ lodgedBy: 'coach', reason: 'called too late', deposit: '50' },
      };
      await call(field.api, 'protestLodge', lodged, 'userErrors { code }', circle.referee);
      const page = await tablet.page(field.officeFor(circle.director));
      await page.emulateMedia({ colorScheme: scheme });
      const findings: string[] = [];
      const look = async (name: string) => {
        findings.push(...(await htmlFindings(page, 'office')).map((one) => `${name}: ${one}`));
        for (const width of WIDTHS) {
          await page.setViewportSize({ width, height: 844 });
          const found = [...(await axeFindings(page)), ...(await broadFindings(page))];
          findings.push(...found.map((one) => `${name}, ${width}: ${one}`));
        }
      };
      await page.locator('.card .notice.held').waitFor();
      await look('meet');
      await page.locator('.card h3 a').click();
      await page.getByLabel(en['way.UPHELD']).check();
      for (const summary of await page.locator('.competition-screen summary').all()) await summary.click();
      await look('competition');
      await page.locator('button.trial').first().click();
      await page.locator('.dialog .chip').first().click();
      await look('a trial to be put right');
      await page.keyboard.press('Escape');
      for (const [section, sight] of [
        ['questions', '.effects'],
        ['protests', '.card'],
        ['times', 'h2'],
        ['trail', '.trail li'],
      ]) {
        await open(page, section!);
        await page.locator(`.office-main ${sight}`).first().waitFor();
        await look(section!);
      }
      await button(page, account.signOut).click();
      await page.locator('.sign-in').waitFor();
      await look('signed out');
      expect(findings).toEqual([]);
      await page.close();
    },
  );
});
