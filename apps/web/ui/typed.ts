import { isMark, parseMark, parseWind, type Unit } from '#rules';

/** What an official types into the field of the mark, as on a field card: digits, or one letter for what was not valid. */
export type Typed =
  | { readonly kind: 'nothing' }
  | { readonly kind: 'unreadable' }
  | { readonly kind: 'mark'; readonly value: number }
  | { readonly kind: 'outcome'; readonly outcome: 'foul' | 'pass' | 'retired' | 'unmeasured' };

const OUTCOMES = { X: 'foul', '-': 'pass', R: 'retired', O: 'unmeasured' } as const;

/**
 * Reads what was typed. In metres the last two digits are centimetres, with or without a decimal sign: `4862`, `48.62`
 * and `48,62` are the same. In feet and inches: `47-6`, `47-06.25`, `47-6 1/4`.
 */
export function readTyped(text: string, unit: Unit): Typed {
  const trimmed = text.trim().toUpperCase();
  if (trimmed === '') return { kind: 'nothing' };
  const letter = trimmed === '−' ? '-' : trimmed;
  if (letter in OUTCOMES) return { kind: 'outcome', outcome: OUTCOMES[letter as keyof typeof OUTCOMES] };
  const value = unit === 'cm' ? centimetresIn(trimmed) : quarterInchesIn(trimmed);
  return value !== null && isMark(value, unit) ? { kind: 'mark', value } : { kind: 'unreadable' };
}

function centimetresIn(text: string): number | null {
  if (/^\d{1,5}$/.test(text)) return Number(text);
  const parts = /^(\d{1,3})[.,](\d\d)$/.exec(text);
  return parts ? Number(parts[1]) * 100 + Number(parts[2]) : null;
}

const QUARTERS: Readonly<Record<string, string>> = { '1/4': '25', '1/2': '50', '3/4': '75' };

function quarterInchesIn(text: string): number | null {
  const parts = /^(\d{1,3})-(\d{1,2})(?:[.,](\d{1,2})| ?(1\/4|1\/2|3\/4))?$/.exec(text);
  if (!parts) return null;
  const [, feet = '', inches = '', decimals = '00', quarter] = parts;
  const fraction = quarter === undefined ? decimals.padEnd(2, '0') : QUARTERS[quarter]!;
  return parseMark(`${Number(feet)}-${inches.padStart(2, '0')}.${fraction}`)?.value ?? null;
}

/** How a field shows digits while they are typed: `4862` as `48.62`, with the decimal sign of the place. */
export function shownWhileTyping(text: string, unit: Unit, decimal: string): string {
  if (unit !== 'cm' || !/^\d{3,5}$/.test(text)) return text;
  return `${text.slice(0, -2)}${decimal}${text.slice(-2)}`;
}

/** A wind in tenths; null: it cannot be read. `13`, `1.3`, `+1,3` are +1.3; `-4` is -0.4. */
export function readTypedWind(text: string): number | null {
  const parts = /^([+\-−]?)(\d{1,3}|\d{1,2}[.,]\d)$/.exec(text.trim());
  if (!parts) return null;
  const digits = parts[2]!.replace(/[.,]/, '').padStart(2, '0');
  const still = Number(digits) === 0;
  const sign = parts[1] === '' || parts[1] === '+' || still ? '+' : '-';
  const wind = parseWind(`${sign}${Number(digits.slice(0, -1))}.${digits.slice(-1)}`);
  return typeof wind === 'number' ? wind : null;
}
