import {
  competitions,
  meets,
  type CompetitionRow,
  type MeetRow,
  type Page,
  type Reads,
  type Tx,
} from '#persistence';
import { editionsOf } from '#rules';
import { Injectable } from '@nestjs/common';
import { createOnce, type Created } from '../platform/database/create-once.js';
import { CompetitionMemory } from '../platform/competition/competition-memory.js';
import { maySee } from '../platform/competition/visible.js';
import { Database } from '../platform/database/database.js';
import { CompetitionChanges, type CompetitionChange } from '../platform/live/competition-changes.js';
import { notFound } from '../platform/errors/outcomes.js';
import { refusal, type Refusal } from '../platform/errors/user-error.types.js';
import type { PageArgs } from '../platform/connections/connection.js';
import type { Identity } from '../platform/identity/identity.js';
import { uuidV7 } from '../platform/inputs/uuid-v7.js';
import type { Staged } from '../platform/roster/roster.js';
import type { MeetCreateInput, MeetSecondPersonSetInput } from './meets.inputs.js';

/** Meets: what they are, and who may see them. */
@Injectable()
export class MeetsService {
  constructor(
    private readonly database: Database,
    private readonly memory: CompetitionMemory,
    private readonly changes: CompetitionChanges,
  ) {}

  async create(input: MeetCreateInput, viewer: Identity): Promise<Created<MeetRow>> {
    viewer.requireAdmin();
    const problem = problemOf(input);
    if (problem) return { refusal: problem };
    const wanted = newMeet(input, viewer.organisationId);
    return createOnce<MeetRow, typeof wanted>(this.database, {
      wanted,
      find: (tx, id) => meets.find(tx, viewer.organisationId, id),
      insert: async (tx) => {
        await meets.insert(tx, { ...wanted, publishedAt: null });
        return null;
      },
    });
  }

  /** From now on everybody sees the meet. Publishing twice keeps the first time. */
  async publish(
    meetId: string,
    viewer: Identity,
  ): Promise<{ readonly row: MeetRow } | { readonly refusal: Refusal }> {
    viewer.requireDirector(meetId);
    const { organisationId } = viewer;
    const done = await this.database.write(async (tx) => {
      const meet = await meets.find(tx, organisationId, meetId);
      if (!meet) return { refusal: notFound('meet', ['meetId']) };
      if (meet.publishedAt !== null) return { row: meet, changed: [] };
      const publishedAt = new Date().toISOString();
      await meets.update(tx, organisationId, meetId, { publishedAt });
      return { row: { ...meet, publishedAt }, changed: await bumpAll(tx, meet) };
    });
    if ('refusal' in done) return done;
    for (const change of done.changed) this.changes.announce(change);
    return done;
  }

  /** Who demands it may be a director; letting go of it is an administrator's. */
  async setSecondPerson(
    { meetId, needsSecondPerson }: MeetSecondPersonSetInput,
    viewer: Identity,
  ): Promise<{ readonly row: MeetRow } | { readonly refusal: Refusal }> {
    if (needsSecondPerson) viewer.requireDirector(meetId);
    else viewer.requireAdmin();
    const { organisationId } = viewer;
    const done = await this.database.write(async (tx) => {
      const meet = await meets.find(tx, organisationId, meetId);
      if (!meet) return { refusal: notFound('meet', ['meetId']) };
      if (meet.needsSecondPerson === needsSecondPerson) return { row: meet, changed: [] };
      await meets.update(tx, organisationId, meetId, { needsSecondPerson });
      return { row: { ...meet, needsSecondPerson }, changed: await bumpAll(tx, meet) };
    });
    if ('refusal' in done) return done;
    for (const change of done.changed) this.changes.announce(change);
    return done;
  }

  /** Administrators and directors page through all that there are, others through what is published. */
  async page({ first, after }: PageArgs, viewer: Identity): Promise<Page<MeetRow>> {
    const published = !viewer.isAdmin;
    return this.database.read((at) => meets.page(at, viewer.organisationId, { first, after, published }));
  }

  async find(meetId: string, viewer: Identity): Promise<MeetRow | null> {
    return this.database.read((at) => visibleMeet(at, meetId, viewer));
  }

