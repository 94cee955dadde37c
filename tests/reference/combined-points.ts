import { stepsOf } from './marks.js';
import type { CombinedRow, CombinedSheet } from './shapes.js';

/**
 * `A` and `B` as printed, `C` as a fraction in lowest terms. Times in seconds and throws in metres have their base
 * in these; jumps have it in centimetres.
 * Source: the constants of the World Athletics scoring tables for combined events, as in public tables of them.
 */
interface Formula {
  a: string;
  b: string;
  c: [number, number];
}

const C = {
  181: [181, 100] as [number, number],
  192: [48, 25] as [number, number],
  1835: [367, 200] as [number, number],
  188: [47, 25] as [number, number],
  185: [37, 20] as [number, number],
};

const MEN: Record<string, Formula> = {
  '60m': { a: '58.0150', b: '11.5', c: C[181] },
  '100m': { a: '25.4347', b: '18', c: C[181] },
  '400m': { a: '1.53775', b: '82', c: C[181] },
  '1000m': { a: '0.08713', b: '305.5', c: C[185] },
  '1500m': { a: '0.03768', b: '480', c: C[185] },
  '60mh': { a: '20.5173', b: '15.5', c: C[192] },
  '110mh': { a: '5.74352', b: '28.5', c: C[192] },
  'high-jump': { a: '0.8465', b: '75', c: [71, 50] },
  'pole-vault': { a: '0.2797', b: '100', c: [27, 20] },
  'long-jump': { a: '0.14354', b: '220', c: [7, 5] },
  shot: { a: '51.39', b: '1.5', c: [21, 20] },
  discus: { a: '12.91', b: '4', c: [11, 10] },
  javelin: { a: '10.14', b: '7', c: [27, 25] },
};

const WOMEN: Record<string, Formula> = {
  '100m': { a: '17.8570', b: '21', c: C[181] },
  '200m': { a: '4.99087', b: '42.5', c: C[181] },
  '400m': { a: '1.34285', b: '91.7', c: C[181] },
  '800m': { a: '0.11193', b: '254', c: C[188] },
  '1500m': { a: '0.02883', b: '535', c: C[188] },
  '60mh': { a: '20.0479', b: '17.0', c: C[1835] },
  '100mh': { a: '9.23076', b: '26.7', c: C[1835] },
  'high-jump': { a: '1.84523', b: '75', c: [337, 250] },
  'pole-vault': { a: '0.44125', b: '100', c: [27, 20] },
  'long-jump': { a: '0.188807', b: '210', c: [141, 100] },
  shot: { a: '56.0211', b: '1.5', c: [21, 20] },
  discus: { a: '12.3311', b: '3', c: [11, 10] },
  javelin: { a: '15.9803', b: '3.8', c: [26, 25] },
};

export const TABLES: Record<string, string> = {
  decathlon: '100m long-jump shot high-jump 400m 110mh discus pole-vault javelin 1500m',
  heptathlon: '100mh high-jump shot 200m long-jump javelin 800m',
  'heptathlon-indoor': '60m long-jump shot high-jump 60mh pole-vault 1000m',
  'pentathlon-indoor': '60mh high-jump shot long-jump 800m',
  'decathlon-women': '100m discus pole-vault javelin 400m 100mh long-jump shot high-jump 1500m',
};

export function eventsOf(table: string): string[] {
  return (TABLES[table] ?? '').split(' ');
}

export function isRun(event: string): boolean {
  return /^\d/.test(event);
}

/** The digits of a decimal as a whole number, and how many of them are decimals. */
function decimal(text: string): { digits: bigint; decimals: number } {
  const [whole = '', decimals = ''] = text.split('.');
  return { digits: BigInt(whole + decimals), decimals: decimals.length };
}

