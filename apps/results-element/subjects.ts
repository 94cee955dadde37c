import {
  clubResultsView,
  clubTableView,
  competitionView,
  meetView,
  newsBetween,
  type PublicClub,
  type PublicClubTable,
  type PublicCompetition,
  type PublicMeet,
  type Shown,
  type Tree,
  type Wording,
} from '#scoreboard';

export type Snapshot = PublicCompetition | PublicMeet | PublicClub | PublicClubTable;

/** What an element can be of, by the attribute that names it. */
export interface Subject {
  /** Also what its events are called. */
  readonly attribute: string;
  /** In the address of its document. */
  readonly folder: string;
  readonly hasEvents: boolean;
  readonly view: (snapshot: never, shown: Shown) => Tree[];
  readonly news: (before: never, now: never, wording: Wording) => string | null;
}

function subject<S extends Snapshot>(
  attribute: string,
  folder: string,
  hasEvents: boolean,
  view: (snapshot: S, shown: Shown) => Tree[],
  news: (before: S, now: S, wording: Wording) => string | null = () => null,
): Subject {
  return { attribute, folder, hasEvents, view, news };
}

export const SUBJECTS: readonly Subject[] = [
  subject<PublicCompetition>('competition', 'competitions', true, competitionView, newsBetween),
  subject<PublicMeet>('meet', 'meets', true, meetView, meetNews),
  subject<PublicClub>('club', 'clubs', false, clubResultsView),
  subject<PublicClubTable>('club-table', 'club-tables', true, clubTableView),
];

/** The first competition that stands otherwise than before. */
function meetNews(before: PublicMeet, now: PublicMeet, { sayCode }: Wording): string | null {
  const states = new Map(before.competitions.map(({ id, state }) => [id, state]));
  const changed = now.competitions.find(({ id, state }) => states.get(id) !== state);
  return changed ? `${changed.title}: ${sayCode('state', changed.state)}` : null;
}

/** Of the place of the meet, for times; of a club's results those of the latest one. */
export function timeZoneOf(snapshot: Snapshot): string {
  if ('meet' in snapshot) return snapshot.meet.timeZone;
  return snapshot.meets[0]?.meet.timeZone ?? 'UTC';
}
