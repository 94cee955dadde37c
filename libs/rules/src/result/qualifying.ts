import type { Card } from '../card.js';
import { bestOf } from '../ranking/keys.js';
import type { Standing } from '../ranking/standing.js';
import type { ResultRow } from './result-document.js';

export type Qualified = ResultRow['qualified'];

/**
 * By position in the order of competition: how a competitor goes on. In a qualification all at or over the standard
 * are `Q`; the best of the others are `q` until the number to fill is reached, with all who are level with the last
 * of them (World Athletics TR25.9 to 25.16, from memory). Whom the marks do not take on, the referee, the jury or a
 * draw may have admitted: to the final, or through a cut of the final.
 */
export function qualifiedOf(card: Card, { keys, ranking }: Standing): Qualified[] {
  const qualified = card.competitors.map(({ bib }) => admittedAs(card, bib));
  if (card.qualifying === null) return qualified;
  const { standard, fill } = card.qualifying;
  for (const { competitor, place } of ranking.placed) {
    if (bestOf(keys, competitor) >= standard) qualified[competitor] = 'Q';
    // Those with the standard are placed before all others, and level competitors share the place.
    else if (place <= fill) qualified[competitor] = 'q';
  }
  return qualified;
}

function admittedAs(card: Card, bib: string): Qualified {
  const admission = card.admitted.find((one) => one.bib === bib);
  return admission ? `q${admission.by}` : null;
}
