import type { MeetRow } from '#persistence';
import type { CompetitionHead, MeetHead, PublicCompetition, ResultLine, Row } from '#scoreboard';
import { globalId } from '../platform/inputs/global-id.js';

export function meetHead(meet: MeetRow): MeetHead {
  return {
    id: globalId('Meet', meet.id),
    name: meet.name,
    venue: meet.venue,
    startsOn: meet.startsOn,
    endsOn: meet.endsOn,
    timeZone: meet.timeZone,
  };
}

export function competitionHead(competition: PublicCompetition): CompetitionHead {
  const { id, version, title, event, startsAt, state } = competition;
  return { id, version, title, event, startsAt, state };
}

export function resultLine(row: Row): ResultLine {
  const { competitor, athlete, bib, name, club, place, isEqual, mark, wind, status } = row;
  return { competitor, athlete, bib, name, club, place, isEqual, mark, wind, status };
}
