import type { Interval } from '../answer.js';
import { tCdf } from '../numbers/distributions.js';
import type { Chance } from '../numbers/random.js';
import { arrangementsOver, drawnArrangements, everyArrangement } from './arrangements.js';
import { centre, isInformative, productsOf, withoutCovariate, type Block } from './block.js';
import { notRejected, shareOf, stretchesOf } from './inversion.js';

/** Up to here every arrangement is counted; beyond, some are drawn. */
export const EXACT_UP_TO = 200_000;
/** For an answer that is shown at once, and marked as provisional, and for one that stays. */
export const FIRST_DRAWS = 2000;
export const FULL_DRAWS = 20_000;

export interface WithinSeriesTest {
  /** Σ (x − x̄)(y − ȳ) / Σ (x − x̄)² over blocks. */
  readonly beta: number;
  /** Two-sided, and one-sided towards the estimate. */
  readonly p: number;
  readonly pOneSided: number;
  /** Effects that the test does not reject, in units of y. */
  readonly interval: Interval;
  /** In how many ways the notes could be laid out within their series; may be infinite. */
  readonly arrangements: number;
  /** Whether every arrangement was counted. Else `draws` were. */
  readonly exact: boolean;
  readonly draws: number;
  readonly blocks: number;
  readonly informativeBlocks: number;
}

export interface WithinSeriesOptions {
  /** Of the interval. */
  readonly level: number;
  readonly draws: number;
  /** Only used when there are too many arrangements to count. */
  readonly chance: Chance;
}

/**
 * The effect of x on y within series, tested by laying out x anew within every series (whoever threw, the day, the
 * implement, the season and the weather are the same within one, so they drop out), and all effects that this test
 * does not reject. `null` when x differs within no series.
 */
export function withinSeriesTest(
  all: readonly Block[],
  { level, draws, chance }: WithinSeriesOptions,
): WithinSeriesTest | null {
  const informative = all.filter(isInformative).map(centre);
  if (informative.length === 0) return null;
  // A covariate is fitted over all series, also those in which x does not differ.
  const products = productsOf(all.map(centre));
  const left = withoutCovariate(products);
  if (left.xx <= 1e-12 * products.xx) return null;
  const arrangements = arrangementsOver(informative);
  const exact = arrangements <= EXACT_UP_TO;
  const sums = exact ? everyArrangement(informative) : drawnArrangements(informative, draws, chance);
  const stretches = stretchesOf(sums, products);
  const count = sums.withY.length;
  return {
    beta: left.xy / left.xx,
    p: shareOf(stretches.asExtreme, count, exact),
    pOneSided: shareOf(stretches.asExtremeThatWay, count, exact),
    interval: notRejected(stretches, exact, level),
    arrangements,
    exact,
    draws: exact ? 0 : draws,
    blocks: all.length,
    informativeBlocks: informative.length,
  };
}

/** The same effect by least squares with a level per series, for comparison: its error assumes normal marks. */
export interface FixedEffect {
  readonly beta: number;
  readonly standardError: number;
  readonly freedom: number;
  readonly p: number;
}

export function fixedEffect(all: readonly Block[]): FixedEffect | null {
  const blocks = all.map(centre);
  const { xx, xy, yy } = withoutCovariate(productsOf(blocks));
  const covariates = blocks.some(({ dz }) => dz) ? 1 : 0;
  const freedom = blocks.reduce((rows, { x }) => rows + x.length, 0) - blocks.length - 1 - covariates;
  if (xx <= 0 || freedom < 1) return null;
  const beta = xy / xx;
  const standardError = Math.sqrt((yy - beta * xy) / freedom / xx);
  return { beta, standardError, freedom, p: 2 * tCdf(-Math.abs(beta / standardError), freedom) };
}
