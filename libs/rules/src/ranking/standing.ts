import type { Card } from '../card.js';
import { keysOf, type Keys } from './keys.js';
import { rank, type Ranking } from './ranking.js';

/** The places as all trials on the card stand. */
export interface Standing {
  readonly keys: Keys;
  /** Who can have a place: all but guests, those who did not start and the disqualified. Rising positions. */
  readonly members: readonly number[];
  readonly ranking: Ranking;
}

export function standingOf(card: Card): Standing {
  const series = card.competitors.map((competitor) => competitor.series);
  const keys = keysOf(series, card.plan.rounds);
  const members = [...series.keys()].filter((index) => canBePlaced(card, index));
  return { keys, members, ranking: rank(keys, members) };
}

function canBePlaced(card: Card, index: number): boolean {
  const { status, guest } = card.competitors[index]!;
  return status === null && !guest;
}
