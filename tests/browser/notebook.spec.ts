import type { Page } from 'playwright-core';
import { en as common } from '../../apps/web/labels/en.js';
import { en } from '../../apps/web/labels/notebook/en.js';
import { coachedSquad, type CoachedSquad } from './support/coached-squad.js';
import { openField, type Field } from './support/field.js';
import { axeFindings, broadFindings, htmlFindings } from './support/audit.js';
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

  const go = (hash: string) => page.evaluate((to) => void (location.hash = to), hash);

  it('says what goes with shorter marks, and of what nobody can say it yet how many throws are missing', async () => {
    await go(`#/athlete/${squad.grown}`);
    const points = page.locator('.finding[data-known]');
    await points.first().waitFor();
    const known = page.locator('.finding[data-known="yes"]');
    expect(await known.locator('h4').allTextContents()).toEqual(['Free-arm-side foot late to the ground']);
    expect(await known.textContent()).toMatch(
      /goes with marks about 3\.\d % shorter.*interval.*4 series, 12/,
    );
    const unknown = page.locator('.finding[data-known="no"]');
    expect(await unknown.count()).toBe(2);
    for (const text of await unknown.allTextContents())
      expect(text).toMatch(/Not yet known\..*Throws still missing: about \d+/);
    // A number opens: the attempts behind it.
    await known.locator('.opens button').click();
    expect(await page.locator('.attempts li').count()).toBe(24);
    await button(common.close).click();
    await page.locator('.attempts').waitFor({ state: 'detached' });
    const words = await page.locator('main').textContent();
    expect(words).not.toMatch(/\b(causes?|costs?|because of|leads? to)\b/i);
  });

  it('compares no child with anybody, and forecasts nothing', async () => {
    await go(`#/athlete/${squad.child}`);
    await page.locator('.athlete .notice.done').waitFor();
    const words = await page.locator('main').textContent();
    expect(words).toContain(en['own.justThrow']);
    expect(words).not.toMatch(/percentile|trend|shorter|longer|chance|squad’s/i);
  });

  it('is for everybody: every screen, narrow and wide, light and dark', async () => {
    const findings: string[] = [];
    const screens = {
      squad: ['#/squad', '.card'],
      practice: ['#/practice', '.who-throws'],
      athlete: [`#/athlete/${squad.grown}`, '.finding'],
      review: [`#/review/${squad.grown}`, '.outcome'],
      own: [`#/own/${squad.child}`, '.consents'],
    } as const;
    for (const [name, [hash, there]] of Object.entries(screens)) {
      await go(hash);
      await page.locator(there).first().waitFor();
      if (name === 'practice') await button('Ada Quillon').click();
      await page.locator('details').evaluateAll((all) => all.forEach((one) => one.setAttribute('open', '')));
      for (const [width, colorScheme] of [
        [320, 'light'],
        [390, 'dark'],
        [1280, 'light'],
      ] as const) {
        await page.setViewportSize({ width, height: 844 });
        await page.emulateMedia({ colorScheme });
        const all = [...(await axeFindings(page)), ...(await broadFindings(page))];
        findings.push(...all.map((finding) => `${name}, ${width}, ${colorScheme}: ${finding}`));
      }
      findings.push(...(await htmlFindings(page, 'notebook')).map((finding) => `${name}: ${finding}`));
    }
    expect(findings).toEqual([]);
  });
});
