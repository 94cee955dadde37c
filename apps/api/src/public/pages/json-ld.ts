import type { Event, Place, SportsEvent, WithContext } from 'schema-dts';
import type { Delay, MeetHead, PublicCompetition, PublicMeet, Row } from '#scoreboard';

/*
 * What search engines are told, in the vocabulary of schema.org. Only those are named who have results under a whole
 * name.
 */

/** Where the page of something is, with the server's name. */
export type AbsoluteAddress = (kind: 'meet' | 'competition' | 'athlete', id: string) => string;

export function meetData(
  { meet, competitions }: PublicMeet,
  address: AbsoluteAddress,
): WithContext<SportsEvent> {
  return {
    '@context': 'https://schema.org',
    ...meetEvent(meet, address),
    eventStatus: 'https://schema.org/EventScheduled',
    eventAttendanceMode: 'https://schema.org/OfflineEventAttendanceMode',
    subEvent: competitions.map(
      ({ id, title, startsAt, delay }): SportsEvent => ({
        '@type': 'SportsEvent',
        '@id': address('competition', id),
        url: address('competition', id),
        name: title,
        ...timesOf(startsAt, delay),
        location: placeOf(meet),
      }),
    ),
  };
}

export function competitionData(
  { id, title, meet, startsAt, delay, rows }: PublicCompetition,
  address: AbsoluteAddress,
): WithContext<SportsEvent> {
  return {
    '@context': 'https://schema.org',
    '@type': 'SportsEvent',
    '@id': address('competition', id),
    url: address('competition', id),
    name: `${title}, ${meet.name}`,
    sport: 'Athletics',
    ...timesOf(startsAt ?? meet.startsOn, delay),
    eventAttendanceMode: 'https://schema.org/OfflineEventAttendanceMode',
    location: placeOf(meet),
    superEvent: meetEvent(meet, address),
    competitor: rows.flatMap((row) => personOf(row, address)),
  };
}

function meetEvent(meet: MeetHead, address: AbsoluteAddress) {
  return {
    '@type': 'SportsEvent',
    '@id': address('meet', meet.id),
    url: address('meet', meet.id),
    name: meet.name,
    sport: 'Athletics',
    startDate: meet.startsOn,
    endDate: meet.endsOn,
    location: placeOf(meet),
  } as const satisfies Event;
}

function placeOf({ venue, name }: MeetHead): Place {
  return { '@type': 'Place', name: venue === '' ? name : venue };
}

function timesOf(startsAt: string | null, delay: Delay | null) {
  if (delay !== null) {
    return {
      startDate: delay.startsAt,
      previousStartDate: delay.plannedAt,
      eventStatus: 'https://schema.org/EventRescheduled',
    } as const;
  }
  const eventStatus = 'https://schema.org/EventScheduled' as const;
  return startsAt === null ? { eventStatus } : ({ startDate: startsAt, eventStatus } as const);
}

function personOf({ athlete, name, club }: Row, address: AbsoluteAddress) {
  if (athlete === null) return [];
  const person = { '@type': 'Person', name, url: address('athlete', athlete) } as const;
  return [club === null ? person : { ...person, memberOf: { '@type': 'SportsTeam', name: club } as const }];
}
