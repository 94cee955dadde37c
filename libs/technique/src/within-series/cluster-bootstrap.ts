import type { Interval } from '../answer.js';
import { bca } from '../numbers/bca.js';
import { sum } from '../numbers/moments.js';
import type { Chance } from '../numbers/random.js';
import { centre, isInformative, productsOf, type Block } from './block.js';

/** Whole series are drawn; with fewer than so many the ends of the interval are not to be trusted. */
export const LEAST_TO_RESAMPLE = 15;

const RESAMPLES = 2000;

/**
 * A second interval of the effect within series, by drawing series with replacement (BCa). It allows for effects that
 * differ from series to series, which laying out anew does not. `null` below fifteen informative series.
 */
export function resampledInterval(all: readonly Block[], level: number, chance: Chance): Interval | null {
  const products = all.filter(isInformative).map((block) => productsOf([centre(block)]));
  const count = products.length;
  if (count < LEAST_TO_RESAMPLE) return null;
  const [xx, xy] = [products.map((one) => one.xx), products.map((one) => one.xy)];
  const [wholeXx, wholeXy] = [sum(xx), sum(xy)];
  const replicates = Array.from({ length: RESAMPLES }, () => {
    let [top, bottom] = [0, 0];
    for (let draw = 0; draw < count; draw++) {
      const at = chance.below(count);
      top += xy[at] as number;
      bottom += xx[at] as number;
    }
    return top / bottom;
  });
  const leftOut = xx.map((own, at) => (wholeXy - (xy[at] ?? 0)) / (wholeXx - own));
  const { low, high } = bca(wholeXy / wholeXx, replicates, leftOut, level);
  return { low, high, level };
}
