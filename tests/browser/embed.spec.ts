import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import type { Page } from 'playwright-core';
import { FrontEnd } from '../../apps/api/src/platform/web/front-end.js';
import { Circle } from '../support/at-the-circle.js';
import { discusSheet } from '../support/circle.js';
import { axeFindings } from './support/audit.js';
import { openClubSite, type ClubSite } from './support/club-site.js';
import { builtWeb, openField, type Field } from './support/field.js';
import { Tablet } from './support/tablet.js';

const MOST_BYTES = 12 * 1024;
const README = readFileSync(join(import.meta.dirname, '..', '..', 'README.md'), 'utf8');

let field: Field;
let tablet: Tablet;
let site: ClubSite;
let server: string;
beforeAll(async () => {
  field = await openField();
  tablet = await Tablet.open();
  site = await openClubSite();
  server = `http://127.0.0.1:${field.network.port}`;
});
afterAll(async () => {
  await tablet.discard();
  await site.close();
  await field.close();
});

const SHEET = discusSheet(0, {
  competitors: Array.from({ length: 9 }, (_, at) => ({
    ...{ bib: String(at + 1), name: 'Odalys Thornwick', club: 'Saltmarsh AC' },
  })),
});

/** A discus in its first round: marks falling by bib. */
async function begun(): Promise<Circle> {
  const circle = await Circle.open(field.api, SHEET);
  await circle.recordCard(...Array.from({ length: 8 }, (_, at) => [`${48 - at}.00`]));
  return circle;
}

/** The line of the README, for this server and this competition. */
function pasted({ competition }: Circle): string {
  const [, line = ''] = /```html\n(<script[^]*?)```/.exec(README) ?? [];
  expect(line).toContain('<iframe');
  return line.replaceAll('https://results.example', server).replaceAll('COMPETITION', competition.id);
}

const row = (page: Page, bib: number) => page.locator('sectorline-results tbody tr').nth(bib - 1);
const isLive = (page: Page) => page.locator('sectorline-results .fresh[data-fresh=live]').waitFor();

