import {
  athletes,
  clubs,
  combinedEvents,
  competitions,
  competitors,
  draws,
  entryChanges,
  entryTerms,
  meets,
  qualifications,
  type AthleteRow,
  type ClubRow,
  type CompetitionRow,
  type CompetitorRow,
  type DrawRow,
  type EntryTermsRow,
  type MeetRow,
  type NewEntryChange,
  type Tx,
} from '#persistence';
import type { CategoryDefinition, CategoryFinding } from '#rules';
import { Injectable } from '@nestjs/common';
import { ownDefinitions } from '../platform/competition/category.js';
import { notFound } from '../platform/errors/outcomes.js';
import type { Refusal } from '../platform/errors/user-error.types.js';
import type { Identity } from '../platform/identity/identity.js';
import { uuidV7 } from '../platform/inputs/uuid-v7.js';
import { flightProblem, noteBesideDraw } from './drawn-list.js';
import { entryCategory } from './entry-category.js';
import { closingProblem, isClosed, type EntryRole } from './entry-terms.js';
import { MeetLists, type NewLine } from './meet-lists.js';
import { lockOpenList } from './start-list.js';

/** Who enters whom, and why so late. */
export interface Entering {
  readonly meetId: string;
  readonly viewer: Identity;
  readonly role: EntryRole;
  readonly reason: string | null;
  /** Athletes who are stored in the same transaction, so that they need not be looked up. */
  readonly known?: readonly AthleteRow[];
  /** The same of clubs. */
  readonly knownClubs?: readonly ClubRow[];
}

export interface EnteredLine {
  readonly row: CompetitorRow;
  /** What somebody should look at. */
  readonly notices: readonly CategoryFinding[];
}

/** What keeps a line out, by its place among those that were asked for. */
export interface EntryFault {
  readonly index: number;
  readonly refusal: Refusal;
}

export type EnteredAll =
  | { readonly entered: readonly EnteredLine[] }
  | { readonly faults: readonly EntryFault[] };

/** All that decides about entries at one meet; competitions are locked. */
interface Desk {
  readonly meet: MeetRow;
  readonly terms: EntryTermsRow | null;
  readonly own: readonly CategoryDefinition[];
  readonly lists: MeetLists;
  readonly open: ReadonlyMap<string, CompetitionRow>;
  /** Why a competition takes nobody any more. */
  readonly closed: ReadonlyMap<string, Refusal>;
  readonly drawn: ReadonlyMap<string, DrawRow>;
  readonly athletes: ReadonlyMap<string, AthleteRow>;
  readonly clubs: ReadonlySet<string>;
}

/** Puts competitors on start lists: one, or those of a table at once. The one way onto a list by entering. */
@Injectable()
export class EnteringService {
  /**
   * All of them or none, under the locks of the meet and its competitions. With `isDryRun` nothing is stored. The
   * caller says who may, and announces the competitions after the commit. A fixed number of statements, and a few for
   * each competition.
   */
  async enterAll(
    tx: Tx,
    lines: readonly NewLine[],
    entering: Entering,
    isDryRun = false,
  ): Promise<EnteredAll> {
    const { meetId, viewer, role, reason } = entering;
    const { organisationId } = viewer;
    if (!(await meets.lock(tx, organisationId, meetId))) {
      return { faults: [{ index: 0, refusal: notFound('meet', ['meetId']) }] };
    }
    const desk = await this.deskFor(tx, lines, entering);
    const late = closingProblem(desk.terms, { role, reason, now: new Date() });
    if (late) return { faults: [{ index: 0, refusal: late }] };
    const faults: EntryFault[] = [];
    desk.lists.reserve(lines);
    const entered = lines.flatMap((line, index): EnteredLine[] => {
      const found = findingsOf(line, desk);
      if ('refusal' in found) faults.push({ index, refusal: found.refusal });
      return 'refusal' in found ? [] : [{ row: desk.lists.add(found.line), notices: found.notices }];
    });
    if (faults.length > 0) return { faults };
    if (!isDryRun) await this.store(tx, entered, desk, entering);
    return { entered };
  }

