/** An exact fraction in lowest terms with a positive denominator. */
export interface Fraction {
  top: bigint;
  bottom: bigint;
}

function common(a: bigint, b: bigint): bigint {
  return b === 0n ? a : common(b, a % b);
}

export function fraction(top: bigint, bottom = 1n): Fraction {
  const by = common(top, bottom);
  return by === 0n ? { top: 0n, bottom: 1n } : { top: top / by, bottom: bottom / by };
}

export const ZERO = fraction(0n);

export function add(a: Fraction, b: Fraction): Fraction {
  return fraction(a.top * b.bottom + b.top * a.bottom, a.bottom * b.bottom);
}

export function divide(a: Fraction, by: number): Fraction {
  return fraction(a.top, a.bottom * BigInt(by));
}

/** Above zero when `a` is more. */
export function compare(a: Fraction, b: Fraction): number {
  return Number(a.top * b.bottom - b.top * a.bottom);
}

/** A number of a scoring table, whose shortest decimal has at most three places, taken exactly. */
export function fromNumber(value: number): Fraction {
  const [whole = '0', decimals = ''] = String(value).split('.');
  return fraction(BigInt(whole + decimals), 10n ** BigInt(decimals.length));
}

/** A decimal without trailing zeros when it ends, else `n/d` in lowest terms. */
export function fractionText(value: Fraction): string {
  for (let decimals = 0n; decimals <= 200n; decimals += 1n) {
    const scaled = value.top * 10n ** decimals;
    if (scaled % value.bottom !== 0n) continue;
    if (decimals === 0n) return String(value.top / value.bottom);
    const digits = String(scaled / value.bottom).padStart(Number(decimals) + 1, '0');
    return `${digits.slice(0, -Number(decimals))}.${digits.slice(-Number(decimals))}`;
  }
  return `${value.top}/${value.bottom}`;
}
