import type { ResultRow } from '../result/result-document.js';
import type { VerticalCard } from './vertical-card.js';
import type { VerticalPlacing } from './vertical-ranking.js';

export type VerticalQualified = NonNullable<ResultRow['qualified']>;

/**
 * Who goes on from a qualification, by bib: all who cleared the standard or more; if they are fewer than the field is
 * to be, the best of the others, with whoever is level with the last of these (WA TR25.9 to 25.16, from memory); then
 * those who were admitted. Empty in a final.
 */
export function verticalQualifiers(
  card: VerticalCard,
  placings: readonly VerticalPlacing[],
): ReadonlyMap<string, VerticalQualified> {
  const qualified = new Map<string, VerticalQualified>();
  if (card.qualifying === null) return qualified;
  const { standard, fill } = card.qualifying;
  for (const { competitor, standing, place } of placings) {
    if ((card.heights[standing.best] ?? 0) >= standard) qualified.set(competitor.bib, 'Q');
    // Those with the standard are placed before all others, and level competitors share the place.
    else if (place <= fill) qualified.set(competitor.bib, 'q');
  }
  for (const { bib, after, by } of card.admitted) {
    if (after === null && !qualified.has(bib)) qualified.set(bib, `q${by}`);
  }
  return qualified;
}
