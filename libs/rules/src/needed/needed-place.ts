import type { Card } from '../card.js';
import { formatMark } from '../quantities/mark.js';
import { bestOf, withMark } from '../ranking/keys.js';
import { positionIn, type Placed, type Position } from '../ranking/ranking.js';
import type { Standing } from '../ranking/standing.js';
import { smallestMark } from './smallest-mark.js';

export interface NeededPlace {
  readonly place: number;
  /** The smallest mark that brings it. */
  readonly mark: string;
  /** Whether the place is shared with this mark. */
  readonly shared: boolean;
  /** Who holds the place now (of several the first in the result); `null`: nobody. */
  readonly rival: RivalAtPlace | null;
}

export interface RivalAtPlace {
  readonly bib: string;
  /** `null`: valid, but never measured. */
  readonly best: string | null;
  /** What a mark equal to the rival's best does by the rule for ties; `null` when there is no such mark. */
  readonly equalMark: EqualMark | null;
}

/**
 * `undecidable`: it shares the place because somebody level has a valid trial that was not measured, whatever the
 * next best marks are.
 */
export type EqualMark = 'takes' | 'shares' | 'undecidable' | 'falls-short';

/** The mark for every better place, the nearest place first. Where no trial brings a place, the next is named. */
export function neededForPlaces(card: Card, standing: Standing, index: number): NeededPlace[] {
  const { placed } = standing.ranking;
  const now = placed.find(({ competitor }) => competitor === index)?.place ?? placed.length + 2;
  const positionWith = (mark: number): Position =>
    positionIn(withMark(standing.keys, index, mark), standing.members, index)!;
  const own = bestOf(standing.keys, index);
  const places: NeededPlace[] = [];
  for (let target = now - 1; target >= 1; target = places.at(-1)!.place - 1) {
    const toBeat = bestInFront(standing, target);
    const mark = smallestMark(card, { own, toBeat }, (one) => positionWith(one).place <= target);
    if (mark === null) break;
    const { place, equal: shared } = positionWith(mark);
    const holder = placed.find((one) => one.place === place);
    const rival = holder ? rivalAt(card, standing, holder, positionWith) : null;
    places.push({ place, mark: formatMark(mark, card.unit), shared, rival });
  }
  return places;
}

/** The best mark of whoever stands between a competitor and a better place; 0: the place is free, or not measured. */
function bestInFront({ keys, ranking }: Standing, place: number): number {
  if (place > ranking.placed.length) return 0;
  const inFront = ranking.placed.findLast((placed) => placed.place <= place)!;
  return bestOf(keys, inFront.competitor);
}

function rivalAt(
  card: Card,
  { keys }: Standing,
  { competitor, place }: Placed,
  positionWith: (mark: number) => Position,
): RivalAtPlace {
  const { bib } = card.competitors[competitor]!;
  const best = bestOf(keys, competitor);
  if (best === 0) return { bib, best: null, equalMark: null };
  return { bib, best: formatMark(best, card.unit), equalMark: equalMarkAt(place, positionWith(best)) };
}

function equalMarkAt(place: number, position: Position): EqualMark {
  if (position.place > place) return 'falls-short';
  if (!position.equal) return 'takes';
  return position.undecidable ? 'undecidable' : 'shares';
}
