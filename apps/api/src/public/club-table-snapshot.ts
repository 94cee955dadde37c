import type { MeetRow } from '#persistence';
import { CLUB_TABLE_FORMAT, type ClubLine, type PublicClubTable, type ScoredEvent } from '#scoreboard';
import { globalId } from '../platform/inputs/global-id.js';
import type { CountedClubs } from '../scoring/club-table.service.js';
import { meetHead } from './heads.js';

type Line = CountedClubs['table']['competitions'][number]['lines'][number];

/** What everybody may see of the clubs of a meet. Whose points they are is in the tables of the competitions. */
export function clubTableSnapshot(meet: MeetRow, { table, version }: CountedClubs): PublicClubTable {
  return {
    format: CLUB_TABLE_FORMAT,
    id: globalId('Meet', meet.id),
    version,
    meet: meetHead(meet),
    isProvisional: table.isProvisional,
    open: table.openCompetitions.map(({ title }) => title),
    clubs: table.combined.map(clubLine),
    divisions: table.divisions.map(({ name, clubs }) => ({ name, clubs: clubs.map(clubLine) })),
    events: [
      ...table.competitions.map(({ competition, isProvisional, lines }) =>
        scored(competition.title, isProvisional, false, lines),
      ),
      ...table.combinedEvents.map(({ combinedEvent, isProvisional, lines }) =>
        scored(combinedEvent.title, isProvisional, false, lines),
      ),
      ...table.enteredResults.map(({ result, lines }) => scored(result.title, false, true, lines)),
    ],
  };
}

function clubLine({ place, club, points, reason }: ClubLine): ClubLine {
  return { place, club, points, reason };
}

/** Points of one club in the order of the result; none is not worth a line. */
function scored(
  title: string,
  isProvisional: boolean,
  isEntered: boolean,
  lines: readonly Line[],
): ScoredEvent {
  const points = lines.flatMap(({ club, points: own }) =>
    club === null || own === '0' ? [] : [{ club, points: own }],
  );
  return { title, isProvisional, isEntered, points };
}