describe('the line of the README, pasted into an empty page of another site', () => {
  it('is of the element as it is built, which is small', async () => {
    const files = await builtWeb();
    const { element } = new FrontEnd(files);
    expect(README).toContain(`https://results.example${element!.address}" integrity="${element!.integrity}"`);
    const bytes = gzipSync(files.get(element!.address)!.plain, { level: 9 }).length;
    expect(bytes).toBeGreaterThan(4_000);
    expect(bytes).toBeLessThanOrEqual(MOST_BYTES);
  });

  it('shows a trial as soon as it is recorded, under the strictest policy with what the README adds', async () => {
    const circle = await begun();
    const [, added = ''] = /`default-src 'none'; ([^`]*)`/.exec(README) ?? [];
    site.show(
      `<main><h1>Harriers</h1>${pasted(circle)}</main>`,
      `default-src 'none'; ${added.replaceAll('https://results.example', server)}`,
    );
    const page = await tablet.page(site.url, { width: 1024, height: 800 });
    const refused: string[] = [];
    page.on('console', (message) => message.type() === 'error' && refused.push(message.text()));
    await isLive(page);
    expect(await page.locator('sectorline-results iframe').count()).toBe(0);
    expect(await row(page, 1).locator('.mark').textContent()).toBe('48.00');
    await circle.record(9, 1, '51.37');
    await page.getByText('51.37').first().waitFor();
    expect(await row(page, 1).locator('.place').textContent()).toContain('1st');
    expect(await row(page, 1).locator('.mark').textContent()).toBe('51.37');
    expect(await page.locator('sectorline-results .news').textContent()).toBe('O. T.: 51.37, Round 1, 1st');
    expect(refused).toEqual([]);
    await page.close();
  });

  it('shows the table without scripts, and so does the page of the competition', async () => {
    const circle = await begun();
    site.show(pasted(circle));
    const page = await tablet.strange(site.url, { javaScriptEnabled: false });
    const frame = page.frameLocator('iframe');
    expect(await frame.locator('tbody tr .mark').allTextContents()).toContain('48.00');
    await page.goto(`${server}/competitions/${circle.competition.id}?lang=de`);
    expect(await page.locator('tbody tr .mark').allTextContents()).toContain('48,00');
    await page.context().close();
  });
});

const DARK = '<style>body { background: #14110c; color: #f2ead9; }</style>';

/** Styles as rude as they come, and something that ours could harm. */
const RUDE = `<style>
  td, th, span, li { padding: 40px; color: red; display: block; font-size: 50px; }
  * { letter-spacing: 3px; }
  .table { border: 7px dotted blue; }
</style><div class="table name board" id="own">Ours</div>`;

describe('on a page of others', () => {
  it('neither takes harm from its styles nor does any to them', async () => {
    const circle = await begun();
    const look = async (before: string) => {
      site.show(`<main><h1>Harriers</h1>${before}${pasted(circle)}</main>`);
      const page = await tablet.page(site.url, { width: 1024, height: 800 });
      await isLive(page);
      const own = await row(page, 1)
        .locator('td.best')
        .evaluate((cell) => {
          const { padding, color, display, fontSize } = getComputedStyle(cell);
          return { padding, color, display, fontSize };
        });
      const theirs = await page
        .locator('#own')
        .evaluateAll((all) =>
          all.map((one) => [getComputedStyle(one).border, getComputedStyle(one).fontWeight]),
        );
      const findings = await axeFindings(page);
      await page.close();
      return { own, theirs, findings };
    };
    const [plain, dark, rude] = [await look(''), await look(DARK), await look(RUDE)];
    expect([plain.findings, dark.findings]).toEqual([[], []]);
    expect(rude.own).toEqual(plain.own);
    expect(rude.theirs).toEqual([['7px dotted rgb(0, 0, 255)', '400']]);
  });

  it('moves nothing when trials come in and places change, and keeps what is folded open', async () => {
    const circle = await begun();
    await circle.record(9, 1, '48.00');
    await circle.record(1, 2, '40.00');
    site.show(`${pasted(circle)}<p>What stands below.</p>`);
    const page = await tablet.page(site.url, { width: 390, height: 844 });
    await isLive(page);
    await page.evaluate(() => {
      const counted = globalThis as unknown as { shift: number };
      counted.shift = 0;
      new PerformanceObserver((list) => {
        for (const entry of list.getEntries()) counted.shift += (entry as unknown as { value: number }).value;
      }).observe({ type: 'layout-shift' });
    });
    const shift = () => page.evaluate(() => (globalThis as unknown as { shift: number }).shift);
    for (const [bib, mark] of [
      [2, '47.50'],
      [3, '52.00'],
      [4, 'X'],
    ] as const) {
      await circle.record(bib, 2, mark);
    }
    await page.locator('.series').getByText('52.00').first().waitFor();
    await page.locator('.calls li').first().getByText('5').waitFor();
    expect(await shift()).toBe(0);
    await page.locator('summary').first().focus();
    await page.keyboard.press('Enter');
    await circle.record(5, 2, '43.33');
    await page.getByText('43.33').first().waitFor();
    expect(await page.locator('details[open]').count()).toBe(1);
    // The measure sees what moves.
    const least = await shift();
    await page.evaluate(() => {
      scrollTo(0, 0);
      document.body.prepend(Object.assign(document.createElement('h1'), { textContent: '!' }));
    });
    await page.waitForFunction(
      (before) => (globalThis as unknown as { shift: number }).shift > before,
      least,
    );
    await page.close();
  });

  it('says how old it is while the network is away, comes back by itself, and is silent when told so', async () => {
    const circle = await begun();
    site.show(pasted(circle));
    const page = await tablet.page(site.url);
    await isLive(page);
    const foot = page.locator('sectorline-results');
    await page.getByRole('checkbox').uncheck();
    expect(await foot.locator('.news').getAttribute('aria-live')).toBe('off');
    await field.network.shut();
    await foot.locator('.fresh[data-fresh=failing]').waitFor();
    expect(await foot.locator('.fresh').textContent()).toMatch(/^As of \d?\d:\d\d, trying again$/);
    await circle.record(9, 1, '50.01');
    await field.network.open();
    await page.getByText('50.01').first().waitFor();
    await page.close();
  });
});

describe('the pages are for everybody', () => {
  const MODES = [
    // Beside the page of the competition one more in each.
    { colorScheme: 'light', forcedColors: 'none', more: 'announcer' },
    { colorScheme: 'dark', forcedColors: 'none', more: 'meet' },
    { colorScheme: 'dark', forcedColors: 'active', more: 'screen' },
  ] as const;

  it.each(MODES)(
    'in $colorScheme, forced colours $forcedColors, at three widths',
    async ({ more, ...mode }) => {
      const circle = await begun();
      await circle.record(9, 1, '48.00');
      const { id } = circle.competition;
      const findings: string[] = [];
      const look = async (path: string, width: number) => {
        const page = await tablet.page(`${server}${path}`, { width, height: 900 });
        await page.emulateMedia({ ...mode, reducedMotion: 'reduce' });
        await page.locator('[data-fresh]').first().waitFor({ state: 'attached' });
        const broad = await page.evaluate(() => document.documentElement.scrollWidth > innerWidth);
        const all = [...(await axeFindings(page)), ...(broad ? ['too broad'] : [])];
        findings.push(...all.map((finding) => `${path} ${width}: ${finding}`));
        await page.close();
      };
      for (const width of [320, 768, 1280]) await look(`/competitions/${id}`, width);
      await look(more === 'meet' ? `/meets/${circle.meet.id}` : `/competitions/${id}/${more}`, 390);
      expect(findings).toEqual([]);
    },
  );
});
