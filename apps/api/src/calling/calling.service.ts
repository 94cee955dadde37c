import {
  callingGroups,
  competitions,
  competitors,
  meets,
  type CallingGroupChanges,
  type CallingGroupRow,
  type CompetitionRow,
  type NewCallingGroup,
  type Tx,
} from '#persistence';
import { Injectable } from '@nestjs/common';
import { StartListService } from '../entries/start-list.service.js';
import { CompetitionMemory } from '../platform/competition/competition-memory.js';
import { createOnce } from '../platform/database/create-once.js';
import { Database } from '../platform/database/database.js';
import { notFound } from '../platform/errors/outcomes.js';
import type { UserError } from '../platform/errors/user-error.types.js';
import { versionConflict } from '../platform/errors/version-conflict.types.js';
import type { Identity } from '../platform/identity/identity.js';
import { isGiven } from '../platform/inputs/given.js';
import { uuidV7 } from '../platform/inputs/uuid-v7.js';
import { CompetitionChanges, type CompetitionChange } from '../platform/live/competition-changes.js';
import type {
  CallingGroupCreateInput,
  CallingGroupUpdateInput,
  CallingOrderSetInput,
} from './calling.inputs.js';
import { hasBegun, lockAll, membersProblem, ORDER_INCOMPLETE, STARTED } from './group-members.js';
import { versionOf } from './loaded-group.js';

/** What became of a change: the group's id, or why it was not made. */
export type GroupChange =
  | { readonly id: string; readonly replayed: boolean }
  | { readonly refusal: UserError };

/** A group under its lock, with its competitions under theirs. */
interface LockedGroup {
  readonly group: CallingGroupRow;
  /** In the group's sequence. */
  readonly members: readonly CompetitionRow[];
  /** The members, and others that were asked for. */
  readonly rows: readonly CompetitionRow[];
}

type Changed = { readonly changes: readonly CompetitionChange[] } | { readonly refusal: UserError };

/** Setting up who is called together. What a competition sees of it is a new version of the competition. */
@Injectable()
export class CallingService {
  constructor(
    private readonly database: Database,
    private readonly memory: CompetitionMemory,
    private readonly changes: CompetitionChanges,
    private readonly lists: StartListService,
  ) {}

  async create(input: CallingGroupCreateInput, viewer: Identity): Promise<GroupChange> {
    viewer.requireDirector(input.meetId);
    const { organisationId } = viewer;
    const { competitionIds } = input;
    const group = newGroup(input, organisationId);
    let changes: readonly CompetitionChange[] = [];
    type Wanted = NewCallingGroup & { readonly competitionIds: readonly string[] };
    const made = await createOnce<CallingGroupRow & Wanted, Wanted>(this.database, {
      wanted: { ...group, competitionIds },
      find: async (tx, id) => {
        const row = await callingGroups.find(tx, organisationId, id);
        if (!row) return null;
        const members = await competitions.ofCallingGroups(tx, organisationId, [id]);
        return { ...row, competitionIds: members.map((member) => member.id) };
      },
      insert: async (tx) => {
        if (!(await meets.find(tx, organisationId, group.meetId))) return notFound('meet', ['meetId']);
        const rows = await lockAll(tx, organisationId, competitionIds);
        const problem = membersProblem(group, competitionIds, rows) ?? (await this.begunProblem(tx, rows));
        if (problem) return problem;
        await callingGroups.insert(tx, group);
        changes = await putIn(tx, group, competitionIds);
        return null;
      },
    });
    if ('refusal' in made) return made;
    this.announce(changes);
    return { id: made.row.id, replayed: made.replayed };
  }

  /** Which competitions are in it stands after the first trial; its title, place and times do not matter to anybody. */
  async update(input: CallingGroupUpdateInput, viewer: Identity): Promise<GroupChange> {
    const { competitionIds } = input;
    return this.change(input, viewer, competitionIds ?? [], async (tx, { group, members, rows }) => {
      const fields = changesOf(input);
      if (!isGiven(competitionIds)) {
        await callingGroups.update(tx, group, group.version + 1, fields);
        return { changes: [] };
      }
      const problem = membersProblem(group, competitionIds, rows) ?? (await this.begunProblem(tx, rows));
      if (problem) return { refusal: problem };
      const leaving = members.filter(({ id }) => !competitionIds.includes(id));
      await callingGroups.update(tx, group, versionOf(group, leaving) + 1, fields);
      return { changes: await putIn(tx, group, competitionIds) };
    });
  }

