import type { Card } from '../card.js';
import { MAX_MARK } from '../quantities/mark.js';
import { ruleSet } from '../rule-sets/index.js';

/** The step in which the card's event is measured, in units of the card. */
export function stepOf(card: Card): number {
  return ruleSet(card.rules, card.edition).precision[card.event].value[card.unit];
}

/** Best marks in units of the card; 0: none. */
export interface MarkSearch {
  /** Of the one who needs the mark. */
  readonly own: number;
  /** Of the one who must be passed, or whom it is enough to be level with. At least `own`. */
  readonly toBeat: number;
}

/**
 * The smallest mark on the card's step that is enough; `null` when not even the first that beats `toBeat` is, or it
 * cannot be written. What is enough for one mark must be so for every greater one.
 */
export function smallestMark(
  card: Card,
  { own, toBeat }: MarkSearch,
  isEnough: (mark: number) => boolean,
): number | null {
  const step = stepOf(card);
  // Behind on the best mark, nothing less than that can help; level on it, a smaller mark may break the tie.
  let low = own < toBeat ? Math.ceil(toBeat / step) : 1;
  let high = Math.floor(Math.min(MAX_MARK[card.unit], toBeat + step) / step);
  if (high < low || !isEnough(high * step)) return null;
  while (low < high) {
    const middle = Math.floor((low + high) / 2);
    if (isEnough(middle * step)) high = middle;
    else low = middle + 1;
  }
  return low * step;
}
