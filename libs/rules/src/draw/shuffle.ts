import type { NumberBelow } from './generator.js';

/**
 * The items in an order by lot: the shuffle of Fisher and Yates as Durstenfeld put it (Algorithm 235, Communications
 * of the ACM, 1964). From the last position down to the second, the item there changes places with one at or before
 * it, drawn by `below`.
 */
export function shuffled<T>(items: readonly T[], below: NumberBelow): T[] {
  const order = [...items];
  for (let count = order.length; count > 1; count--) {
    const chosen = below(count);
    [order[chosen], order[count - 1]] = [order[count - 1]!, order[chosen]!];
  }
  return order;
}
