import {
  callingGroups,
  competitions,
  journal,
  meets,
  type CallingGroupRow,
  type CompetitionRow,
  type MeetRow,
  type Reads,
} from '#persistence';
import { latestJump, latestThrow, type CallingGroup, type TakenTrial } from '#rules';
import { Injectable } from '@nestjs/common';
import { CompetitionMemory } from '../platform/competition/competition-memory.js';
import type { LoadedCompetition, LoadedDistance, LoadedVertical } from '../platform/competition/loaded.js';

/** A calling group and all its competitions at one moment. */
export interface LoadedGroup {
  readonly row: CallingGroupRow;
  readonly meet: MeetRow;
  /** In the group's sequence. */
  readonly competitions: readonly LoadedCompetition[];
  /** By competition: when its latest trial that counts was recorded, in milliseconds since the epoch. */
  readonly lastTrialAt: ReadonlyMap<string, number>;
}

/**
 * The version that readers see: it rises with every change of the group and of any of its competitions, and never
 * falls. It is the group's own version and those of its competitions together; when a competition leaves, the group
 * takes over what that one had added.
 */
export function versionOf(row: CallingGroupRow, members: readonly Pick<CompetitionRow, 'version'>[]): number {
  return members.reduce((sum, { version }) => sum + version, row.version);
}

/** The group as the rules take it. */
export function asCalled({ row, competitions, lastTrialAt }: LoadedGroup): CallingGroup {
  const { startOrder } = row;
  const called = <L extends LoadedCompetition>({ row: { id }, state }: L) => ({
    key: id,
    state: state as L['state'],
    lastTrialAt: lastTrialAt.get(id) ?? null,
  });
  const isDistance = (one: LoadedCompetition): one is LoadedDistance => one.kind === 'distance';
  const isVertical = (one: LoadedCompetition): one is LoadedVertical => one.kind === 'vertical';
  return competitions.some(isVertical)
    ? {
        kind: 'vertical',
        startOrder,
        competitions: competitions.filter(isVertical).map((one) => called(one)),
      }
    : {
        kind: 'distance',
        startOrder,
        competitions: competitions.filter(isDistance).map((one) => called(one)),
      };
}

/** Reads groups with everything in them. */
@Injectable()
export class GroupLoader {
  constructor(private readonly memory: CompetitionMemory) {}

  /** Those of `ids` that there are. A few statements, and one reading for each competition that is not remembered. */
  async load(at: Reads, organisationId: string, ids: readonly string[]): Promise<LoadedGroup[]> {
    if (ids.length === 0) return [];
    const groups = await callingGroups.byIds(at, organisationId, ids);
    const meetIds = [...new Set(groups.map(({ meetId }) => meetId))];
    const meetsById = new Map(
      (await meets.byIds(at, organisationId, meetIds)).map((meet) => [meet.id, meet]),
    );
    const rows = await competitions.ofCallingGroups(at, organisationId, ids);
    const loaded: LoadedCompetition[] = [];
    for (const row of rows) loaded.push(await this.memory.locked(at, row));
    const lastTrialAt = await lastTrialTimes(at, organisationId, loaded);
    return groups.map((row) => ({
      row,
      meet: meetsById.get(row.meetId)!,
      competitions: loaded.filter((one) => one.row.callingGroupId === row.id),
      lastTrialAt,
    }));
  }

  /** What was read in a snapshot is kept, so that it is read once a version. */
  remember(groups: readonly LoadedGroup[]): void {
    for (const { competitions: members } of groups) for (const one of members) this.memory.remember(one);
  }
}

async function lastTrialTimes(
  at: Reads,
  organisationId: string,
  loaded: readonly LoadedCompetition[],
): Promise<ReadonlyMap<string, number>> {
  const latest = loaded.flatMap((one) => {
    const trial = latestTrial(one);
    return trial ? [{ competitionId: one.row.id, sequence: trial.sequence }] : [];
  });
  const times = await journal.recordedAt(at, organisationId, latest);
  return new Map(times.map(({ competitionId, recordedAt }) => [competitionId, Date.parse(recordedAt)]));
}

function latestTrial(one: LoadedCompetition): TakenTrial | null {
  return one.kind === 'vertical' ? latestJump(one.state) : latestThrow(one.state);
}
