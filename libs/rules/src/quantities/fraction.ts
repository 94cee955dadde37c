/** An exact rational in lowest terms; the denominator is positive. Made by the functions of this file only. */
export interface Fraction {
  readonly numerator: bigint;
  readonly denominator: bigint;
}

export const ZERO: Fraction = { numerator: 0n, denominator: 1n };

/** @throws RangeError for a denominator of zero, or a number that is not whole. */
export function fraction(numerator: bigint | number, denominator: bigint | number = 1n): Fraction {
  const [n, d] = [BigInt(numerator), BigInt(denominator)];
  if (d === 0n) throw new RangeError('A fraction has no denominator of zero.');
  const common = greatestCommonDivisor(n, d);
  const sign = d < 0n ? -1n : 1n;
  return { numerator: (sign * n) / common, denominator: (sign * d) / common };
}

const DECIMAL = /^(-?)(\d+)(?:\.(\d+))?$/;

/** Reads a plain decimal (`10`, `7.5`, `-0.125`) without passing through floating point; `null` if it is not one. */
export function parseDecimal(text: string): Fraction | null {
  const parts = DECIMAL.exec(text);
  if (!parts) return null;
  const decimals = parts[3] ?? '';
  const magnitude = fraction(BigInt(`${parts[2]}${decimals}`), 10n ** BigInt(decimals.length));
  return parts[1] === '-' ? { ...magnitude, numerator: -magnitude.numerator } : magnitude;
}

export function add(a: Fraction, b: Fraction): Fraction {
  return fraction(a.numerator * b.denominator + b.numerator * a.denominator, a.denominator * b.denominator);
}

export function multiply(a: Fraction, b: Fraction): Fraction {
  return fraction(a.numerator * b.numerator, a.denominator * b.denominator);
}

/** @throws RangeError when `b` is zero. */
export function divide(a: Fraction, b: Fraction): Fraction {
  return fraction(a.numerator * b.denominator, a.denominator * b.numerator);
}

/** Negative when `a` is the lesser, zero when they are equal. */
export function compare(a: Fraction, b: Fraction): number {
  const difference = a.numerator * b.denominator - b.numerator * a.denominator;
  return difference < 0n ? -1 : difference > 0n ? 1 : 0;
}

/** The greatest whole number that is not above it. */
export function floor(a: Fraction): bigint {
  const quotient = a.numerator / a.denominator;
  return a.numerator % a.denominator < 0n ? quotient - 1n : quotient;
}

/** Points as they are published: a decimal without trailing zeros when it ends (`7.5`, `0`), else `19/3`. */
export function formatPoints(points: Fraction): string {
  const places = decimalPlaces(points.denominator);
  if (places === null) return `${points.numerator}/${points.denominator}`;
  const sign = points.numerator < 0n ? '-' : '';
  const magnitude = points.numerator < 0n ? -points.numerator : points.numerator;
  const digits = String((magnitude * 10n ** BigInt(places)) / points.denominator).padStart(places + 1, '0');
  const whole = digits.slice(0, digits.length - places);
  return places === 0 ? `${sign}${whole}` : `${sign}${whole}.${digits.slice(-places)}`;
}

/** How many decimals write n/denominator in lowest terms exactly; `null` when its decimals never end. */
function decimalPlaces(denominator: bigint): number | null {
  const [twos, withoutTwos] = divideOut(denominator, 2n);
  const [fives, rest] = divideOut(withoutTwos, 5n);
  return rest === 1n ? Math.max(twos, fives) : null;
}

function divideOut(value: bigint, prime: bigint): [times: number, rest: bigint] {
  let times = 0;
  let rest = value;
  while (rest % prime === 0n) {
    rest /= prime;
    times += 1;
  }
  return [times, rest];
}

function greatestCommonDivisor(a: bigint, b: bigint): bigint {
  let [x, y] = [a < 0n ? -a : a, b < 0n ? -b : b];
  while (y !== 0n) [x, y] = [y, x % y];
  return x;
}
