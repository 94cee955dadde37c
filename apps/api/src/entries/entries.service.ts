import {
  athletes,
  competitions,
  competitors,
  entryChanges,
  entryTerms,
  meets,
  type CompetitionRow,
  type CompetitorRow,
  type Tx,
} from '#persistence';
import type { CategoryFinding } from '#rules';
import { Injectable } from '@nestjs/common';
import { ownDefinitions } from '../platform/competition/category.js';
import { createOnce } from '../platform/database/create-once.js';
import { Database } from '../platform/database/database.js';
import { notFound } from '../platform/errors/outcomes.js';
import type { UserError } from '../platform/errors/user-error.types.js';
import type { Identity } from '../platform/identity/identity.js';
import { isGiven } from '../platform/inputs/given.js';
import { CompetitionChanges } from '../platform/live/competition-changes.js';
import { rosterLine, type RosterLine } from '../platform/roster/roster.js';
import type { CompetitorEnterInput, CompetitorWithdrawInput, StartOrderSetInput } from './entries.inputs.js';
import { EnteringService, entryChange } from './entering.service.js';
import { noteBesideDraw, noteOrderBesideDraw } from './drawn-list.js';
import { entryCategory } from './entry-category.js';
import { closingProblem, isClosed, type EntryRole } from './entry-terms.js';
import type { NewLine } from './meet-lists.js';
import { coachProblem, newCompetitor, shapeProblem } from './new-competitor.js';
import { lockOpenList, lockStartList, orderProblem, takeOff } from './start-list.js';

export type Changed = { readonly competition: CompetitionRow } | { readonly refusal: UserError };

export type Entered =
  | {
      readonly competition: CompetitionRow;
      readonly line: RosterLine;
      readonly replayed: boolean;
      /** What somebody should look at. */
      readonly notices: readonly CategoryFinding[];
    }
  | { readonly refusal: UserError };

/** Start lists: who competes, under which bib, in which order. Every change is a new version of the competition. */
@Injectable()
export class EntriesService {
  constructor(
    private readonly database: Database,
    private readonly changes: CompetitionChanges,
    private readonly entering: EnteringService,
  ) {}

  /** A director enters anybody, a coach the athletes that are coached, until the entries close. */
  async enter(input: CompetitorEnterInput, viewer: Identity): Promise<Entered> {
    const { organisationId } = viewer;
    const competition = await this.database.read((at) =>
      competitions.find(at, organisationId, input.competitionId),
    );
    if (!competition) return { refusal: notFound('competition', ['competitionId']) };
    const role = entryRole(competition, input.athleteId ?? null, viewer);
    if (role === 'coach' && !(await this.isPublished(competition))) {
      return { refusal: notFound('competition', ['competitionId']) };
    }
    const malformed = (role === 'coach' ? coachProblem(input) : null) ?? shapeProblem(input, competition);
    if (malformed) return { refusal: malformed };
    const clubId = await this.clubAtEntry(input, organisationId);
    const line = { ...newCompetitor(input, organisationId), clubId };
    const made = await createOnce<CompetitorRow, Partial<CompetitorRow> & { readonly id: string }>(
      this.database,
      {
        wanted: askedFor(line),
        find: (tx, id) => competitors.find(tx, organisationId, id),
        insert: async (tx) => {
          const { meetId } = competition;
          const reason = input.reason ?? null;
          const done = await this.entering.enterAll(tx, [line], { meetId, viewer, role, reason });
          return 'faults' in done ? done.faults[0]!.refusal : null;
        },
      },
    );
    if ('refusal' in made) return made;
    const done = await this.entered(made.row);
    const notices = await this.noticesOf(done.competition, done.line);
    return { ...done, replayed: made.replayed, notices };
  }

  private async noticesOf(
    competition: CompetitionRow,
    { athlete, competitor }: RosterLine,
  ): Promise<readonly CategoryFinding[]> {
    const { organisationId, meetId } = competition;
    return this.database.read(async (at) => {
      const meet = (await meets.find(at, organisationId, meetId))!;
      const place = { competition, meet, ownDefinitions: await ownDefinitions(at, organisationId) };
      return entryCategory(place, { athlete, isGuest: competitor.guest }).notices;
    });
  }

  private async isPublished({ organisationId, meetId }: CompetitionRow): Promise<boolean> {
    const meet = await this.database.read((at) => meets.find(at, organisationId, meetId));
    return meet !== null && meet.publishedAt !== null;
  }

