import type { CompetitionRow, MeetRow, TimetableRow } from '#persistence';
import { endOf, type StartDelay } from '#rules';
import { MEET_FORMAT, type MeetCompetition, type PublicCompetition, type PublicMeet } from '#scoreboard';
import { globalId } from '../platform/inputs/global-id.js';
import { competitionHead, meetHead, resultLine } from './heads.js';

/** The plan in force, and who begins later than planned. */
export interface Announced {
  readonly row: TimetableRow;
  readonly delays: ReadonlyMap<string, StartDelay>;
}

export interface MeetParts {
  readonly meet: MeetRow;
  readonly rows: readonly CompetitionRow[];
  /** Of the rows, in their order. */
  readonly competitions: readonly PublicCompetition[];
  readonly announced: Announced | null;
  readonly hasClubTable: boolean;
}

/** What everybody may see of a meet at a glance. */
export function meetSnapshot({ meet, rows, competitions, announced, hasClubTable }: MeetParts): PublicMeet {
  const changes = competitions.flatMap(({ changedAt }) => changedAt ?? []).sort();
  return {
    format: MEET_FORMAT,
    id: globalId('Meet', meet.id),
    version: competitions.reduce((sum, { version }) => sum + version, announced?.row.revision ?? 0),
    changedAt: changes.at(-1) ?? null,
    meet: meetHead(meet),
    competitions: competitions.map((one, at) => meetCompetition(one, rows[at]!.id, announced)),
    hasClubTable,
  };
}

const LEADING = 3;

function meetCompetition(
  competition: PublicCompetition,
  id: string,
  announced: Announced | null,
): MeetCompetition {
  const slot = announced?.row.slots.find(({ competitions }) => competitions.includes(id));
  const facility = announced?.row.facilities.find(({ key }) => key === slot?.facility);
  const { sex, age, stage, delay, stop, round, rounds, bar, rows } = competition;
  return {
    ...competitionHead(competition),
    ...{ sex, age, stage },
    facility: facility?.name ?? null,
    endsAt: slot ? new Date(endOf(slot)).toISOString() : null,
    competitors: rows.length,
    ...{ delay, stop, round, rounds },
    height: bar?.height ?? null,
    leaders: rows.filter(({ place }) => place !== null && place <= LEADING).map(resultLine),
  };
}
