import type { Card } from '../card.js';
import { ordersOf } from '../progression/order.js';
import type { VerticalCard } from '../vertical/vertical-card.js';
import type { Performance } from './performance.js';

/** What a card does not say of its competition. */
export interface Occasion {
  /** Names the competition, also in the ids of its performances. */
  readonly competition: string;
  /** `YYYY-MM-DD` */
  readonly onDate: string;
  readonly meet: string | null;
}

/** What a card does not say of a competitor. */
export type Performer = Pick<Performance, 'athlete' | 'club' | 'sex' | 'ages' | 'implementGrams'>;

/**
 * The valid, measured marks of a throw or a horizontal jump, a qualification's too. Those of a disqualified competitor
 * fall; a guest's stand in no list of the meet (constructed). In time they follow each other round by round in the
 * order of each; where flights are called one after the other, attempts of the journal say it better.
 */
export function performancesOfCard(
  card: Card,
  occasion: Occasion,
  performerOf: (bib: string) => Performer,
): Performance[] {
  const orders = ordersOf(card);
  return card.competitors.flatMap(({ bib, status, guest, series }, position) => {
    if (status !== null) return [];
    return series.flatMap((trial, at): Performance[] => {
      if (trial?.outcome !== 'valid') return [];
      const turn = orders[at]?.indexOf(position) ?? 0;
      return [
        {
          ...shared(card, occasion, performerOf(bib), guest),
          id: `${occasion.competition}/${bib}/${at + 1}`,
          mark: trial.mark!,
          wind: trial.wind,
          order: orderIn(at, turn),
        },
      ];
    });
  });
}

/** The heights cleared in a vertical jump, in the jump-off too (World Athletics TR25.21, from memory). */
export function performancesOfVerticalCard(
  card: VerticalCard,
  occasion: Occasion,
  performerOf: (bib: string) => Performer,
): Performance[] {
  return card.competitors.flatMap(({ bib, status, guest, series }, position) => {
    if (status !== null) return [];
    const cleared = (mark: number, at: number, id: string): Performance => ({
      ...shared(card, occasion, performerOf(bib), guest),
      id: `${occasion.competition}/${bib}/${id}`,
      mark,
      wind: null,
      order: orderIn(at, position),
    });
    const heights = card.heights.flatMap((height, at) =>
      series[at]?.includes('cleared') ? [cleared(height, at, String(height))] : [],
    );
    const jumpOff = card.jumpOff.flatMap(({ height, tries }, round) => {
      const clears = tries.some((one) => one.bib === bib && one.trial === 'cleared');
      return clears ? [cleared(height, card.heights.length + round, `jump-off-${round + 1}`)] : [];
    });
    return [...heights, ...jumpOff];
  });
}

function shared(
  { event, unit, indoor }: Pick<Card | VerticalCard, 'event' | 'unit' | 'indoor'>,
  { competition, onDate, meet }: Occasion,
  performer: Performer,
  guest: boolean,
): Omit<Performance, 'id' | 'mark' | 'wind' | 'order'> {
  return { competition, event, unit, indoor, onDate, meet: guest ? null : meet, ...performer };
}

/** More competitors than a sheet holds. */
const TURNS = 10_000;

function orderIn(round: number, turn: number): number {
  return (round + 1) * TURNS + turn;
}
