import { rankVertical } from '../vertical/vertical-ranking.js';
import { jumpOffOf, type JumpOffCourse } from './jump-off-course.js';
import { turnKey } from './jumps.js';
import type { VerticalCompetitorState, VerticalState } from './state.js';

/** One jump that is to be taken. */
export interface JumpCall {
  readonly competitor: string;
  readonly height: number;
  /** The competitor's trial at the height; in the jump-off: its round. */
  readonly trial: number;
  readonly jumpOff: boolean;
  /** Somebody who is out unless his protest is upheld: what he does now is held until then. */
  readonly underProtest: boolean;
}

/** Where a high jump or pole vault is. */
export interface VerticalProgress {
  readonly phase: 'not started' | 'running' | 'jump-off' | 'complete' | 'official';
  /**
   * What it waits for: a jump, or that the bar is set higher than all heights so far; `null`: nothing, or the
   * all-clear while it is interrupted.
   */
  readonly awaits: 'jump' | 'height' | null;
  /** Where the bar is, in the jump-off its bar. */
  readonly bar: number;
  /** The height after it; `null`: none is announced. */
  readonly nextHeight: number | null;
  readonly up: JumpCall | null;
  /** As far as it is certain: who fails at the bar is called again after those who are next now. */
  readonly next: JumpCall | null;
  readonly then: JumpCall | null;
  /** All who are called at the bar, in order. */
  readonly calls: readonly JumpCall[];
  /** Trials below the bar that have no entry yet. */
  readonly outstanding: readonly JumpCall[];
  /** Who is still in, in the order of competition. */
  readonly left: readonly string[];
  readonly winner: Winner | null;
  readonly jumpOff: JumpOffCourse | null;
}

/** The only one who is left, and has won already. */
export interface Winner {
  readonly competitor: string;
  /** In a combined event nobody chooses. */
  readonly choosesHeight: boolean;
}

/** Where the competition is and who is called, as things stand. */
export function verticalProgressOf(state: VerticalState): VerticalProgress {
  const jumpOff = jumpOffOf(state);
  const nobody = state.signedOff || state.safety.stops.length > 0;
  const calls = nobody ? [] : callsOf(state, jumpOff);
  const [up = null, next = null, then = null] = calls;
  const left = state.competitors.filter(({ condition }) => condition === 'in');
  const outstanding = nobody ? [] : left.filter(({ atBar }) => atBar === 'behind').map(callOf);
  const waitsForHeight = left.length > 0 && left.every((one) => one.next === null);
  const inJumpOff = isOpen(jumpOff);
  return {
    phase: phaseOf(state, left.length > 0, inJumpOff),
    awaits: up || outstanding.length > 0 ? 'jump' : waitsForHeight && !nobody ? 'height' : null,
    bar: inJumpOff ? jumpOff.height : state.bar,
    nextHeight: inJumpOff ? null : (state.heights.find((height) => height > state.bar) ?? null),
    up,
    next,
    then,
    calls,
    outstanding,
    left: left.map(({ key }) => key),
    winner: winnerOf(state),
    jumpOff,
  };
}

/** Whether nothing is left to be jumped: nobody is in, and no tie for first waits to be decided or left. */
export function isComplete(state: VerticalState): boolean {
  return state.competitors.every(({ condition }) => condition !== 'in') && !isOpen(jumpOffOf(state));
}

export function winnerOf(state: VerticalState): Winner | null {
  const left = state.competitors.filter(({ condition }) => condition === 'in');
  const [only] = left;
  if (!only || left.length > 1 || state.setup.stage !== 'final') return null;
  const [first, second] = rankVertical(state.card);
  const leads = first?.competitor.bib === only.bib && second?.place !== 1;
  return leads ? { competitor: only.key, choosesHeight: !state.setup.combined } : null;
}

export function isOpen(jumpOff: JumpOffCourse | null): jumpOff is JumpOffCourse {
  return jumpOff?.phase === 'due' || jumpOff?.phase === 'running';
}

function phaseOf(state: VerticalState, someLeft: boolean, inJumpOff: boolean): VerticalProgress['phase'] {
  if (state.signedOff) return 'official';
  const begun = [...state.attempts.values()].some(({ standing }) => standing === 'counts');
  if (!begun) return 'not started';
  if (inJumpOff) return 'jump-off';
  return someLeft ? 'running' : 'complete';
}

/** Who is to jump at the bar: all their first trials, then the second ones of those who failed, then the third. */
function callsOf(state: VerticalState, jumpOff: JumpOffCourse | null): JumpCall[] {
  if (isOpen(jumpOff)) {
    const { round: trial, height, toJump } = jumpOff;
    return toJump.map((competitor) => ({ competitor, height, trial, jumpOff: true, underProtest: false }));
  }
  const called = state.competitors.map(callOf).filter((call) => call.height === state.bar);
  return [1, 2, 3].flatMap((trial) =>
    inOrder(
      state,
      trial,
      called.filter((call) => call.trial === trial),
    ),
  );
}

function callOf({ key, next, nextUnderProtest }: VerticalCompetitorState): JumpCall {
  const { height, trial } = next ?? nextUnderProtest ?? { height: 0, trial: 0 };
  return { competitor: key, height, trial, jumpOff: false, underProtest: next === null };
}

/**
 * Those whom an official moved to the front come first, the others follow in the order of competition; who is away at
 * another event is called last.
 */
function inOrder(state: VerticalState, trial: number, calls: readonly JumpCall[]): JumpCall[] {
  const moved = state.orderChanges.get(turnKey({ height: state.bar, trial }))?.competitors ?? [];
  const ahead = moved.flatMap((key) => calls.filter(({ competitor }) => competitor === key));
  const ordered = [...ahead, ...calls.filter((call) => !ahead.includes(call))];
  const isAway = ({ competitor }: JumpCall): boolean => state.away.has(competitor);
  return [...ordered.filter((call) => !isAway(call)), ...ordered.filter(isAway)];
}
