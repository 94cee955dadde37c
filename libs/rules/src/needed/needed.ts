import type { Card } from '../card.js';
import { cutFieldsOf, type CutField } from '../progression/cuts.js';
import { ordersOf } from '../progression/order.js';
import { formatMark } from '../quantities/mark.js';
import { standingOf, type Standing } from '../ranking/standing.js';
import { neededForCut, neededToFill, type NeededPass } from './needed-pass.js';
import { neededForPlaces, type NeededPlace } from './needed-place.js';
import { nextTrialOf, type NextTrial } from './next-trial.js';
import { stepOf } from './smallest-mark.js';

/**
 * What the next trial must bring one competitor, as the trials stand: the others are taken to add nothing. Marks are
 * decimal strings, in the step in which the rule set measures the event.
 */
export interface Needed {
  readonly bib: string;
  /** `null`: none so far. */
  readonly place: number | null;
  readonly next: NextTrial;
  /** Every better place that one trial can bring, the nearest first. */
  readonly places: readonly NeededPlace[];
  /** The next cut for which the trial counts. */
  readonly cut: (NeededPass & { readonly after: number }) | null;
  /** In a qualification: the smallest mark that reaches the standard. */
  readonly standard: string | null;
  /** In a qualification that is filled up, while the standard has not filled it: to be among those who do. */
  readonly fill: NeededPass | null;
}

/** Of every competitor, in the order of competition. */
export function neededForAll(card: Card): Needed[] {
  const needed = neededOn(card);
  return card.competitors.map((_, index) => needed(index));
}

/** Of one competitor; `null`: no competitor has this bib. */
export function neededFor(card: Card, bib: string): Needed | null {
  const index = card.competitors.findIndex((competitor) => competitor.bib === bib);
  return index < 0 ? null : neededOn(card)(index);
}

function neededOn(card: Card): (index: number) => Needed {
  const standing = standingOf(card);
  const cuts = cutFieldsOf(card);
  const orders = ordersOf(card, cuts);
  return (index) => neededOf(card, standing, cuts, index, nextTrialOf(card, cuts, orders, index));
}

function neededOf(
  card: Card,
  standing: Standing,
  cuts: readonly CutField[],
  index: number,
  next: NextTrial,
): Needed {
  const { bib } = card.competitors[index]!;
  const place = standing.ranking.placed.find(({ competitor }) => competitor === index)?.place ?? null;
  const { round } = next;
  if (round === null) return { bib, place, next, places: [], cut: null, standard: null, fill: null };
  const ahead = cuts.find(({ cut }) => cut.after >= round);
  return {
    bib,
    place,
    next,
    places: neededForPlaces(card, standing, index),
    cut: ahead ? { after: ahead.cut.after, ...neededForCut(card, ahead, index) } : null,
    standard: card.qualifying && onStep(card, card.qualifying.standard),
    fill: card.qualifying && neededToFill(card, standing, index, card.qualifying),
  };
}

/** The smallest mark that an official could write down which is not under `mark`. */
function onStep(card: Card, mark: number): string {
  const step = stepOf(card);
  return formatMark(Math.ceil(mark / step) * step, card.unit);
}
