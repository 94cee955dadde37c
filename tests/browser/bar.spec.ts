import { en } from '../../apps/web/labels/en.js';
import { highJumpSheet } from '../support/at-the-bar.js';
import { Circle } from '../support/at-the-circle.js';
import { openField, type Field } from './support/field.js';
import { HEIGHTS, highJump, judgedJump } from './support/high-jump.js';
import { written } from './support/journal.js';
import { BarOfficial } from './support/official.js';
import { Tablet } from './support/tablet.js';

describe('jumps at a bar, entered at the desk', () => {
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

  it('are in the journal as they happened, with the jump-off', async () => {
    const script = highJump();
    expect(script.filter(({ isJumpOff }) => isJumpOff)).toHaveLength(4);
    const circle = await Circle.open(field.api, highJumpSheet(4, HEIGHTS));
    const official = new BarOfficial(await tablet.page(field.deskFor(circle.official)));
    for (const { bib, letter } of script) await official.enter(bib, letter);
    await official.isSent();
    expect(await written(circle)).toEqual(
      script.map(({ bib, height, trial, isJumpOff, letter }) => ({
        kind: isJumpOff ? 'jump-off' : 'jump',
        standing: 'accepted',
        bib,
        height,
        trial,
        ...judgedJump(letter),
      })),
    );
    await official.see('standing');
    expect(await official.page.locator('.row').first().getAttribute('data-bib')).toBe('1');
    await official.page.locator('.row').first().getByText(en['reason.jumpOff']).waitFor();
  });

  it('can have their uprights asked for, and the bar set where it was not announced', async () => {
    const vault = highJumpSheet(2, ['3.00', '3.20'], { event: 'pole-vault' });
    const circle = await Circle.open(field.api, vault);
    const official = new BarOfficial(await tablet.page(field.deskFor(circle.official)));
    const { page } = official;
    await official.page.getByRole('button', { name: en['bar.uprights'] }).first().click();
    for (const digit of '55') await page.locator('.dialog').getByRole('button', { name: digit }).click();
    await page.locator('.dialog button[type=submit]').click();
    await official.enter('1', 'O');
    await official.enter('2', 'O');
    await official.button(en['bar.set']).click();
    for (const digit of '330') await page.locator('.dialog').getByRole('button', { name: digit }).click();
    await page.locator('.dialog button[type=submit]').click();
    await official.isSent();
    expect(await written(circle)).toEqual([
      { kind: 'uprights', standing: 'accepted', bib: '1', behindZeroCm: 55 },
      { kind: 'jump', standing: 'accepted', bib: '1', height: 300, trial: 1, ...judgedJump('O') },
      { kind: 'jump', standing: 'accepted', bib: '2', height: 300, trial: 1, ...judgedJump('O') },
      { kind: 'bar', standing: 'accepted', height: 330, leavesOut: [] },
    ]);
  });
});
