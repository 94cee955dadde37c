/** Where a function of an angle is largest, and how large. */
export interface Best {
  readonly angleDeg: number;
  readonly value: number;
}

const GOLDEN = (Math.sqrt(5) - 1) / 2;

/**
 * The best angle between two by golden section; `valueAt` must rise to one peak and fall from there. The flight of a
 * disc does so around its peak, not everywhere: look near it.
 */
export function bestAngle(
  valueAt: (angleDeg: number) => number,
  fromDeg: number,
  toDeg: number,
  withinDeg = 1e-4,
): Best {
  let [low, high] = [fromDeg, toDeg];
  let [left, right] = [high - GOLDEN * (high - low), low + GOLDEN * (high - low)];
  let [atLeft, atRight] = [valueAt(left), valueAt(right)];
  while (high - low > withinDeg) {
    if (atLeft < atRight) {
      [low, left, atLeft] = [left, right, atRight];
      right = low + GOLDEN * (high - low);
      atRight = valueAt(right);
    } else {
      [high, right, atRight] = [right, left, atLeft];
      left = high - GOLDEN * (high - low);
      atLeft = valueAt(left);
    }
  }
  const angleDeg = (low + high) / 2;
  return { angleDeg, value: valueAt(angleDeg) };
}