  /** A competitor is for the club of the day, also when the athlete has moved on later: it is kept with the entry. */
  private async clubAtEntry(
    { clubId, listedClub, athleteId }: CompetitorEnterInput,
    organisationId: string,
  ): Promise<string | null> {
    if (isGiven(clubId)) return clubId;
    if (isGiven(listedClub) || !isGiven(athleteId)) return null;
    return this.database.read(
      async (at) => (await athletes.find(at, organisationId, athleteId))?.clubId ?? null,
    );
  }

  /** Takes a competitor off the start list; who comes after moves up. Once entries are closed, with a reason. */
  async withdraw(
    { competitorId, reason = null }: CompetitorWithdrawInput,
    viewer: Identity,
  ): Promise<Changed> {
    const { organisationId } = viewer;
    return this.change(async (tx) => {
      const competitor = await competitors.find(tx, organisationId, competitorId);
      if (!competitor) return { refusal: notFound('competitor', ['competitorId']) };
      let role: EntryRole = 'coach';
      const { competitionId, athleteId } = competitor;
      const locked = await lockOpenList(
        tx,
        organisationId,
        competitionId,
        ['competitorId'],
        (competition) => {
          role = entryRole(competition, athleteId, viewer);
        },
      );
      if ('refusal' in locked) return locked;
      const terms = await entryTerms.latest(tx, organisationId, locked.competition.meetId);
      const refused =
        closingProblem(terms, { role, reason, now: new Date() }) ??
        (await takeOff(tx, locked.competition, competitor));
      if (refused) return { refusal: refused };
      const isLate = isClosed(terms, new Date());
      await entryChanges.insert(tx, [entryChange(competitor, { kind: 'withdrawn', isLate, reason, viewer })]);
      await noteBesideDraw(tx, competitor, 'withdrawn', viewer);
      return locked;
    });
  }

  /** Sets the order of competition, and flights with it. */
  async setOrder(
    { competitionId, expectedVersion, lines }: StartOrderSetInput,
    viewer: Identity,
  ): Promise<Changed> {
    const { organisationId } = viewer;
    return this.change(async (tx) => {
      const locked = await lockStartList(tx, competitionId, viewer, ['competitionId']);
      if ('refusal' in locked) return locked;
      const refused = await orderProblem(tx, locked.competition, expectedVersion, lines);
      if (refused) return { refusal: refused };
      await competitors.reposition(
        tx,
        organisationId,
        competitionId,
        lines.map((line) => line.competitorId),
      );
      for (const { competitorId, flight } of lines) {
        if (flight !== undefined) await competitors.update(tx, organisationId, competitorId, { flight });
      }
      await noteOrderBesideDraw(tx, locked.competition, viewer);
      return locked;
    });
  }

  /** Runs a change under the competition's lock and, when it was made, tells the readers. */
  private async change(work: (tx: Tx) => Promise<Changed>): Promise<Changed> {
    const done = await this.database.write(async (tx) => {
      const outcome = await work(tx);
      if ('refusal' in outcome) return outcome;
      const { organisationId, id } = outcome.competition;
      const version = await competitions.bumpVersion(tx, organisationId, id);
      return { competition: { ...outcome.competition, version } };
    });
    if ('competition' in done) this.announce(done.competition);
    return done;
  }

  private async entered(
    row: CompetitorRow,
  ): Promise<{ readonly competition: CompetitionRow; readonly line: RosterLine }> {
    const { organisationId, competitionId } = row;
    const found = await this.database.read(async (at) => {
      const competition = await competitions.find(at, organisationId, competitionId);
      const meet = competition && (await meets.find(at, organisationId, competition.meetId));
      return meet && { competition, line: await rosterLine(at, row, meet) };
    });
    if (!found) throw new Error('The competition of a new competitor is not there.');
    this.announce(found.competition);
    return found;
  }

  private announce({ id, version }: CompetitionRow): void {
    this.changes.announce({ competitionId: id, version });
  }
}

/** Throws FORBIDDEN for those who may not change this entry. */
function entryRole({ meetId }: CompetitionRow, athleteId: string | null, viewer: Identity): EntryRole {
  const isCoach = athleteId !== null && viewer.has('coach', athleteId);
  if (!isCoach) viewer.requireDirector(meetId);
  return viewer.mayDirect(meetId) ? 'director' : 'coach';
}

/**
 * What a request is known by when it is sent again: not the bib nor the mass that were found for it, for they may be
 * found otherwise then.
 */
function askedFor({
  bib,
  implementGrams,
  ...line
}: NewLine): Partial<CompetitorRow> & { readonly id: string } {
  return { ...line, ...(bib !== null && { bib }), ...(implementGrams !== null && { implementGrams }) };
}
