import { orderOf, type CompetitionState, type MoveEntry, type VerticalState } from '#rules';
import type { Folded } from '../competition/fold.js';
import type { Body } from '../competition/request.js';

/**
 * Puts a trial on another competitor's line; a trial that stands there comes to this line, both in one entry. Null:
 * there is no such trial.
 */
export function moveTo(folded: Folded, id: string, to: string, reason: string): Body | null {
  return folded.kind === 'distance'
    ? moveAttempt(folded.state, id, to, reason)
    : moveJump(folded.state, id, to, reason);
}

function moveAttempt(state: CompetitionState, id: string, to: string, reason: string): Body | null {
  const own = state.attempts.get(id);
  if (!own) return null;
  const { competitor, round } = own;
  const there = state.competitors.find(({ key }) => key === to)?.series[round - 1] ?? null;
  const moves = [{ attempt: id, competitor: to, round }];
  if (there !== null) moves.push({ attempt: there, competitor, round });
  return { kind: 'move', moves, reason };
}

function moveJump(state: VerticalState, id: string, to: string, reason: string): Body | null {
  const own = state.attempts.get(id);
  if (!own) return null;
  const { competitor, height, trial, kind } = own;
  const there = [...state.attempts.values()].find(
    (other) =>
      other.kind === kind &&
      other.competitor === to &&
      other.height === height &&
      other.trial === trial &&
      other.standing === 'counts',
  );
  const moves = [{ attempt: id, competitor: to, height, trial }];
  if (there) moves.push({ attempt: there.id, competitor, height, trial });
  return { kind: 'jump-move', moves, reason };
}

/**
 * One line was left out, so that this trial and those after it in the round stand one line too high: each goes to the
 * next competitor in the order of the round. Null: the last of them would have nowhere to go.
 */
export function shiftFrom(folded: Folded, id: string): MoveEntry['moves'] | null {
  if (folded.kind !== 'distance') return null;
  const { state } = folded;
  const first = state.attempts.get(id);
  if (!first) return null;
  const { round } = first;
  const keyOf = new Map(state.setup.competitors.map(({ key, bib }) => [bib, key]));
  const order = (orderOf(state.card)[String(round)] ?? []).map((bib) => keyOf.get(bib)!);
  const moves: MoveEntry['moves'][number][] = [];
  for (let at = order.indexOf(first.competitor); at >= 0 && at < order.length; at++) {
    const attempt = state.competitors.find(({ key }) => key === order[at])?.series[round - 1];
    if (!attempt) return moves.length > 0 ? moves : null;
    const next = order[at + 1];
    if (next === undefined) return null;
    moves.push({ attempt, competitor: next, round });
  }
  return null;
}
