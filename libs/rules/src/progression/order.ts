import type { Card } from '../card.js';
import { keysOf } from '../ranking/keys.js';
import { rank } from '../ranking/ranking.js';
import { cutFieldsOf, type CutField } from './cuts.js';
import { endedBy, lastRound, reachedIn, retiredIn } from './series.js';

/** By round (`"1"`, `"2"`, …): who takes part in it, in order, as the trials stand. */
export function orderOf(card: Card): Record<string, string[]> {
  const bibs = ordersOf(card).map((order) => order.map((competitor) => card.competitors[competitor]!.bib));
  return Object.fromEntries(bibs.map((order, at) => [String(at + 1), order]));
}

/** As {@link orderOf}, by positions in the order of competition; index 0 = round 1. */
export function ordersOf(card: Card, cuts: readonly CutField[] = cutFieldsOf(card)): number[][] {
  const orders: number[][] = [];
  let order = card.competitors.map((_, index) => index);
  for (let round = 1; round <= card.plan.rounds; round++) {
    const field = fieldOf(card, cuts, round);
    if (card.plan.reorderAfter.includes(round - 1)) order = reordered(card, round - 1, field);
    orders.push(order.filter((competitor) => field.has(competitor)));
  }
  return orders;
}

/** Who takes part in a round: through every cut before it, and not stopped by what is in the own series. */
function fieldOf(card: Card, cuts: readonly CutField[], round: number): Set<number> {
  const made = cuts.filter(({ cut }) => cut.after < round).map(({ through }) => new Set(through));
  const isThrough = (index: number): boolean => made.every((through) => through.has(index));
  const all = [...card.competitors.keys()];
  return new Set(all.filter((index) => isThrough(index) && canTakePart(card, index, round)));
}

function canTakePart(card: Card, index: number, round: number): boolean {
  const { status, series } = card.competitors[index]!;
  if (status === 'DNS' || (status === 'DQ' && lastRound(series) < round)) return false;
  if (retiredIn(series) < round) return false;
  return card.qualifying === null || reachedIn(series, card.qualifying.standard) >= round;
}

/**
 * The ranking after a round as a new order. Level competitors, and those without a valid mark, keep the order of
 * competition among themselves; worst first, those without a valid mark go before everybody else.
 */
function reordered(card: Card, after: number, field: ReadonlySet<number>): number[] {
  const members = [...card.competitors.keys()].filter((index) => ranksAfter(card, index, after, field));
  const keys = keysOf(
    card.competitors.map((competitor) => competitor.series),
    after,
  );
  const { placed, unplaced } = rank(keys, members);
  if (card.plan.reorder === 'leaders-first')
    return [...placed.map(({ competitor }) => competitor), ...unplaced];
  const worstFirst = placed.toSorted((a, b) => b.place - a.place || a.competitor - b.competitor);
  return [...unplaced, ...worstFirst.map(({ competitor }) => competitor)];
}

/** The ranking is that of the whole competition; a guest is ranked with the others while still competing. */
function ranksAfter(card: Card, index: number, after: number, field: ReadonlySet<number>): boolean {
  const competitor = card.competitors[index]!;
  if (competitor.status === 'DNS' || endedBy(competitor, after)) return false;
  return !competitor.guest || field.has(index);
}
