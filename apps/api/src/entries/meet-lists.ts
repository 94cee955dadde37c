import type { CompetitorRow, EntryTermsRow } from '#persistence';
import { refusal, type Refusal } from '../platform/errors/user-error.types.js';
import { MAX_COMPETITORS } from './entries.inputs.js';

/** Somebody who is to come to the end of a start list. */
export type NewLine = Omit<CompetitorRow, 'position' | 'bib'> & {
  /** `null`: the one that the athlete has at the meet already, or the next number. */
  readonly bib: string | null;
};

/** What decides about one competition. */
interface List {
  readonly bibs: Set<string>;
  readonly athletes: Set<string>;
  /** Competitors of each club, guests aside. */
  readonly clubs: Map<string, number>;
  size: number;
  lastPosition: number;
}

type Limits = Pick<EntryTermsRow, 'mostPerClub' | 'mostPerAthlete' | 'competitionLimits'>;

/**
 * The start lists of a meet as they grow, with the limits that the meet sets. Nothing is looked up: whoever holds the
 * locks gives the lists once and asks about one entry after the other.
 */
export class MeetLists {
  private readonly lists = new Map<string, List>();
  /** Of each athlete the bib at the meet, and in how many competitions that one can enter. */
  private readonly ofAthlete = new Map<string, { readonly bib: string; entries: number }>();
  private readonly mostOfClubs: ReadonlyMap<string, number | null>;
  private highest = 0;

  /** `drawn`: finals that a qualification fills; nobody is entered there twice over. */
  constructor(
    rows: readonly CompetitorRow[],
    private readonly limits: Limits | null,
    private readonly drawn: ReadonlySet<string> = new Set(),
  ) {
    this.mostOfClubs = new Map(
      limits?.competitionLimits.map(({ competitionId, mostPerClub }) => [competitionId, mostPerClub]),
    );
    for (const row of rows) this.take(row);
  }

  /** Null: the entry fits. */
  problemOf(line: NewLine): Refusal | null {
    const list = this.listOf(line.competitionId);
    if (list.size >= MAX_COMPETITORS) return LIST_FULL;
    if (line.bib !== null && list.bibs.has(line.bib)) return BIB_TAKEN;
    if (line.athleteId !== null && list.athletes.has(line.athleteId)) return ALREADY_ENTERED;
    return line.guest ? null : (this.clubProblem(line, list) ?? this.athleteProblem(line));
  }

  /** Numbers that are given out come after those that these entries bring along. */
  reserve(lines: readonly NewLine[]): void {
    for (const { bib } of lines) this.count(bib ?? '');
  }

  /** Puts the entry at the end of its list. */
  add(line: NewLine): CompetitorRow {
    const list = this.listOf(line.competitionId);
    const row = { ...line, bib: line.bib ?? this.bibFor(line, list), position: list.lastPosition + 1 };
    this.take(row);
    return row;
  }

  private clubProblem({ clubId, competitionId }: NewLine, list: List): Refusal | null {
    const own = this.mostOfClubs.get(competitionId);
    const most = own === undefined ? (this.limits?.mostPerClub ?? null) : own;
    if (clubId === null || most === null || (list.clubs.get(clubId) ?? 0) < most) return null;
    return refusal({
      code: 'CLUB_FULL',
      path: ['clubId'],
      message: `The meet takes at most ${most} of one club in this competition.`,
      remedy: 'Withdraw another entry of the club, enter as a guest, or have the director change the limit.',
    });
  }

  private athleteProblem({ athleteId, competitionId }: NewLine): Refusal | null {
    const most = this.limits?.mostPerAthlete ?? null;
    if (athleteId === null || most === null || this.drawn.has(competitionId)) return null;
    if ((this.ofAthlete.get(athleteId)?.entries ?? 0) < most) return null;
    return refusal({
      code: 'ATHLETE_FULL',
      path: ['athleteId'],
      message: `The meet takes an athlete in at most ${most} competitions.`,
      remedy: 'Withdraw another entry of the athlete, or have the director change the limit.',
    });
  }

  private bibFor({ athleteId }: NewLine, list: List): string {
    const own = athleteId === null ? undefined : this.ofAthlete.get(athleteId)?.bib;
    return own !== undefined && !list.bibs.has(own) ? own : String(this.highest + 1);
  }

  private take({ competitionId, athleteId, clubId, bib, position, guest }: CompetitorRow): void {
    const list = this.listOf(competitionId);
    list.bibs.add(bib);
    list.size += 1;
    list.lastPosition = Math.max(list.lastPosition, position);
    if (clubId !== null && !guest) list.clubs.set(clubId, (list.clubs.get(clubId) ?? 0) + 1);
    this.count(bib);
    if (athleteId === null) return;
    list.athletes.add(athleteId);
    const known = this.ofAthlete.get(athleteId) ?? { bib, entries: 0 };
    if (!guest && !this.drawn.has(competitionId)) known.entries += 1;
    this.ofAthlete.set(athleteId, known);
  }

  private count(bib: string): void {
    if (/^\d{1,9}$/.test(bib)) this.highest = Math.max(this.highest, Number(bib));
  }

  private listOf(competitionId: string): List {
    const known = this.lists.get(competitionId);
    if (known) return known;
    const empty = { bibs: new Set<string>(), athletes: new Set<string>(), clubs: new Map<string, number>() };
    const list = { ...empty, size: 0, lastPosition: 0 };
    this.lists.set(competitionId, list);
    return list;
  }
}

const LIST_FULL = refusal({
  code: 'LIST_FULL',
  message: `A competition has at most ${MAX_COMPETITORS} competitors.`,
  remedy: 'Make another competition, such as a second group.',
});

const BIB_TAKEN = refusal({
  code: 'BIB_TAKEN',
  path: ['bib'],
  message: 'Another competitor of this competition has the bib.',
  remedy: 'Send another one, or none for the next that is free.',
});

const ALREADY_ENTERED = refusal({
  code: 'ALREADY_ENTERED',
  path: ['athleteId'],
  message: 'The athlete is on the start list already.',
  remedy: 'Leave the entry as it is, or withdraw it first.',
});
