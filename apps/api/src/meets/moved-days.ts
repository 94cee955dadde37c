const DAY_MS = 86_400_000;

/** Whole days from one day to another, `YYYY-MM-DD`; negative: backwards. */
export function daysBetween(from: string, to: string): number {
  return Math.round((Date.parse(to) - Date.parse(from)) / DAY_MS);
}

/** The day so many days later. */
export function movedDay(day: string, days: number): string {
  return new Date(Date.parse(day) + days * DAY_MS).toISOString().slice(0, 10);
}

/**
 * The same time of day by the clock of the place, so many days later: half past two stays half past two, also when
 * the clocks have been changed in between.
 */
export function movedInstant(at: number, days: number, timeZone: string): number {
  const moved = at + days * DAY_MS;
  const first = moved + offsetMs(at, timeZone) - offsetMs(moved, timeZone);
  // On the night of the change the correction itself may cross it.
  return moved + offsetMs(at, timeZone) - offsetMs(first, timeZone);
}

/** By how much the clock of the place is ahead of UTC at an instant. */
function offsetMs(at: number, timeZone: string): number {
  const parts = new Intl.DateTimeFormat('en', {
    ...{ timeZone, hourCycle: 'h23', year: 'numeric', month: 'numeric', day: 'numeric' },
    ...{ hour: 'numeric', minute: 'numeric', second: 'numeric' },
  }).formatToParts(new Date(at));
  const part = (type: Intl.DateTimeFormatPartTypes): number =>
    Number(parts.find((one) => one.type === type)!.value);
  const wall = Date.UTC(
    part('year'),
    part('month') - 1,
    part('day'),
    part('hour'),
    part('minute'),
    part('second'),
  );
  return wall - Math.floor(at / 1000) * 1000;
}
