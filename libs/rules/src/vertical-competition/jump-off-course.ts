import { ruleSet } from '../rule-sets/index.js';
import { isDecided, playRound, startJumpOff } from '../vertical/jump-off.js';
import type { JumpOffRound, VerticalCard, VerticalTrial } from '../vertical/vertical-card.js';
import { levelForFirst } from '../vertical/vertical-ranking.js';
import type { VerticalSetup } from './setup.js';
import type { VerticalState } from './state.js';

/** Where a jump-off for first place stands. */
export interface JumpOffCourse {
  /** `due`: nobody has jumped yet; `declined`: those who were left share first. */
  readonly phase: 'due' | 'running' | 'decided' | 'declined';
  /** The round that is jumped, or would be, from 1. */
  readonly round: number;
  /** Where the bar is in this round: as jumped, otherwise by the rule. */
  readonly height: number;
  /** Where the rule puts the bar in this round. */
  readonly ruleHeight: number;
  /** By competitor key: who is still in it, in the order of competition. */
  readonly remaining: readonly string[];
  /** Who was in it when the round began. */
  readonly inRound: readonly string[];
  /** Those of them who have no entry in this round yet. */
  readonly toJump: readonly string[];
}

/** The jump-off, once all others are done or somebody has jumped in it; `null`: there is none. */
export function jumpOffOf(state: VerticalState): JumpOffCourse | null {
  const { setup, card } = state;
  if (setup.stage !== 'final' || setup.tieForFirst === 'shared') return null;
  const level = levelForFirst(card);
  const othersDone = state.competitors.every(({ condition }) => condition !== 'in');
  if (level.length < 2 || !(othersDone || card.jumpOff.length > 0)) return null;
  const played = play(setup, card, level);
  const keyOf = new Map(setup.competitors.map(({ key, bib }) => [bib, key]));
  const decided = isDecided({ remaining: played.remaining, out: [] });
  const phase = decided
    ? 'decided'
    : state.jumpOffDeclined
      ? 'declined'
      : card.jumpOff.length > 0
        ? 'running'
        : 'due';
  const keysOf = (bibs: readonly string[]): string[] => bibs.map((bib) => keyOf.get(bib)!);
  const { remaining, inRound, toJump, ...where } = played;
  const open = phase === 'due' || phase === 'running';
  return {
    phase,
    ...where,
    remaining: keysOf(remaining),
    inRound: keysOf(inRound),
    toJump: open ? keysOf(toJump) : [],
  };
}

/** Follows the rounds to the one that is not whole yet; `remaining` includes what its jumps so far decide. */
function play(setup: VerticalSetup, card: VerticalCard, level: readonly string[]) {
  let state = startJumpOff(level);
  let ruleHeight = startOf(setup, card, level);
  for (const [index, round] of card.jumpOff.entries()) {
    const taken = new Set(round.tries.map(({ bib }) => bib));
    const toJump = state.remaining.filter((bib) => !taken.has(bib));
    const after = playRound(state, round);
    // A round in which some gave up and nobody jumped may stand by itself, before the one in which the others jump.
    const mayStay = index < card.jumpOff.length - 1 && !has(round, 'cleared') && !has(round, 'failed');
    if (toJump.length > 0 && !mayStay) {
      const { remaining } = after;
      return {
        round: index + 1,
        height: round.height,
        ruleHeight,
        remaining,
        inRound: state.remaining,
        toJump,
      };
    }
    ruleHeight = Math.max(1, round.height + directionAfter(round) * stepOf(setup));
    state = after;
  }
  const { remaining } = state;
  const next = { round: card.jumpOff.length + 1, height: ruleHeight, ruleHeight };
  return { ...next, remaining, inRound: remaining, toJump: remaining };
}

/** Up when more than one cleared, down when all failed; where nobody jumped the bar stays. */
function directionAfter(round: JumpOffRound): 1 | 0 | -1 {
  if (has(round, 'cleared')) return 1;
  return has(round, 'failed') ? -1 : 0;
}

function has({ tries }: JumpOffRound, outcome: VerticalTrial): boolean {
  return tries.some(({ trial }) => trial === outcome);
}

function stepOf({ rules, edition, event, unit }: VerticalSetup): number {
  return ruleSet(rules, edition).vertical[event].jumpOffStep.value[unit];
}

/**
 * Where a jump-off starts: at the next announced height after the one last cleared, or, where the rule set says so,
 * at the lowest one above it at which one of those level failed. Past the announced heights: one step up.
 */
function startOf(setup: VerticalSetup, card: VerticalCard, level: readonly string[]): number {
  const tied = card.competitors.filter(({ bib }) => level.includes(bib));
  const best = Math.max(-1, ...tied[0]!.series.map((trials, at) => (trials?.includes('cleared') ? at : -1)));
  const above = card.heights.map((_, at) => at).filter((at) => at > best);
  const failedAt = above.find((at) => tied.some(({ series }) => series[at]?.includes('failed')));
  const rules = ruleSet(setup.rules, setup.edition).vertical[setup.event];
  const start = rules.jumpOffStart.value === 'height failed' ? (failedAt ?? above[0]) : above[0];
  return (start === undefined ? undefined : card.heights[start]) ?? card.heights[best]! + stepOf(setup);
}
