import type { AdmittedBy } from '../codes.js';
import type { ResultRow } from '../result/result-document.js';
import type { VerticalCard } from './vertical-card.js';
import type { VerticalPlacing } from './vertical-ranking.js';

export type Qualified = NonNullable<ResultRow['qualified']>;

const ADMITTED: Readonly<Record<AdmittedBy, Qualified>> = { R: 'qR', J: 'qJ', D: 'qD' };

/**
 * Who goes on from a qualification, by bib: all who cleared the standard or more; if they are fewer than the field is
 * to be, the best of the others, with whoever is level with the last of these (WA TR25.9 to 25.16, from memory); then
 * those who were admitted. Empty in a final.
 */
export function verticalQualifiers(
  card: VerticalCard,
  placings: readonly VerticalPlacing[],
): ReadonlyMap<string, Qualified> {
  const qualified = new Map<string, Qualified>();
  if (card.qualifying === null) return qualified;
  const { standard, fill } = card.qualifying;
  const lastPlace = lastPlaceThatGoesOn(placings, fill);
  for (const { competitor, standing, place } of placings) {
    if ((card.heights[standing.best] ?? 0) >= standard) qualified.set(competitor.bib, 'Q');
    else if (place <= lastPlace) qualified.set(competitor.bib, 'q');
  }
  for (const { bib, by } of card.admitted) {
    if (!qualified.has(bib)) qualified.set(bib, ADMITTED[by]);
  }
  return qualified;
}

/** The place of the last who fills the field, whom equals share; those with the standard are always ahead. */
function lastPlaceThatGoesOn(placings: readonly VerticalPlacing[], fill: number): number {
  return fill === 0 ? 0 : (placings[fill - 1]?.place ?? placings.length);
}
