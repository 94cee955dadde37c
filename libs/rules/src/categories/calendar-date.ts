/** A day as `YYYY-MM-DD` (ISO 8601, the Gregorian calendar, years 0001 to 9999). Such texts sort as the days do. */
const DATE = /^(\d{4})-(\d\d)-(\d\d)$/;

export interface CalendarDate {
  readonly year: number;
  /** 1 to 12. */
  readonly month: number;
  readonly day: number;
}

/** Reads a day; `null` when it is malformed, or when there is no such day. */
export function parseDate(text: string): CalendarDate | null {
  const parts = DATE.exec(text);
  if (!parts) return null;
  const date = { year: Number(parts[1]), month: Number(parts[2]), day: Number(parts[3]) };
  const isDay = date.year >= 1 && date.day >= 1 && date.day <= daysIn(date.year, date.month);
  return isDay ? date : null;
}

export function isDate(text: string): boolean {
  return parseDate(text) !== null;
}

export function formatDate({ year, month, day }: CalendarDate): string {
  return `${String(year).padStart(4, '0')}-${twoDigits(month)}-${twoDigits(day)}`;
}

/** Negative when `a` is earlier. */
export function compareDates(a: CalendarDate, b: CalendarDate): number {
  return a.year - b.year || a.month - b.month || a.day - b.day;
}

/**
 * Completed years of life on a day. Who was born on 29 February is a year older on 1 March where there is no such day
 * (constructed: the books do not say; some laws count 28 February). Negative before birth.
 */
export function ageOn(birth: CalendarDate, on: CalendarDate): number {
  const hadBirthday = on.month > birth.month || (on.month === birth.month && on.day >= birth.day);
  return on.year - birth.year - (hadBirthday ? 0 : 1);
}

/** 0 for a month that does not exist. */
function daysIn(year: number, month: number): number {
  if (month === 2) return isLeapYear(year) ? 29 : 28;
  return [31, 0, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31][month - 1] ?? 0;
}

function isLeapYear(year: number): boolean {
  return year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0);
}

function twoDigits(value: number): string {
  return String(value).padStart(2, '0');
}
