import type { Card } from '../card.js';
import type { Cut, CutTies } from '../plan.js';
import { bestOf, keysOf, type Keys } from '../ranking/keys.js';
import { rank } from '../ranking/ranking.js';
import type { CutResult } from '../result/result-document.js';
import { endedBy, lastRound, reachedIn, retiredIn } from './series.js';

/** One cut as the trials stand. Competitors are positions in the order of competition. */
export interface CutField {
  readonly cut: Cut;
  /** Among whom it was made, rising. */
  readonly counted: readonly number[];
  /** In ranking order, equals by the order of competition, then who was admitted. */
  readonly through: readonly number[];
}

/**
 * Who is through each cut of the plan, from the trials there are up to its round: also for a cut that lies ahead, as
 * it would be made now. A later cut is made among those who are through the one before.
 */
export function cutsOf(card: Card): CutResult[] {
  return cutFieldsOf(card).map(({ cut, through }) => ({
    after: cut.after,
    through: through.map((competitor) => card.competitors[competitor]!.bib),
  }));
}

/** As {@link cutsOf}, by positions in the order of competition. */
export function cutFieldsOf(card: Card): CutField[] {
  const series = card.competitors.map((competitor) => competitor.series);
  const fields: CutField[] = [];
  let field: ReadonlySet<number> | null = null;
  for (const cut of card.plan.cuts) {
    const counted = countedIn(card, cut, field);
    const onMerit = throughOnMerit(keysOf(series, cut.after), counted, cut, card.plan.cutTies);
    const through = [...new Set([...onMerit, ...admittedAfter(card, cut)])];
    fields.push({ cut, counted, through });
    field = new Set(through.filter((index) => field?.has(index) ?? true));
  }
  return fields;
}

/** Whether no trial is left that could change a cut. */
export function isMade(card: Card, { cut, counted }: CutField): boolean {
  return counted.every((index) => {
    const { status, series } = card.competitors[index]!;
    if (status === 'DQ' || retiredIn(series) <= cut.after || lastRound(series) >= cut.after) return true;
    return card.qualifying !== null && reachedIn(series, card.qualifying.standard) <= cut.after;
  });
}

/** All but those who did not start, guests, the disqualified whose series ends by the cut, and who went out before. */
function countedIn(card: Card, cut: Cut, field: ReadonlySet<number> | null): number[] {
  const counted: number[] = [];
  card.competitors.forEach((competitor, index) => {
    if (competitor.status === 'DNS' || competitor.guest || endedBy(competitor, cut.after)) return;
    if (field === null || field.has(index)) counted.push(index);
  });
  return counted;
}

/** Whom the marks take through a cut, in ranking order; nobody who is level with the last of them stays behind. */
export function throughOnMerit(
  keys: Keys,
  counted: readonly number[],
  cut: Cut,
  ties: CutTies,
): readonly number[] {
  const { placed, unplaced } = rank(keys, counted);
  const ranked = placed.map(({ competitor }) => competitor);
  if (counted.length <= cut.through) return [...ranked, ...unplaced];
  const last = placed[cut.through - 1];
  if (last === undefined) return ranked;
  const leastBest = bestOf(keys, last.competitor);
  const goOn = placed.filter(({ competitor, place }) =>
    ties === 'mark' ? bestOf(keys, competitor) >= leastBest : place <= last.place,
  );
  return goOn.map(({ competitor }) => competitor);
}

function admittedAfter(card: Card, cut: Cut): number[] {
  return card.admitted
    .filter(({ after }) => after === cut.after)
    .map(({ bib }) => card.competitors.findIndex((competitor) => competitor.bib === bib))
    .filter((competitor) => competitor >= 0);
}
