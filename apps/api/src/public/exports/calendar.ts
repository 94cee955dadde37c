import ical, { ICalCalendarMethod, ICalEventStatus } from 'ical-generator';
import type { PublicMeet } from '#scoreboard';

export const CALENDAR_TYPE = 'text/calendar; charset=utf-8';

/**
 * The timetable of a meet as a calendar (RFC 5545) in UTC. Whoever subscribes to it sees what is moved: an event keeps its
 * id, and its sequence rises with the version.
 * @param origin of this server, for the addresses of the pages
 */
export function meetCalendar({ meet, competitions, changedAt }: PublicMeet, origin: string): string {
  const calendar = ical({
    name: meet.name,
    timezone: null,
    prodId: { company: 'Sectorline', product: 'Timetable', language: 'EN' },
    method: ICalCalendarMethod.PUBLISH,
  });
  for (const { id, title, startsAt, endsAt, facility, delay, version } of competitions) {
    if (startsAt === null) continue;
    const place = [facility, meet.venue].filter((part) => part !== null && part !== '').join(', ');
    calendar.createEvent({
      id: `${id}@sectorline`,
      // When it was made: the same for the same document, so that it can be kept.
      stamp: new Date(changedAt ?? startsAt),
      sequence: version,
      start: new Date(startsAt),
      end: endsAt === null ? null : new Date(endsAt),
      summary: title,
      location: place === '' ? null : place,
      description: delay?.reason ?? null,
      url: origin === '' ? null : `${origin}/competitions/${id}`,
      status: ICalEventStatus.CONFIRMED,
    });
  }
  return calendar.toString();
}
