import type { Page } from 'playwright-core';
import { discusSheet } from '../support/circle.js';
import { Circle } from '../support/at-the-circle.js';
import { discusFinal, judged, type ScriptLine } from './support/discus-final.js';
import { openField, type Field } from './support/field.js';
import { written } from './support/journal.js';
import { KeyboardOfficial, ThumbOfficial } from './support/official.js';
import { Tablet } from './support/tablet.js';

const SCRIPT = discusFinal();

function expected(lines: readonly ScriptLine[]): unknown[] {
  return lines.map(({ bib, round, cell }) => ({
    kind: 'attempt',
    standing: 'accepted',
    bib,
    round,
    ...judged(cell),
  }));
}

/** What the browser says against installing the page on the home screen. */
async function hindrances(page: Page): Promise<string[]> {
  const session = await page.context().newCDPSession(page);
  const { installabilityErrors } = await session.send('Page.getInstallabilityErrors');
  await session.detach();
  return installabilityErrors.map(({ errorId }) => errorId);
}

describe('a discus final of twelve, entered at the desk', () => {
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

  it('with a thumb on a telephone is in the journal as it happened', async () => {
    const circle = await Circle.open(field.api, discusSheet(12));
    const official = new ThumbOfficial(await tablet.page(field.deskFor(circle.official)));
    for (const { bib, cell } of SCRIPT) await official.enter(bib, cell);
    await official.isSent();
    expect(await written(circle)).toEqual(expected(SCRIPT));
  });

  it('with a keyboard alone is the same', async () => {
    const circle = await Circle.open(field.api, discusSheet(12));
    const official = new KeyboardOfficial(await tablet.page(field.deskFor(circle.official)));
    for (const { bib, cell } of SCRIPT) await official.enter(bib, cell);
    await official.isSent();
    expect(await written(circle)).toEqual(expected(SCRIPT));
  });

  it('without a network in rounds 2 to 4, and with an empty battery in between, is the same', async () => {
    const circle = await Circle.open(field.api, discusSheet(12));
    let official = new ThumbOfficial(await tablet.page(field.deskFor(circle.official)));
    const of = (first: number, last: number) => SCRIPT.filter(({ round }) => round >= first && round <= last);
    const enter = async (lines: readonly ScriptLine[]) => {
      for (const { bib, cell } of lines) await official.enter(bib, cell);
    };
    await enter(of(1, 1));
    await official.isSent();
    await official.page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
    expect(await hindrances(official.page)).toEqual([]);

    await field.network.shut();
    await enter(of(2, 2));
    await tablet.kill();
    await tablet.start();
    // The address alone, as from the home screen: the token and the page are on the tablet.
    official = new ThumbOfficial(await tablet.page(field.deskFor('').split('#')[0]!));
    await enter(of(3, 4));
    const waiting = of(2, 4).length;
    await expect(official.page.locator('[data-saved="waiting"]').innerText()).resolves.toMatch(
      new RegExp(`^${waiting} `),
    );

    await field.network.open();
    await enter(of(5, 6));
    await official.isSent();
    expect(await written(circle)).toEqual(expected(SCRIPT));
  });
});
