import { formatMark } from '../quantities/mark.js';
import type { CutResult, ResultRow } from '../result/result-document.js';
import { verticalQualifiers } from './vertical-qualifying.js';
import type { VerticalCard, VerticalCompetitor } from './vertical-card.js';
import { rankVertical, type VerticalPlacing } from './vertical-ranking.js';
import { verticalStanding } from './vertical-standing.js';

/** What the result document of a vertical jump holds; there are no cuts and no orders of rounds. */
export interface VerticalResult {
  readonly results: readonly ResultRow[];
  readonly cuts: readonly CutResult[];
}

/** Counts a high jump or pole vault: who is placed first, then `NM`, `DQ`, `DNS` and guests. */
export function countVertical(card: VerticalCard): VerticalResult {
  const placings = rankVertical(card);
  const qualified = verticalQualifiers(card, placings);
  const markOf = marksOf(card);
  const rowOf = (competitor: VerticalCompetitor, placing: VerticalPlacing | null): ResultRow => ({
    bib: competitor.bib,
    place: placing?.place ?? null,
    equal: placing?.equal ?? false,
    ...rowOfMark(competitor, markOf(competitor)),
    decidedBy: placing?.decidedBy ?? null,
    qualified: qualified.get(competitor.bib) ?? null,
  });
  return {
    results: [
      ...placings.map((placing) => rowOf(placing.competitor, placing)),
      ...unplacedInOrder(card, placings).map((competitor) => rowOf(competitor, null)),
    ],
    cuts: [],
  };
}

/** In the order in which they follow those who are placed. */
const UNPLACED = ['NM', 'DQ', 'DNS', 'GUEST'] as const;

/** Those without a place, in the order in which the result has them. */
export function unplacedInOrder(
  card: VerticalCard,
  placings: readonly VerticalPlacing[],
): VerticalCompetitor[] {
  const placed = new Set(placings.map(({ competitor }) => competitor));
  const unplaced = card.competitors.filter((competitor) => !placed.has(competitor));
  const statusOf = ({ status, guest }: VerticalCompetitor): (typeof UNPLACED)[number] =>
    status ?? (guest ? 'GUEST' : 'NM');
  return UNPLACED.flatMap((status) => unplaced.filter((competitor) => statusOf(competitor) === status));
}

function rowOfMark(competitor: VerticalCompetitor, height: string | null): Pick<ResultRow, MarkKey> {
  const mark = competitor.status === null ? height : null;
  const noMark = mark === null ? 'NM' : null;
  const status = competitor.status ?? (competitor.guest ? 'GUEST' : noMark);
  // No vertical jump has wind, so any height may count for records as far as wind decides it.
  return { mark, wind: null, windLegal: null, windLegalMark: mark, status };
}

type MarkKey = 'mark' | 'status' | 'wind' | 'windLegal' | 'windLegalMark';

/** The greatest height cleared, in the jump-off too (WA TR25.21, from memory), as written; `null`: none. */
function marksOf(card: VerticalCard): (competitor: VerticalCompetitor) => string | null {
  const inJumpOff = new Map<string, number>();
  for (const { height, tries } of card.jumpOff) {
    for (const { bib, trial } of tries) {
      if (trial === 'cleared') inJumpOff.set(bib, Math.max(height, inJumpOff.get(bib) ?? 0));
    }
  }
  return ({ bib, series }) => {
    const { best } = verticalStanding(series);
    const inCompetition = best === null ? 0 : (card.heights[best] ?? 0);
    const height = Math.max(inCompetition, inJumpOff.get(bib) ?? 0);
    return height === 0 ? null : formatMark(height, card.unit);
  };
}
