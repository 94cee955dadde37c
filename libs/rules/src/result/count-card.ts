import type { Card } from '../card.js';
import { cutsOf } from '../progression/cuts.js';
import { orderOf } from '../progression/order.js';
import { wordsOf } from '../ranking/decision.js';
import type { Placed } from '../ranking/ranking.js';
import { standingOf, type Standing } from '../ranking/standing.js';
import { marksShownOn, NO_MARKS } from './marks-shown.js';
import { qualifiedOf } from './qualifying.js';
import type { ResultDocument, ResultRow } from './result-document.js';

export type CardCount = Required<Pick<ResultDocument, 'results' | 'cuts' | 'order'>>;

/** One row of a result, with whose it is: a position in the order of competition. */
export interface CountedRow {
  readonly competitor: number;
  readonly row: ResultRow;
}

/** What a card of a throw or a horizontal jump counts to: rows (points come after), cuts and orders. */
export function countCard(card: Card): CardCount {
  return { results: countRows(card).map(({ row }) => row), cuts: cutsOf(card), order: orderOf(card) };
}

/** The rows in the order of the result, as all trials on the card stand. */
export function countRows(card: Card, standing: Standing = standingOf(card)): CountedRow[] {
  const qualified = qualifiedOf(card, standing);
  const marksShown = marksShownOn(card);
  const rowOf = (competitor: number, placed: Placed | null): CountedRow => {
    const { bib, series } = card.competitors[competitor]!;
    const status = placed ? null : statusOf(card, competitor);
    const row: ResultRow = {
      bib,
      place: placed?.place ?? null,
      equal: placed?.equal ?? false,
      ...(status === null || status === 'GUEST' ? marksShown(series) : NO_MARKS),
      status,
      decidedBy: placed && wordsOf(placed.decidedBy),
      qualified: qualified[competitor]!,
    };
    return { competitor, row };
  };
  const { placed } = standing.ranking;
  return [
    ...placed.map((one) => rowOf(one.competitor, one)),
    ...unplacedOf(card, standing).map((competitor) => rowOf(competitor, null)),
  ];
}

/** In the order in which they follow those who are placed. */
const UNPLACED = ['NM', 'DQ', 'DNS', 'GUEST'] as const;
type UnplacedStatus = (typeof UNPLACED)[number];

/** Those without a place, in the order in which the result has them. */
export function unplacedOf(card: Card, { ranking }: Standing): number[] {
  const placed = new Set(ranking.placed.map(({ competitor }) => competitor));
  const unplaced = [...card.competitors.keys()].filter((competitor) => !placed.has(competitor));
  return UNPLACED.flatMap((status) => unplaced.filter((competitor) => statusOf(card, competitor) === status));
}

/** Of a competitor without a place. */
function statusOf(card: Card, competitor: number): UnplacedStatus {
  const { status, guest } = card.competitors[competitor]!;
  return status ?? (guest ? 'GUEST' : 'NM');
}
