import { progressOf } from '../competition/calls.js';
import { isComplete, verticalProgressOf, type VerticalProgress } from '../vertical-competition/progress.js';
import { callTime, type CallTime } from './call-time.js';
import { distanceCalls } from './distance-calls.js';
import type { CallingGroup, GroupCall } from './group.js';
import { groupCallOf, verticalCalls } from './vertical-calls.js';

/** Where a calling group is, over all its competitions. */
export interface GroupProgress {
  readonly phase: 'not started' | 'running' | 'complete' | 'official';
  /**
   * What it waits for: a trial, or only that the bar is set for a competition; `null`: nothing, or the all-clear while
   * it is interrupted.
   */
  readonly awaits: 'trial' | 'height' | null;
  readonly up: GroupCall | null;
  readonly next: GroupCall | null;
  readonly then: GroupCall | null;
  /** In order: all that are still to be taken, or at a bar all that are called where it is. */
  readonly calls: readonly GroupCall[];
  /** At a bar: trials below it that have no entry yet. */
  readonly outstanding: readonly GroupCall[];
  /** The height after that of who is up, of all competitions together; `null`: none is announced. */
  readonly nextHeight: number | null;
  /** Keys of the competitions whose bar has to be set higher than all their heights before they go on. */
  readonly awaitingHeight: readonly string[];
  /**
   * Keys of the competitions that are interrupted. What endangers one of them endangers all who share the place, so
   * nobody of the group is called until there is none.
   */
  readonly interrupted: readonly string[];
  /** Keys of the competitions that have nothing left to be called. */
  readonly finished: readonly string[];
  /** `null`: nobody is up. */
  readonly time: CallTime | null;
}

/** Who is called in a group as its competitions stand. It is complete when all its competitions are. */
export function groupProgressOf(group: CallingGroup): GroupProgress {
  const interrupted = group.competitions.filter(({ state }) => state.safety.stops.length > 0);
  const { members, ...found } = group.kind === 'vertical' ? atTheBar(group) : inRounds(group);
  const where = interrupted.length > 0 ? NOBODY : found;
  const [up = null, next = null, then = null] = where.calls;
  return {
    phase: phaseOf(members),
    awaits: up || where.outstanding.length > 0 ? 'trial' : where.awaitingHeight.length > 0 ? 'height' : null,
    ...{ up, next, then },
    ...where,
    interrupted: interrupted.map(({ key }) => key),
    finished: members.filter(({ isFinished }) => isFinished).map(({ key }) => key),
    time: up && callTime(group, up),
  };
}

const NOBODY = { calls: [], outstanding: [], nextHeight: null, awaitingHeight: [] } as const;

interface Member {
  readonly key: string;
  readonly phase: string;
  readonly isFinished: boolean;
}

type Where = Pick<GroupProgress, 'calls' | 'outstanding' | 'nextHeight' | 'awaitingHeight'> & {
  readonly members: readonly Member[];
};

function inRounds(group: Extract<CallingGroup, { kind: 'distance' }>): Where {
  const members = group.competitions.map(({ key, state }) => {
    const { phase, remaining } = progressOf(state);
    return { key, phase, isFinished: state.signedOff || remaining === 0 };
  });
  return { calls: distanceCalls(group), members, outstanding: [], nextHeight: null, awaitingHeight: [] };
}

function atTheBar(group: Extract<CallingGroup, { kind: 'vertical' }>): Where {
  const progresses = new Map(group.competitions.map(({ key, state }) => [key, verticalProgressOf(state)]));
  const calls = verticalCalls(group, ({ key }) => progresses.get(key)!);
  return {
    calls,
    members: group.competitions.map(({ key, state }) => {
      const isFinished = state.signedOff || isComplete(state);
      return { key, phase: progresses.get(key)!.phase, isFinished };
    }),
    outstanding: group.competitions.flatMap((member) =>
      progresses.get(member.key)!.outstanding.map((call) => groupCallOf(member, call)),
    ),
    nextHeight: heightAfter(calls[0] ?? null, [...progresses.values()]),
    awaitingHeight: [...progresses].filter(([, { awaits }]) => awaits === 'height').map(([key]) => key),
  };
}

/** Where somebody is to jump next: another competition may be at its bar already, or come to it. */
function heightAfter(up: GroupCall | null, progresses: readonly VerticalProgress[]): number | null {
  if (!up || up.jumpOff) return null;
  const heights = progresses
    .filter(({ phase, awaits }) => awaits === 'jump' && phase !== 'jump-off')
    .flatMap(({ bar, nextHeight }) => [bar, nextHeight ?? bar])
    .filter((height) => height > up.height!);
  return heights.length === 0 ? null : Math.min(...heights);
}

function phaseOf(members: readonly Member[]): GroupProgress['phase'] {
  if (members.length > 0 && members.every(({ phase }) => phase === 'official')) return 'official';
  if (members.every(({ phase }) => phase === 'not started')) return 'not started';
  return members.every(({ isFinished }) => isFinished) ? 'complete' : 'running';
}
