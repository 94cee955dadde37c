import type { Card } from '../card.js';
import { isMade, type CutField } from '../progression/cuts.js';
import { lastRound, reachedIn, retiredIn } from '../progression/series.js';

/** Why no trial to come can bring a competitor a place. The first that applies. */
export type Barrier =
  | 'DID_NOT_START'
  | 'DISQUALIFIED'
  | 'GUEST'
  | 'RETIRED'
  | 'STANDARD_REACHED'
  | 'NO_TRIAL_LEFT'
  | 'NOT_THROUGH';

/** A competitor's next trial, as the trials stand. */
export interface NextTrial {
  /** `null`: there is none that counts for a place. */
  readonly round: number | null;
  /** Why there is none. */
  readonly barrier: Barrier | null;
  /** It lies behind a cut which trials of others can still change. */
  readonly dependsOnCut: boolean;
}

/** @param orders of the rounds, by positions in the order of competition; index 0 = round 1. */
export function nextTrialOf(
  card: Card,
  cuts: readonly CutField[],
  orders: readonly (readonly number[])[],
  index: number,
): NextTrial {
  const round = lastRound(card.competitors[index]!.series) + 1;
  const barrier = ownBarrier(card, index) ?? barrierTo(round, card.plan.rounds, orders[round - 1], index);
  const ahead = cuts.filter(({ cut }) => cut.after < round);
  const throughOrNot = barrier === null || barrier === 'NOT_THROUGH';
  return {
    round: barrier === null ? round : null,
    barrier,
    dependsOnCut: throughOrNot && !ahead.every((field) => isMade(card, field)),
  };
}

function ownBarrier(card: Card, index: number): Barrier | null {
  const { status, guest, series } = card.competitors[index]!;
  if (status === 'DNS') return 'DID_NOT_START';
  if (status === 'DQ') return 'DISQUALIFIED';
  if (guest) return 'GUEST';
  if (retiredIn(series) < Infinity) return 'RETIRED';
  const reached = card.qualifying !== null && reachedIn(series, card.qualifying.standard) < Infinity;
  return reached ? 'STANDARD_REACHED' : null;
}

function barrierTo(
  round: number,
  rounds: number,
  order: readonly number[] | undefined,
  index: number,
): Barrier | null {
  if (round > rounds || order === undefined) return 'NO_TRIAL_LEFT';
  return order.includes(index) ? null : 'NOT_THROUGH';
}
