import type { Card } from '../card.js';
import { standingOf } from '../ranking/standing.js';
import { unplacedOf } from '../result/count-card.js';
import { unplacedInOrder } from '../vertical/count-vertical.js';
import type { VerticalCard } from '../vertical/vertical-card.js';
import { rankVertical } from '../vertical/vertical-ranking.js';
import type { PlacedRow } from './shared-points.js';

/*
 * The rows of a result as far as scoring looks at them, in its order. A guest is in the competition and not in the
 * match: it has no club.
 */

/** Of a throw or a horizontal jump. */
export function placesOn(card: Card): PlacedRow[] {
  const standing = standingOf(card);
  const rowOf = (competitor: number, place: number | null): PlacedRow =>
    placedRow(card.competitors[competitor]!, place);
  return [
    ...standing.ranking.placed.map(({ competitor, place }) => rowOf(competitor, place)),
    ...unplacedOf(card, standing).map((competitor) => rowOf(competitor, null)),
  ];
}

/** Of a high jump or pole vault. */
export function verticalPlacesOn(card: VerticalCard): PlacedRow[] {
  const placings = rankVertical(card);
  return [
    ...placings.map(({ competitor, place }) => placedRow(competitor, place)),
    ...unplacedInOrder(card, placings).map((competitor) => placedRow(competitor, null)),
  ];
}

function placedRow(
  { bib, club, guest }: { readonly bib: string; readonly club: string | null; readonly guest: boolean },
  place: number | null,
): PlacedRow {
  return { bib, place, club: guest ? null : club };
}
