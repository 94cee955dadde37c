import { floor, fraction, multiply, parseDecimal, type Fraction } from '../quantities/fraction.js';
import { formulaUnit, type CombinedEventCode, type Formula } from './scoring-table.js';

/** Points of a performance in whole hundredths (of a second, of a metre): a whole number, 0 or more. */
export type PointsFunction = (hundredths: number) => number;

/**
 * The formula ⌊a·x^c⌋ of an event, exact: with c = p/q in lowest terms, n points are reached when n^q ≤ a^q·x^p, which
 * whole numbers decide. Floating point proposes n; the comparison proves it, or moves it.
 * 0 for a performance that is not better than b.
 */
export function pointsFunction(event: CombinedEventCode, formula: Formula): PointsFunction {
  const [a, b, c] = [decimal(formula.a), decimal(formula.b), decimal(formula.c)];
  const isReached = reachedTest(a, c);
  const guess = floatGuess(a, c);
  const betterBy = betterThan(event, b);
  return (hundredths) => {
    const x = betterBy(hundredths);
    if (x <= 0n) return 0;
    let points = BigInt(guess(x));
    while (!isReached(points, x)) points -= 1n;
    while (isReached(points + 1n, x)) points += 1n;
    return Number(points);
  };
}

/** By how many units of `SCALE` a performance is better than b. Every b is a whole number of these units. */
function betterThan(event: CombinedEventCode, b: Fraction): (hundredths: number) => bigint {
  const limit = floor(multiply(b, fraction(SCALE)));
  switch (formulaUnit(event)) {
    case 'seconds':
      return (hundredths) => limit - BigInt(hundredths);
    case 'metres':
      return (hundredths) => BigInt(hundredths) - limit;
    case 'centimetres':
      return (hundredths) => BigInt(hundredths) * SCALE - limit;
  }
}

/** x in the formula's own unit (second, metre, centimetre) is a whole number of hundredths of it. */
const SCALE = 100n;

/** Whether n ≤ a·(x/100)^c, with everything raised to the q-th power and freed from denominators. */
function reachedTest(a: Fraction, c: Fraction): (points: bigint, x: bigint) => boolean {
  const [p, q] = [c.numerator, c.denominator];
  // Not a fraction: to reduce numbers of this size takes longer than to compare with them.
  const [factor, divisor] = [a.numerator ** q, a.denominator ** q * SCALE ** p];
  return (points, x) => points ** q * divisor <= factor * x ** p;
}

function floatGuess(a: Fraction, c: Fraction): (x: bigint) => number {
  const [factor, exponent] = [approximately(a), approximately(c)];
  return (x) => Math.floor(factor * (Number(x) / Number(SCALE)) ** exponent);
}

function approximately({ numerator, denominator }: Fraction): number {
  return Number(numerator) / Number(denominator);
}

function decimal(text: string): Fraction {
  const value = parseDecimal(text);
  if (!value) throw new RangeError(`A constant of a formula is a decimal, not ${text}.`);
  return value;
}