/** Hundredths of a second, with what hand timing adds: 0.24 s up to 200 m and over hurdles, 0.14 s over 400 m. */
export function hundredths(time: string, event: string, timing: string): number {
  const [seconds = '', minutes = '0'] = time.split(':').reverse();
  const [whole = '', decimals = ''] = seconds.split('.');
  const measured = (Number(minutes) * 60 + Number(whole)) * 100 + Number(decimals.padEnd(2, '0'));
  if (timing !== 'hand') return measured;
  if (event.endsWith('h') || ['60m', '100m', '200m'].includes(event)) return measured + 24;
  return event === '400m' ? measured + 14 : measured;
}

/** How much better than `B` a mark is, in hundredths of the unit of the formula. */
function beyondBase(event: string, mark: string, timing: string, base: string): bigint {
  const { digits, decimals } = decimal(base);
  const hundredthsOfBase = digits * 10n ** BigInt(2 - decimals);
  if (isRun(event)) return hundredthsOfBase - BigInt(hundredths(mark, event, timing));
  const centimetres = BigInt(stepsOf(mark));
  return event.endsWith('jump') || event === 'pole-vault'
    ? centimetres * 100n - hundredthsOfBase
    : centimetres - hundredthsOfBase;
}

const known = new Map<string, number>();

/**
 * The greatest n with n <= A * x^(p/q), found by halving, with both sides raised to the power q so that only whole
 * numbers are compared: n^q * 10^(decimals of A * q) * 100^p <= A^q * x^p, with A and x without their points.
 */
function wholePoints(formula: Formula, beyond: bigint): number {
  const [p, q] = formula.c.map(BigInt) as [bigint, bigint];
  const a = decimal(formula.a);
  const right = a.digits ** q * beyond ** p;
  const scale = 10n ** (BigInt(a.decimals) * q) * 100n ** p;
  let low = 0n;
  let high = 1n;
  while (high ** q * scale <= right) high *= 2n;
  while (high - low > 1n) {
    const middle = (low + high) / 2n;
    if (middle ** q * scale <= right) low = middle;
    else high = middle;
  }
  return Number(low);
}

/** The points of one mark; null for no valid mark or no finish. */
export function combinedPoints(table: string, event: string, mark: string | null, timing: string): number {
  if (mark === null || mark === 'DNS') return 0;
  const women = table === 'heptathlon' || table === 'pentathlon-indoor' || table === 'decathlon-women';
  const formula = (women ? WOMEN : MEN)[event] as Formula;
  const beyond = beyondBase(event, mark, timing, formula.b);
  if (beyond <= 0n) return 0;
  const key = `${women} ${event} ${beyond}`;
  const points = known.get(key) ?? wholePoints(formula, beyond);
  known.set(key, points);
  return points;
}

interface CombinedLine {
  bib: string;
  place: number | null;
  equal: boolean;
  status: string | null;
  points: number;
  eventPoints: Record<string, number>;
}

function lineOf(sheet: CombinedSheet, row: CombinedRow): CombinedLine {
  const events = eventsOf(sheet.table);
  const timing = sheet.timing ?? 'electronic';
  const each = events.map((event) => combinedPoints(sheet.table, event, row.marks[event] ?? null, timing));
  const away = events.some((event) => row.marks[event] === 'DNS');
  return {
    bib: row.bib,
    place: null,
    equal: false,
    status: away ? 'DNF' : null,
    points: each.reduce((sum, points) => sum + points, 0),
    eventPoints: Object.fromEntries(events.map((event, at) => [event, each[at] ?? 0])),
  };
}

/** Finishers by their totals, equals in the original order and sharing the place; then who did not finish. */
export function combinedResults(sheet: CombinedSheet): CombinedLine[] {
  const lines = sheet.rows.map((row) => lineOf(sheet, row));
  const finished = lines.filter((line) => line.status === null);
  for (const line of finished) {
    line.place = 1 + finished.filter((other) => other.points > line.points).length;
    line.equal = finished.filter((other) => other.points === line.points).length > 1;
  }
  const placed = finished.sort((a, b) => (a.place ?? 0) - (b.place ?? 0));
  return [...placed, ...lines.filter((line) => line.status !== null)];
}
