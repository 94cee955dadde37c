import type { Admission, Card } from '../card.js';
import type { VerticalCard, VerticalCompetitor } from '../vertical/vertical-card.js';

/** Whose a place in the merged card is: the group and the position in its order of competition. */
export interface Origin {
  readonly group: number;
  readonly bib: string;
}

/** Groups as one card. Its bibs are positions, since two groups may give the same bib. */
export interface Merged<C> {
  readonly card: C;
  /** Aligned with the competitors of the card. */
  readonly origins: readonly Origin[];
}

/**
 * The groups of a qualification in a throw or a horizontal jump as one card. They must agree: see `mergeProblems`.
 * @param fill how many go on at least, over all groups.
 */
export function mergeGroups(cards: readonly [Card, ...Card[]], fill: number): Merged<Card> {
  const { competitors, admitted, origins } = joined(cards);
  return { card: { ...cards[0], competitors, admitted, qualifying: qualifying(cards[0], fill) }, origins };
}

/** As {@link mergeGroups}, over a bar: a height that only one group had is one at which the others took no trial. */
export function mergeVerticalGroups(
  cards: readonly [VerticalCard, ...VerticalCard[]],
  fill: number,
): Merged<VerticalCard> {
  const heights = [...new Set(cards.flatMap((card) => card.heights))].sort((a, b) => a - b);
  const aligned = cards.map((card) => ({
    ...card,
    competitors: card.competitors.map((one) => alignedWith(heights, card.heights, one)),
  }));
  const { competitors, admitted, origins } = joined(aligned);
  const card = { ...cards[0], heights, competitors, admitted, qualifying: qualifying(cards[0], fill) };
  return { card, origins };
}

function alignedWith(
  heights: readonly number[],
  own: readonly number[],
  competitor: VerticalCompetitor,
): VerticalCompetitor {
  const trialsAt = new Map(own.map((height, at) => [height, competitor.series[at] ?? null]));
  return { ...competitor, series: heights.map((height) => trialsAt.get(height) ?? null) };
}

function qualifying(card: Card | VerticalCard, fill: number): Card['qualifying'] {
  return card.qualifying && { standard: card.qualifying.standard, fill };
}

interface Group<P> {
  readonly competitors: readonly P[];
  readonly admitted: readonly Admission[];
}

function joined<P extends { readonly bib: string }>(
  groups: readonly Group<P>[],
): Group<P> & { readonly origins: readonly Origin[] } {
  const competitors: P[] = [];
  const admitted: Admission[] = [];
  const origins: Origin[] = [];
  for (const [group, one] of groups.entries()) {
    const positions = new Map<string, string>();
    for (const competitor of one.competitors) {
      const position = String(origins.length);
      positions.set(competitor.bib, position);
      origins.push({ group, bib: competitor.bib });
      competitors.push({ ...competitor, bib: position });
    }
    for (const admission of one.admitted) {
      const position = positions.get(admission.bib);
      if (position !== undefined) admitted.push({ ...admission, bib: position });
    }
  }
  return { competitors, admitted, origins };
}
