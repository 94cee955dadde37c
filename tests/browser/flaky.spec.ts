import { Circle } from '../support/at-the-circle.js';
import { discusSheet } from '../support/circle.js';
import { discusFinal, judged } from './support/discus-final.js';
import { openField, type Field } from './support/field.js';
import { flakyNetwork } from './support/flaky-network.js';
import { written } from './support/journal.js';
import { KeyboardOfficial } from './support/official.js';
import { Tablet } from './support/tablet.js';

const SEEDS = Array.from({ length: process.env.LONG ? 50 : 5 }, (_, at) => at + 1);
const SCRIPT = discusFinal();

describe('a final of twelve over a network that delays, drops and cuts', () => {
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

  it.each(SEEDS)('is in the journal as it happened (seed %i)', async (seed) => {
    const network = await flakyNetwork(Number(new URL(field.api.url).port), seed);
    try {
      const circle = await Circle.open(field.api, discusSheet(12));
      const page = await tablet.page(`http://127.0.0.1:${network.port}/desk#token=${circle.official}`);
      const official = new KeyboardOfficial(page);
      await page.locator('.up').waitFor();
      network.beRough();
      for (const { bib, cell } of SCRIPT) await official.enter(bib, cell);
      await page.locator('[data-saved="sent"]').waitFor({ timeout: 240_000 });
      const { late, dropped, cut } = network.mishaps();
      expect({ late: late > 0, broken: dropped + cut > 0 }).toEqual({ late: true, broken: true });
      expect(await written(circle)).toEqual(
        SCRIPT.map(({ bib, round, cell }) => ({
          kind: 'attempt',
          standing: 'accepted',
          bib,
          round,
          ...judged(cell),
        })),
      );
    } finally {
      await network.close();
    }
  });
});
