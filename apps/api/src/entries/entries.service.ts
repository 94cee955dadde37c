import {
  athletes,
  competitions,
  competitors,
  meets,
  type CompetitionRow,
  type CompetitorRow,
  type Tx,
} from '#persistence';
import type { CategoryFinding } from '#rules';
import { Injectable } from '@nestjs/common';
import { createOnce } from '../platform/database/create-once.js';
import { Database } from '../platform/database/database.js';
import { notFound } from '../platform/errors/outcomes.js';
import type { UserError } from '../platform/errors/user-error.types.js';
import type { Identity } from '../platform/identity/identity.js';
import { isGiven } from '../platform/inputs/given.js';
import { CompetitionChanges } from '../platform/live/competition-changes.js';
import { rosterLine, type RosterLine } from '../platform/roster/roster.js';
import type { CompetitorEnterInput, StartOrderSetInput } from './entries.inputs.js';
import { entryProblem, newCompetitor, nextPosition, shapeProblem } from './new-competitor.js';
import { entryCategory } from './entry-category.js';
import { flightProblem, noteBesideDraw, noteOrderBesideDraw } from './drawn-list.js';
import { lockStartList, orderProblem, takeOff } from './start-list.js';

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
  ) {}

  async enter(input: CompetitorEnterInput, viewer: Identity): Promise<Entered> {
    const { organisationId } = viewer;
    const competition = await this.database.read((at) =>
      competitions.find(at, organisationId, input.competitionId),
    );
    if (!competition) return { refusal: notFound('competition', ['competitionId']) };
    viewer.requireDirector(competition.meetId);
    const malformed = shapeProblem(input, competition);
    if (malformed) return { refusal: malformed };
    const clubId = await this.clubAtEntry(input, organisationId);
    const { implementGrams, ...line } = { ...newCompetitor(input, organisationId), clubId };
    const category = await this.database.read((at) => entryCategory(at, competition, input));
    // A mass that follows from the category is no part of the request: it may follow otherwise when it is sent again.
    const wanted = implementGrams === null ? line : { ...line, implementGrams };
    const made = await createOnce<CompetitorRow, typeof wanted>(this.database, {
      wanted,
      find: (tx, id) => competitors.find(tx, organisationId, id),
      insert: async (tx) =>
        category.refused ??
        this.insert(tx, { ...line, implementGrams: implementGrams ?? category.grams }, viewer),
    });
    if ('refusal' in made) return made;
    const { notices } = category;
    return { ...(await this.entered(made.row)), replayed: made.replayed, notices };
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

  /** Takes a competitor off the start list; who comes after moves up. */
  async withdraw(competitorId: string, viewer: Identity): Promise<Changed> {
    const { organisationId } = viewer;
    return this.change(async (tx) => {
      const competitor = await competitors.find(tx, organisationId, competitorId);
      if (!competitor) return { refusal: notFound('competitor', ['competitorId']) };
      const locked = await lockStartList(tx, competitor.competitionId, viewer, ['competitorId']);
      if ('refusal' in locked) return locked;
      const refused = await takeOff(tx, locked.competition, competitor);
      if (refused) return { refusal: refused };
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

  private async insert(
    tx: Tx,
    wanted: Omit<CompetitorRow, 'position'>,
    viewer: Identity,
  ): Promise<UserError | null> {
    const locked = await lockStartList(tx, wanted.competitionId, viewer, ['competitionId']);
    if ('refusal' in locked) return locked.refusal;
    const { organisationId, competitionId } = wanted;
    const list = await competitors.ofCompetition(tx, organisationId, competitionId);
    const refused = (await entryProblem(tx, wanted, list)) ?? (await flightProblem(tx, wanted));
    if (refused) return refused;
    const row = { ...wanted, position: nextPosition(list) };
    await competitors.insert(tx, [row]);
    await noteBesideDraw(tx, row, 'entered late', viewer);
    await competitions.bumpVersion(tx, organisationId, competitionId);
    return null;
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
