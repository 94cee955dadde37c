import type { CompetitionRow, MeetRow } from '#persistence';

const MINUTES_OF_HOUR = 60;

/** Making one takes longer than using it a hundred times. */
const clocks = new Map<string, Intl.DateTimeFormat>();

function clockOf(timeZone: string): Intl.DateTimeFormat {
  const known = clocks.get(timeZone);
  if (known) return known;
  const clock = new Intl.DateTimeFormat('en-CA', {
    timeZone,
    ...{ year: 'numeric', month: '2-digit', day: '2-digit' },
    ...{ hour: '2-digit', minute: '2-digit', hourCycle: 'h23' },
  });
  clocks.set(timeZone, clock);
  return clock;
}

/** The day of a competition by the clock of the place, and the minute of it; without a time, at its beginning. */
export function momentOf(
  { startsAt }: Pick<CompetitionRow, 'startsAt'>,
  { startsOn, timeZone }: Pick<MeetRow, 'startsOn' | 'timeZone'>,
): { readonly onDate: string; readonly minutes: number } {
  if (startsAt === null) return { onDate: startsOn, minutes: 0 };
  const parts = clockOf(timeZone).formatToParts(new Date(startsAt));
  const part = (type: Intl.DateTimeFormatPartTypes): string =>
    parts.find((one) => one.type === type)?.value ?? '';
  return {
    onDate: `${part('year')}-${part('month')}-${part('day')}`,
    minutes: Number(part('hour')) * MINUTES_OF_HOUR + Number(part('minute')),
  };
}
