import {
  combinedEntrants,
  combinedEvents,
  competitions,
  competitors,
  draws,
  meets,
  type CompetitionRow,
  type MeetRow,
  type Reads,
  type Tx,
} from '#persistence';
import { Injectable } from '@nestjs/common';
import { Database } from '../platform/database/database.js';
import { notFound } from '../platform/errors/outcomes.js';
import type { Refusal } from '../platform/errors/user-error.types.js';
import type { Identity } from '../platform/identity/identity.js';
import { CompetitionChanges, type CompetitionChange } from '../platform/live/competition-changes.js';
import { rostersOf, type RosterLine } from '../platform/roster/roster.js';
import { assignBibs, type AssignedBib, type Wearer } from './assignment.js';
import type { BibsAssignInput } from './bibs.inputs.js';

/** A bib of a meet, with the lines of start lists on which it stands. */
export interface MeetBib extends AssignedBib {
  readonly lines: readonly RosterLine[];
}

interface MeetWearers {
  readonly wearers: readonly (Wearer & { readonly lines: readonly RosterLine[] })[];
  /** Bibs of combined events whose entrants are on no start list yet. */
  readonly taken: readonly string[];
}

/** Bibs of a whole meet: one for each who competes, in however many competitions. */
@Injectable()
export class BibsService {
  constructor(
    private readonly database: Database,
    private readonly changes: CompetitionChanges,
  ) {}

  /** Gives everybody a bib, or shows which; all in one transaction. */
  async assign(
    { meetId, order, from, blockStep = null, isKeeping, isPreview }: BibsAssignInput,
    viewer: Identity,
  ): Promise<
    { readonly bibs: readonly MeetBib[]; readonly changed: number } | { readonly refusal: Refusal }
  > {
    viewer.requireDirector(meetId);
    const { organisationId } = viewer;
    const done = await this.database.write(async (tx) => {
      if (!(await meets.lock(tx, organisationId, meetId))) return { refusal: notFound('meet', ['meetId']) };
      const meet = (await meets.find(tx, organisationId, meetId))!;
      const rows = await lockAll(tx, organisationId, meetId);
      const { wearers, taken } = await wearersOf(tx, meet, rows);
      const lines = new Map(wearers.map((one) => [one.key, one.lines]));
      const given = assignBibs(wearers, { order, from, blockStep, isKeeping }, taken);
      const bibs = given.map((one): MeetBib => ({ ...one, lines: lines.get(one.wearer.key)! }));
      const wanted = bibs.flatMap(({ bib, wearer, lines: own }) =>
        wearer.isFixed
          ? []
          : own.filter(({ competitor }) => competitor.bib !== bib).map((line) => ({ line, bib })),
      );
      if (isPreview) return { bibs, changed: wanted.length, announced: [] };
      await competitors.setBibs(
        tx,
        organisationId,
        wanted.map(({ line, bib }) => ({ id: line.competitor.id, bib })),
      );
      const ids = new Set(wanted.map(({ line }) => line.competitor.competitionId));
      const announced: CompetitionChange[] = [];
      for (const competitionId of ids) {
        const version = await competitions.bumpVersion(tx, organisationId, competitionId);
        announced.push({ competitionId, version });
      }
      return { bibs, changed: wanted.length, announced };
    });
    if ('refusal' in done) return done;
    for (const change of done.announced) this.changes.announce(change);
    return done;
  }

  /** Everybody of the meet with the bib that is worn; who wears two stands there twice. In the order of bibs. */
  async of(meet: MeetRow, rows: readonly CompetitionRow[]): Promise<MeetBib[]> {
    const { wearers } = await this.database.snapshot((at) => wearersOf(at, meet, rows));
    const bibs = wearers.flatMap((wearer) =>
      [...new Set(wearer.bibs)].map((bib): MeetBib => ({ bib, wearer, lines: wearer.lines })),
    );
    return bibs.toSorted((a, b) => BY_NUMBER.compare(a.bib, b.bib));
  }
}

const BY_NUMBER = new Intl.Collator('en', { numeric: true });

/** In the order of ids, as everybody who locks several. */
async function lockAll(tx: Tx, organisationId: string, meetId: string): Promise<CompetitionRow[]> {
  const rows = await competitions.ofMeet(tx, organisationId, meetId);
  for (const id of rows.map((row) => row.id).sort()) await competitions.lock(tx, organisationId, id);
  return competitions.ofMeet(tx, organisationId, meetId);
}

async function wearersOf(at: Reads, meet: MeetRow, rows: readonly CompetitionRow[]): Promise<MeetWearers> {
  const { organisationId } = meet;
  const ids = rows.map(({ id }) => id);
  const rosters = await rostersOf(
    at,
    rows.map((competition) => ({ competition, meet })),
  );
  const drawn = new Set(
    (await draws.ofCompetitions(at, organisationId, ids)).map((one) => one.competitionId),
  );
  const combined = await combinedEvents.ofMeets(at, organisationId, [meet.id]);
  const combinedIds = combined.map(({ id }) => id);
  const entrants = await combinedEntrants.ofEvents(at, organisationId, combinedIds);
  const linked = await combinedEvents.linksOf(at, organisationId, combinedIds);
  const inCombined = new Set(linked.map(({ competitionId }) => competitionId));
  const isFixed = ({ id, lastSequence, status }: CompetitionRow): boolean =>
    lastSequence > 0 || status === 'official' || drawn.has(id) || inCombined.has(id);
  const byKey = new Map<string, RosterLine[]>();
  const first = new Map<string, number>();
  const fixed = new Set<string>();
  rows.forEach((row, place) => {
    for (const line of rosters[place] ?? []) {
      const key = line.competitor.athleteId ?? line.competitor.id;
      byKey.set(key, [...(byKey.get(key) ?? []), line]);
      if (!first.has(key)) first.set(key, place);
      if (isFixed(row)) fixed.add(key);
    }
  });
  const wearers = [...byKey].map(([key, lines]) => {
    const [{ athlete, competitor, club }] = lines as [RosterLine, ...RosterLine[]];
    const own = lines.toSorted((a, b) => Number(isFixed(rowOf(rows, b))) - Number(isFixed(rowOf(rows, a))));
    return {
      ...{ key, lines, club, firstCompetition: first.get(key)!, isFixed: fixed.has(key) },
      familyName: athlete?.familyName ?? competitor.listedName ?? '',
      givenName: athlete?.givenName ?? '',
      bibs: own.map((line) => line.competitor.bib),
    };
  });
  return { wearers, taken: entrants.map(({ bib }) => bib) };
}

function rowOf(rows: readonly CompetitionRow[], { competitor }: RosterLine): CompetitionRow {
  return rows.find(({ id }) => id === competitor.competitionId)!;
}
