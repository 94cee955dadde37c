import type { JumpOffRound, VerticalTrial } from './vertical-card.js';

/** Where a jump-off stands. Those who are out come in groups that share a place, the better ones first. */
export interface JumpOffState {
  /** Still in it, all level; in the order in which they were given. */
  readonly remaining: readonly string[];
  readonly out: readonly (readonly string[])[];
}

export function startJumpOff(level: readonly string[]): JumpOffState {
  return { remaining: level, out: [] };
}

/** Decided when one is left, or none: those who all gave up their claim share the place. */
export function isDecided(state: JumpOffState): boolean {
  return state.remaining.length <= 1;
}

/**
 * One more round (WA TR26.9, from memory): those who fail while another clears are out; when all clear or all fail,
 * all go on. Who passes or retires gives up the claim and comes behind those who did not. Nobody else's entry counts.
 */
export function playRound(state: JumpOffState, round: JumpOffRound): JumpOffState {
  const tries = triesOf(round);
  const [gaveUp, stayed] = split(state.remaining, (bib) => givesUp(tries.get(bib)));
  const [failed, others] = split(stayed, (bib) => tries.get(bib) === 'failed');
  const someCleared = others.some((bib) => tries.get(bib) === 'cleared');
  const outNow = someCleared ? [failed, gaveUp] : [gaveUp];
  return {
    remaining: someCleared ? others : stayed,
    out: [...outNow.filter((group) => group.length > 0), ...state.out],
  };
}

/** The order after the jump-off: groups that share a place, best first. */
export function jumpOffGroups(
  level: readonly string[],
  rounds: readonly JumpOffRound[],
): (readonly string[])[] {
  const end = rounds.reduce(playRound, startJumpOff(level));
  return [end.remaining, ...end.out].filter((group) => group.length > 0);
}

export function triesOf(round: JumpOffRound): ReadonlyMap<string, VerticalTrial> {
  return new Map(round.tries.map(({ bib, trial }) => [bib, trial]));
}

function givesUp(trial: VerticalTrial | undefined): boolean {
  return trial === 'passed' || trial === 'retired';
}

function split(bibs: readonly string[], test: (bib: string) => boolean): [yes: string[], no: string[]] {
  return [bibs.filter(test), bibs.filter((bib) => !test(bib))];
}