  /** The competition with its meet, if the viewer may see them. */
  async findCompetition(competitionId: string, viewer: Identity): Promise<Staged | null> {
    const loaded = await this.memory.current(viewer.organisationId, competitionId);
    if (!loaded || !maySee(loaded.meet, loaded.row, viewer)) return null;
    return { competition: loaded.row, meet: loaded.meet };
  }

  /** For each of these meets its competitions in order. One statement. */
  async competitionsOf(of: readonly MeetRow[]): Promise<CompetitionRow[][]> {
    const organisationId = of[0]?.organisationId;
    if (organisationId === undefined) return [];
    const ids = of.map(({ id }) => id);
    const rows = await this.database.read((at) => competitions.ofMeets(at, organisationId, ids));
    return of.map(({ id }) => rows.filter((row) => row.meetId === id));
  }

  /** For each of these competitions its meet. One statement. */
  async meetsOf(of: readonly CompetitionRow[]): Promise<MeetRow[]> {
    const organisationId = of[0]?.organisationId;
    if (organisationId === undefined) return [];
    const ids = [...new Set(of.map(({ meetId }) => meetId))];
    const rows = await this.database.read((at) => meets.byIds(at, organisationId, ids));
    return of.map(({ meetId }) => {
      const meet = rows.find(({ id }) => id === meetId);
      if (!meet) throw new Error('A competition names a meet that is not there.');
      return meet;
    });
  }
}

/** Who may see a competition is part of what readers keep of it. In the order of ids, as everybody who locks several. */
async function bumpAll(tx: Tx, { organisationId, id }: MeetRow): Promise<CompetitionChange[]> {
  const rows = await competitions.ofMeet(tx, organisationId, id);
  const changed: CompetitionChange[] = [];
  for (const competitionId of rows.map((row) => row.id).sort()) {
    changed.push({
      competitionId,
      version: await competitions.bumpVersion(tx, organisationId, competitionId),
    });
  }
  return changed;
}

async function visibleMeet(at: Reads, meetId: string, viewer: Identity): Promise<MeetRow | null> {
  const meet = await meets.find(at, viewer.organisationId, meetId);
  if (!meet) return null;
  if (maySee(meet, null, viewer)) return meet;
  // An official's token names a competition or a calling group; its meet is found the other way round.
  const own = await competitions.ofMeet(at, viewer.organisationId, meetId);
  return own.some((competition) => viewer.mayOfficiate(competition)) ? meet : null;
}

function newMeet(input: MeetCreateInput, organisationId: string): Omit<MeetRow, 'publishedAt'> {
  return {
    organisationId,
    id: input.id ?? uuidV7(),
    name: input.name,
    venue: input.venue,
    startsOn: input.startsOn,
    endsOn: input.endsOn ?? input.startsOn,
    timeZone: input.timeZone,
    rules: input.rules,
    edition: input.edition ?? editionsOf(input.rules).at(-1) ?? '',
    minorsDisplay: input.minorsDisplay,
    needsSecondPerson: input.needsSecondPerson,
  };
}

function problemOf({ startsOn, endsOn, timeZone, rules, edition }: MeetCreateInput): Refusal | null {
  if (endsOn && endsOn < startsOn) {
    return refusal({
      code: 'DATES_NOT_IN_ORDER',
      path: ['endsOn'],
      message: 'The meet would end before it starts.',
      remedy: 'Send a later day.',
    });
  }
  if (!isTimeZone(timeZone)) {
    return refusal({
      code: 'UNKNOWN_TIME_ZONE',
      path: ['timeZone'],
      message: `"${timeZone}" is no IANA time zone.`,
      remedy: 'Send a name like Europe/Lisbon.',
    });
  }
  return edition ? editionProblem(rules, edition) : null;
}

function isTimeZone(name: string): boolean {
  try {
    new Intl.DateTimeFormat('en', { timeZone: name });
    return true;
  } catch {
    return false;
  }
}

/** Null: the rules library knows this edition. */
export function editionProblem(rules: MeetRow['rules'], edition: string): Refusal | null {
  const editions = editionsOf(rules);
  if (editions.includes(edition)) return null;
  return refusal({
    code: 'UNKNOWN_EDITION',
    path: ['edition'],
    message: `There is no edition "${edition}" of ${rules} here.`,
    remedy: `Send one of ${editions.join(', ')}, or none for the newest.`,
  });
}
