import { textScalar } from './text-scalar.js';

const FORM = /^(\d{4})-(\d{2})-(\d{2})$/;

/** True for a day that exists in the Gregorian calendar, from the year 1900 on. */
function isCalendarDate(text: string): boolean {
  const parts = FORM.exec(text);
  if (!parts) return false;
  const [year, month, day] = parts.slice(1).map(Number) as [number, number, number];
  const date = new Date(Date.UTC(year, month - 1, day));
  return year >= 1900 && date.getUTCMonth() === month - 1 && date.getUTCDate() === day;
}

export const CalendarDate = textScalar({
  name: 'Date',
  description: 'A day of the calendar, `YYYY-MM-DD` (RFC 3339 full-date), without a time zone.',
  expected: 'a day that exists, from 1900 on, as YYYY-MM-DD',
  read: (text) => (isCalendarDate(text) ? text : null),
});
