import { validTrials } from './marks.js';

/** What ranks a competitor in a throw or a horizontal jump: measured marks, best first, and whether any was not measured. */
export interface Marks {
  measured: number[];
  unmeasured: boolean;
}

/** Null when there is no valid trial among the first `rounds`. */
export function marksAfter(series: readonly (string | null)[], rounds: number): Marks | null {
  const valid = validTrials(series.slice(0, rounds));
  if (valid.length === 0) return null;
  const measured = valid.flatMap((trial) => (trial.steps === null ? [] : [trial.steps]));
  return { measured: measured.sort((a, b) => b - a), unmeasured: measured.length < valid.length };
}

/** `sign` above zero: `a` is better. `nth`: which best mark decided, 1 for the best; 0 when they are level. */
export interface Difference {
  sign: number;
  nth: number;
}

const LEVEL: Difference = { sign: 0, nth: 0 };

/**
 * Compares two competitors of a field. Zero stands for a mark that is missing: it loses to every mark there can
 * be. The field decides too: one unmeasured valid trial among those level on the best mark stops the countback.
 */
export function difference(a: Marks, b: Marks, field: readonly (Marks | null)[]): Difference {
  const bestA = a.measured[0] ?? 0;
  const bestB = b.measured[0] ?? 0;
  if (bestA !== bestB) return { sign: bestA - bestB, nth: 1 };
  if (field.some((one) => one !== null && (one.measured[0] ?? 0) === bestA && one.unmeasured)) return LEVEL;
  for (let nth = 2; nth <= Math.max(a.measured.length, b.measured.length); nth += 1) {
    const sign = (a.measured[nth - 1] ?? 0) - (b.measured[nth - 1] ?? 0);
    if (sign !== 0) return { sign, nth };
  }
  return LEVEL;
}

/** The place of each: one more than how many are strictly better, counted pair by pair. Null without a valid trial. */
export function placesOf(field: readonly (Marks | null)[]): (number | null)[] {
  return field.map((one) => {
    if (one === null) return null;
    return 1 + field.filter((other) => other !== null && difference(other, one, field).sign > 0).length;
  });
}

const ORDINALS = ['', 'best', '2nd best', '3rd best'];

export function nthBest(nth: number): string {
  return ORDINALS[nth] ?? `${nth}th best`;
}

/** The indices in the order of their places, equals in the order given; those without a place are left out. */
export function inPlaceOrder(places: readonly (number | null)[]): number[] {
  const order: number[] = [];
  for (let place = 1; place <= places.length; place += 1) {
    places.forEach((one, index) => {
      if (one === place) order.push(index);
    });
  }
  return order;
}

/**
 * Ranks competitors in a throw or a horizontal jump by their cells, in the order given.
 * Rule: World Athletics TR25.22 (best mark, then the second best and so on; still level: the place is shared).
 */
export function referenceRanking(series: readonly (readonly (string | null)[])[]): (number | null)[] {
  return placesOf(series.map((cells) => marksAfter(cells, cells.length)));
}
