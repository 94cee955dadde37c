import type { CompetitionState } from '../competition/state.js';
import { ruleSet } from '../rule-sets/index.js';
import type { Citation } from '../rule-sets/rule-set.js';
import { jumpsTaken, timeAllowedFor, type JumpTime } from '../vertical-competition/time-allowed.js';
import type { VerticalState } from '../vertical-competition/state.js';
import type { CallingGroup, GroupCall } from './group.js';

/** How long the competitor who is up has. */
export interface CallTime {
  readonly seconds: number;
  readonly because: JumpTime['because'] | 'each trial';
  /** Of the own competition, where the number matters: at a bar. */
  readonly left: number | null;
  readonly startsWhen: JumpTime['startsWhen'];
  readonly rule: Citation;
}

/** A trial that was taken, of whatever kind of event. */
export interface TakenTrial {
  readonly competitor: string;
  /** Position in the journal, from 1. */
  readonly sequence: number;
}

/** The latest trial that was taken and counts, passes aside; `null`: there is none. */
export function latestThrow({ attempts }: CompetitionState): TakenTrial | null {
  const taken = [...attempts.values()].filter(
    ({ standing, judgement: { outcome } }) =>
      standing === 'counts' && (outcome === 'valid' || outcome === 'foul' || outcome === 'unmeasured'),
  );
  return taken.sort((a, b) => a.sequence - b.sequence).at(-1) ?? null;
}

/** As {@link latestThrow}, at a bar. */
export function latestJump(state: VerticalState): TakenTrial | null {
  return jumpsTaken(state).at(-1) ?? null;
}

/**
 * The time allowed for a call of a group. How many are left is counted in the competitor's own competition, which the
 * rule speaks of; whether two trials of the same competitor follow each other is seen in the whole group, which rests
 * him while others have their turn. The first is as the books say (WA TR25.17), the second common practice, no
 * published source.
 */
export function callTime(group: CallingGroup, call: GroupCall): CallTime | null {
  if (group.kind === 'vertical') {
    const member = group.competitions.find(({ key }) => key === call.competition);
    if (!member || call.height === null) return null;
    const { competitor, round: trial, height, jumpOff, underProtest } = call;
    const jump = { competitor, trial, height, jumpOff, underProtest };
    return timeAllowedFor(member.state, jump, latestIn(group.competitions) !== member);
  }
  const member = group.competitions.find(({ key }) => key === call.competition);
  if (!member) return null;
  const { rules, edition } = member.state.setup;
  const { value, cite } = ruleSet(rules, edition).timeAllowed;
  const isConsecutive =
    latestIn(group.competitions) === member && latestThrow(member.state)?.competitor === call.competitor;
  return {
    seconds: isConsecutive ? value.consecutiveS : value.trialS,
    because: isConsecutive ? 'consecutive trials' : 'each trial',
    left: null,
    startsWhen: 'called',
    rule: cite,
  };
}

/** The competition in which the latest trial of the group was recorded. */
function latestIn<Member extends { readonly lastTrialAt: number | null }>(
  competitions: readonly Member[],
): Member | undefined {
  const begun = competitions.filter(({ lastTrialAt }) => lastTrialAt !== null);
  return begun.sort((a, b) => a.lastTrialAt! - b.lastTrialAt!).at(-1);
}
