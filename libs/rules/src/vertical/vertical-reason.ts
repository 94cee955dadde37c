import { formatMark } from '../quantities/mark.js';
import type { NoPlaceReason } from '../result/reason.js';
import { ruleSet } from '../rule-sets/index.js';
import type { Citation } from '../rule-sets/rule-set.js';
import { countVertical } from './count-vertical.js';
import type { VerticalCard } from './vertical-card.js';
import {
  levelForFirst,
  rankVertical,
  type VerticalDecidedBy,
  type VerticalPlacing,
} from './vertical-ranking.js';

/** Why a row of the result of a high jump or pole vault stands where it stands. Heights are decimal strings. */
export type VerticalReason = VerticalPlaceReason | NoPlaceReason;

export interface VerticalPlaceReason {
  readonly bib: string;
  readonly place: number;
  /** Whether the place is shared. */
  readonly shared: boolean;
  readonly decidedBy: VerticalDecidedBy;
  /** The one placed just before, from whom the rest of this separates; `null` for the first. */
  readonly comparedWith: string | null;
  readonly own: Countback;
  readonly other: Countback | null;
  /** The greatest height cleared, in the jump-off too. */
  readonly mark: string;
  /** Whether a jump-off between those level for first, of whom this is one, was held. */
  readonly jumpedOff: boolean;
  readonly rule: Citation;
}

/** What the heights say of a competitor, without the jump-off. */
export interface Countback {
  readonly height: string;
  readonly failuresAtHeight: number;
  /** Up to and including that height. */
  readonly totalFailures: number;
}

/** The reason of every row, in the order of the result. */
export function verticalReasonsOf(card: VerticalCard): VerticalReason[] {
  const placings = rankVertical(card);
  const jumpedOff = new Set(card.jumpOff.length > 0 ? levelForFirst(card) : []);
  return countVertical(card).results.map((row, index): VerticalReason => {
    const placing = placings[index];
    if (!placing) return { bib: row.bib, place: null, status: row.status ?? 'NM', mark: row.mark };
    return {
      ...reasonOfPlace(card, placing, placings[index - 1]),
      mark: row.mark ?? '',
      jumpedOff: jumpedOff.size > 1 && jumpedOff.has(row.bib),
    };
  });
}

function reasonOfPlace(
  card: VerticalCard,
  placing: VerticalPlacing,
  before: VerticalPlacing | undefined,
): Omit<VerticalPlaceReason, 'mark' | 'jumpedOff'> {
  const rules = ruleSet(card.rules, card.edition);
  return {
    bib: placing.competitor.bib,
    place: placing.place,
    shared: placing.equal,
    decidedBy: placing.decidedBy,
    comparedWith: before?.competitor.bib ?? null,
    own: countbackOf(card, placing),
    other: before ? countbackOf(card, before) : null,
    rule: placing.decidedBy === 'jump-off' ? rules.jumpOff : rules.verticalTies,
  };
}

function countbackOf({ heights, unit }: VerticalCard, { standing }: VerticalPlacing): Countback {
  return {
    height: formatMark(heights[standing.best] ?? 0, unit),
    failuresAtHeight: standing.failuresAtBest,
    totalFailures: standing.failuresToBest,
  };
}