  async setOrder(input: CallingOrderSetInput, viewer: Identity): Promise<GroupChange> {
    const { organisationId } = viewer;
    return this.change(input, viewer, [], async (tx, { group, members }) => {
      const begun = await this.begunProblem(tx, members);
      if (begun) return { refusal: begun };
      const lines = await competitors.ofCompetitions(
        tx,
        organisationId,
        members.map(({ id }) => id),
      );
      const owners = new Map(lines.map(({ id, competitionId }) => [id, competitionId]));
      const startOrder = [...new Set(input.competitorIds)];
      const isWhole =
        startOrder.length === input.competitorIds.length &&
        startOrder.length === lines.length &&
        startOrder.every((id) => owners.has(id));
      if (!isWhole) return { refusal: ORDER_INCOMPLETE };
      const changes: CompetitionChange[] = [];
      for (const member of members) {
        const { id: competitionId } = member;
        const own = startOrder.filter((id) => owners.get(id) === competitionId);
        await competitors.reposition(tx, organisationId, competitionId, own);
        await this.lists.noteOrder(tx, member, viewer);
        const version = await competitions.bumpVersion(tx, organisationId, competitionId);
        changes.push({ competitionId, version });
      }
      await callingGroups.update(tx, group, group.version + 1, { startOrder });
      return { changes };
    });
  }

  /** Runs a change under all locks, if the group is still as the caller knows it; then tells the readers. */
  private async change(
    {
      callingGroupId,
      expectedVersion,
    }: { readonly callingGroupId: string; readonly expectedVersion: number },
    viewer: Identity,
    others: readonly string[],
    work: (tx: Tx, locked: LockedGroup) => Promise<Changed>,
  ): Promise<GroupChange> {
    const { organisationId } = viewer;
    const done = await this.database.write(async (tx): Promise<Changed> => {
      const group = await callingGroups.lock(tx, organisationId, callingGroupId);
      if (!group) return { refusal: notFound('calling group', ['callingGroupId']) };
      viewer.requireDirector(group.meetId);
      // Who comes or goes needs the group's lock, so these are its competitions until the end.
      const inIt = (await competitions.ofCallingGroups(tx, organisationId, [group.id])).map(({ id }) => id);
      const rows = await lockAll(tx, organisationId, [...inIt, ...others]);
      const members = inIt.map((id) => rows.find((row) => row.id === id)!);
      const version = versionOf(group, members);
      if (version !== expectedVersion) return { refusal: versionConflict(version, 'calling group') };
      return work(tx, { group, members, rows });
    });
    if ('refusal' in done) return done;
    this.announce(done.changes);
    return { id: callingGroupId, replayed: false };
  }

  private async begunProblem(tx: Tx, rows: readonly CompetitionRow[]): Promise<UserError | null> {
    for (const row of rows) if (hasBegun(await this.memory.locked(tx, row))) return STARTED;
    return null;
  }

  private announce(changes: readonly CompetitionChange[]): void {
    for (const change of changes) this.changes.announce(change);
  }
}

async function putIn(
  tx: Tx,
  { organisationId, id }: Pick<CallingGroupRow, 'organisationId' | 'id'>,
  competitionIds: readonly string[],
): Promise<CompetitionChange[]> {
  const changed = await competitions.setCallingGroup(tx, organisationId, id, competitionIds);
  return changed.map(({ id: competitionId, version }) => ({ competitionId, version }));
}

function newGroup(input: CallingGroupCreateInput, organisationId: string): NewCallingGroup {
  return {
    organisationId,
    id: input.id ?? uuidV7(),
    meetId: input.meetId,
    title: input.title,
    facility: input.facility ?? null,
    startsAt: input.startsAt?.toISOString() ?? null,
    warmUpMinutes: input.warmUpMinutes ?? null,
  };
}

/** A title cannot be emptied, so null leaves it; the other fields take null as it is. */
function changesOf(input: CallingGroupUpdateInput): CallingGroupChanges {
  return {
    ...(isGiven(input.title) && { title: input.title }),
    ...(input.facility !== undefined && { facility: input.facility }),
    ...(input.startsAt !== undefined && { startsAt: input.startsAt?.toISOString() ?? null }),
    ...(input.warmUpMinutes !== undefined && { warmUpMinutes: input.warmUpMinutes }),
  };
}