  private async deskFor(
    tx: Tx,
    lines: readonly NewLine[],
    { meetId, viewer: { organisationId }, known = [], knownClubs = [] }: Entering,
  ): Promise<Desk> {
    const [open, closed] = [new Map<string, CompetitionRow>(), new Map<string, Refusal>()];
    for (const id of [...new Set(lines.map(({ competitionId }) => competitionId))].sort()) {
      const locked = await lockOpenList(tx, organisationId, id, ['competitionId'], () => undefined);
      if ('refusal' in locked) closed.set(id, locked.refusal);
      else if (locked.competition.meetId === meetId) open.set(id, locked.competition);
      else closed.set(id, notFound('competition', ['competitionId']));
    }
    const all = (await competitions.ofMeet(tx, organisationId, meetId)).map(({ id }) => id);
    const terms = await entryTerms.latest(tx, organisationId, meetId);
    const rows = await competitors.ofCompetitions(tx, organisationId, all);
    const drawn = await draws.ofCompetitions(tx, organisationId, [...open.keys()]);
    const there = new Set(known.map(({ id }) => id));
    const athleteIds = present(lines.map(({ athleteId }) => athleteId)).filter((id) => !there.has(id));
    const clubIds = present(lines.map(({ clubId }) => clubId));
    const found = athleteIds.length > 0 ? await athletes.byIds(tx, organisationId, athleteIds) : [];
    const foundClubs = clubIds.length > 0 ? await clubs.byIds(tx, organisationId, clubIds) : [];
    return {
      ...{ meet: (await meets.find(tx, organisationId, meetId))!, terms, open, closed },
      own: await ownDefinitions(tx, organisationId),
      lists: new MeetLists(rows, terms, await this.filledOtherwise(tx, organisationId, meetId)),
      drawn: new Map(drawn.map((one) => [one.competitionId, one])),
      athletes: new Map([...known, ...found].map((one) => [one.id, one])),
      clubs: new Set([...foundClubs, ...knownClubs].map(({ id }) => id)),
    };
  }

  /** Competitions that are no entries of their own: finals of qualifications, parts of combined events. */
  private async filledOtherwise(tx: Tx, organisationId: string, meetId: string): Promise<Set<string>> {
    const finals = await qualifications.ofMeets(tx, organisationId, [meetId]);
    const combined = await combinedEvents.ofMeets(tx, organisationId, [meetId]);
    const ids = combined.map(({ id }) => id);
    const links = ids.length > 0 ? await combinedEvents.linksOf(tx, organisationId, ids) : [];
    return new Set([
      ...finals.flatMap(({ finalId }) => finalId ?? []),
      ...links.map(({ competitionId }) => competitionId),
    ]);
  }

  private async store(
    tx: Tx,
    entered: readonly EnteredLine[],
    { terms, drawn, open }: Desk,
    { viewer, reason }: Entering,
  ): Promise<void> {
    const rows = entered.map(({ row }) => row);
    await competitors.insert(tx, rows);
    const isLate = isClosed(terms, new Date());
    await entryChanges.insert(
      tx,
      rows.map((row) => entryChange(row, { kind: 'entered', isLate, reason, viewer })),
    );
    for (const row of rows) {
      if (drawn.has(row.competitionId)) await noteBesideDraw(tx, row, 'entered late', viewer);
    }
    for (const id of open.keys()) await competitions.bumpVersion(tx, viewer.organisationId, id);
  }
}

/** The entry as it would stand on the list, or what keeps it out. */
function findingsOf(
  line: NewLine,
  desk: Desk,
): { readonly line: NewLine; readonly notices: readonly CategoryFinding[] } | { readonly refusal: Refusal } {
  const { organisationId, competitionId, athleteId, clubId } = line;
  const competition = desk.open.get(competitionId);
  if (!competition) {
    return { refusal: desk.closed.get(competitionId) ?? notFound('competition', ['competitionId']) };
  }
  const athlete = athleteId === null ? null : (desk.athletes.get(athleteId) ?? null);
  if (athleteId !== null && athlete?.organisationId !== organisationId) {
    return { refusal: notFound('athlete', ['athleteId']) };
  }
  if (clubId !== null && !desk.clubs.has(clubId)) return { refusal: notFound('club', ['clubId']) };
  const place = { competition, meet: desk.meet, ownDefinitions: desk.own };
  const category = entryCategory(place, { athlete, isGuest: line.guest });
  const refused =
    category.refused ??
    desk.lists.problemOf(line) ??
    flightProblem(desk.drawn.get(competitionId) ?? null, line.flight);
  if (refused) return { refusal: refused };
  const implementGrams = line.implementGrams ?? category.grams;
  return { line: { ...line, implementGrams }, notices: category.notices };
}

/** What is kept of somebody coming to a list or leaving it; never a name. */
export function entryChange(
  { organisationId, competitionId, id, bib, athleteId, clubId }: CompetitorRow,
  {
    kind,
    isLate,
    reason,
    viewer,
  }: Pick<NewEntryChange, 'kind' | 'isLate' | 'reason'> & { readonly viewer: Identity },
): NewEntryChange {
  return {
    ...{ organisationId, id: uuidV7(), competitionId, competitorId: id, kind, bib, athleteId, clubId },
    ...{ isLate, reason, madeBy: viewer.holder ?? '' },
  };
}

function present(ids: readonly (string | null)[]): string[] {
  return [...new Set(ids.flatMap((id) => id ?? []))];
}
