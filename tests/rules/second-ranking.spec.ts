import fc from 'fast-check';
import { recount } from '#rules';
import { rankings } from '../reference/generate-sheet.js';
import { referenceRanking } from '../reference/horizontal-ranking.js';

/** The same competitions in every run; another SECOND_COUNT_SEED draws others. */
const seed = Number(process.env['SECOND_COUNT_SEED'] ?? 20_000);

interface Placed {
  bib: string;
  place: number | null;
}

function placesByLibrary(series: readonly string[][]): (number | null)[] {
  const competitors = series.map((cells, index) => ({ bib: String(index), series: cells }));
  const sheet = { format: 'sectorline-sheet/1', rules: 'WA', event: 'shot', plan: { cuts: [] }, competitors };
  const { results } = recount(JSON.stringify(sheet)) as unknown as { results: Placed[] };
  return series.map((_, index) => results.find((row) => row.bib === String(index))?.place ?? null);
}

describe('the ranking of throws and horizontal jumps', () => {
  it('agrees with counting all pairs on 20,000 generated competitions', () => {
    fc.assert(
      fc.property(rankings, (series) => {
        expect(placesByLibrary(series)).toEqual(referenceRanking(series));
      }),
      { numRuns: 20_000, seed },
    );
  }, 300_000);
});
