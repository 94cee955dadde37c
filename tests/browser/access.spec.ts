import type { Page } from 'playwright-core';
import { en } from '../../apps/web/labels/en.js';
import { highJumpSheet } from '../support/at-the-bar.js';
import { Circle } from '../support/at-the-circle.js';
import { discusSheet } from '../support/circle.js';
import { axeFindings, findingsOf, htmlFindings } from './support/audit.js';
import { openField, type Field } from './support/field.js';
import { Tablet } from './support/tablet.js';

/** As people see it: by day and by night, on a small telephone and a tablet, and in the colours of their own. */
const LOOKS = [
  { look: 'light', width: 320, media: { colorScheme: 'light' } },
  { look: 'light', width: 1024, media: { colorScheme: 'light' } },
  { look: 'dark', width: 390, media: { colorScheme: 'dark' } },
  { look: 'forced colours', width: 390, media: { forcedColors: 'active' } },
] as const;

/** What a page does on its way to a screen. */
type Way = (page: Page) => Promise<unknown>;

const button = (page: Page, name: string) => page.getByRole('button', { name, exact: true });

const AT_THE_CIRCLE: Readonly<Record<string, Way>> = {
  entry: (page) => page.locator('.pad').waitFor(),
  'a mark far outside, read back': async (page) => {
    for (const digit of '9862') await button(page, digit).click();
    await button(page, en.readBack).click();
    await page.locator('.notice.warning').waitFor();
  },
  'a failure, read back': async (page) => {
    await page.locator('.outcomes .button').first().click();
    await page.locator('.read-back').waitFor();
  },
  'somebody else': (page) => button(page, en['call.other']).click(),
  'a stop': async (page) => {
    await button(page, en.stop).click();
    await page.locator('.dialog .chip').first().click();
  },
  'the clock': async (page) => {
    await page.locator('.clock .button').click();
    await page.locator('.clock-time').waitFor();
  },
  standing: (page) => page.locator('.tab.to-standing').evaluate((tab: HTMLElement) => tab.click()),
  'a trial to be corrected': async (page) => {
    await page
      .locator('button.cell')
      .first()
      .evaluate((cell: HTMLElement) => cell.click());
    await page.locator('.dialog .chip').first().click();
  },
  'a trial on a wrong line': async (page) => {
    await page
      .locator('button.cell')
      .first()
      .evaluate((cell: HTMLElement) => cell.click());
    await page.locator('.dialog .chip').nth(1).click();
  },
  more: (page) => page.locator('.tab.to-more').click(),
  'a failure under protest': async (page) => {
    await page.locator('.outcomes .button').first().click();
    await page.locator('.read-back .switch input').check();
  },
  'somebody who is not listed': async (page) => {
    await page.locator('.tab.to-more').click();
    await button(page, en['late.add']).click();
  },
  'one competitor, away': async (page) => {
    await page.locator('.tab.to-more').click();
    await page.locator('.starters .button').first().click();
    await page.locator('.dialog input[value="away"]').check();
  },
  'a note': async (page) => {
    await page.locator('.tab.to-more').click();
    await button(page, en['note.write']).click();
  },
};

const AT_THE_BAR: Readonly<Record<string, Way>> = {
  'entry at the bar': (page) => page.locator('.at-bar').waitFor(),
  'the bar to be set': (page) => button(page, en['bar.set']).click(),
  'the checklist before the first jump': (page) => button(page, en['first.open']).click(),
};

describe('the desk is for everybody', () => {
  let field: Field;
  let tablet: Tablet;
  let discus: Circle;
  let bar: Circle;
  beforeAll(async () => {
    field = await openField();
    tablet = await Tablet.open();
    discus = await Circle.open(field.api, discusSheet(3));
    await discus.recordCard(['48.62'], ['X']);
    bar = await Circle.open(field.api, highJumpSheet(2, ['1.70', '1.75']));
  });
  afterAll(async () => {
    await tablet.discard();
    await field.close();
  });

  it.each(LOOKS)('in $look, $width pixels wide: every screen', async ({ width, media }) => {
    const findings: string[] = [];
    const look = async (circle: Circle, ways: Readonly<Record<string, Way>>) => {
      for (const [name, way] of Object.entries(ways)) {
        const page = await tablet.page(field.deskFor(circle.official), { width, height: 844 });
        await page.emulateMedia(media);
        await page.locator('.up').waitFor({ state: 'attached' });
        await way(page);
        const all = await findingsOf(page, 'desk');
        findings.push(...all.map((finding) => `${name}: ${finding}`));
        await page.close();
      }
    };
    await look(discus, AT_THE_CIRCLE);
    await look(bar, AT_THE_BAR);
    expect(findings).toEqual([]);
  });

  it('before somebody has signed in', async () => {
    const fresh = await Tablet.open();
    try {
      const page = await fresh.page(`${field.deskFor('').split('#')[0]}`);
      await page.locator('.sign-in').waitFor();
      expect(await axeFindings(page)).toEqual([]);
      expect(await htmlFindings(page, 'desk')).toEqual([]);
      // Both checks find what is wrong.
      await page.evaluate(() => document.getElementById('desk')!.append(document.createElement('img')));
      expect((await axeFindings(page)).join()).toMatch(/image-alt/);
      expect((await htmlFindings(page, 'desk')).join()).toMatch(/wcag/);
    } finally {
      await fresh.discard();
    }
  });
});
