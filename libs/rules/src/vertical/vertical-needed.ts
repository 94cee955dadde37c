import { formatMark } from '../quantities/mark.js';
import type { VerticalCard, VerticalCompetitor } from './vertical-card.js';
import {
  compareStandings,
  rankVertical,
  type RankedStanding,
  type VerticalPlacing,
} from './vertical-ranking.js';
import { FAILURES_ALLOWED, verticalStanding } from './vertical-standing.js';

/**
 * What one competitor must clear, and at which trial at the latest, as the trials stand: the others are taken to clear
 * nothing more, and what lies between is passed. Heights are decimal strings.
 */
export interface VerticalNeeded {
  readonly bib: string;
  /** `null`: none so far. */
  readonly place: number | null;
  /** The trial that is next; `null`: there is none that counts for a place by the heights. */
  readonly next: Clearance | null;
  /** Why there is none. */
  readonly barrier: VerticalBarrier | null;
  /** Every better place that one clearance can bring, the nearest first. */
  readonly places: readonly NeededClearance[];
  /** In a qualification: the lowest height that reaches the standard; `null`: none of the heights does. */
  readonly standard: Clearance | null;
  /** In a qualification that is filled up: what is needed to be among those who go on; `null`: nothing, or in vain. */
  readonly fill: Clearance | null;
}

export interface Clearance {
  readonly height: string;
  /** The competitor's trial at the height, from 1: the last one that is early enough. */
  readonly trial: number;
}

export interface NeededClearance extends Clearance {
  readonly place: number;
  /** Whether the place would be shared; the first then goes to a jump-off, unless that is declined. */
  readonly shared: boolean;
  /** Who holds the place now; `null`: nobody does. */
  readonly rival: string | null;
}

/** Why no clearance to come can bring a place by the heights. The first that applies. */
export type VerticalBarrier =
  | 'DID_NOT_START'
  | 'DISQUALIFIED'
  | 'GUEST'
  | 'JUMP_OFF'
  | 'RETIRED'
  | 'THREE_FAILURES'
  | 'STANDARD_REACHED'
  | 'NO_HEIGHT_LEFT';

/** Of every competitor, in the order of competition. */
export function verticalNeededForAll(card: VerticalCard): VerticalNeeded[] {
  const placings = rankVertical(card);
  return card.competitors.map((competitor) => neededOf(card, placings, competitor));
}

/** Of one competitor; `null`: no competitor has this bib. */
export function verticalNeededFor(card: VerticalCard, bib: string): VerticalNeeded | null {
  const competitor = card.competitors.find((one) => one.bib === bib);
  return competitor ? neededOf(card, rankVertical(card), competitor) : null;
}

/** One way to go on, and what it would be worth. */
interface Option {
  readonly index: number;
  readonly trial: number;
  readonly place: number;
  readonly shared: boolean;
}

function neededOf(
  card: VerticalCard,
  placings: readonly VerticalPlacing[],
  competitor: VerticalCompetitor,
): VerticalNeeded {
  const { bib, series } = competitor;
  const place = placings.find((one) => one.competitor === competitor)?.place ?? null;
  const barrier = barrierTo(card, competitor);
  const nothing = { bib, place, next: null, barrier, places: [], standard: null, fill: null };
  if (barrier) return nothing;
  const from = nextIndex(card, competitor);
  const written = ({ index, trial }: Pick<Option, 'index' | 'trial'>): Clearance => ({
    height: formatMark(card.heights[index]!, card.unit),
    trial,
  });
  const options = optionsOf(card, placings, competitor, from);
  const standard = card.qualifying?.standard ?? Infinity;
  const reaching = options.find(({ index }) => card.heights[index]! >= standard);
  const fill = card.qualifying?.fill ?? 0;
  const filling = options.find((option) => option === reaching || option.place <= fill);
  return {
    ...nothing,
    next: written({ index: from, trial: (series[from]?.length ?? 0) + 1 }),
    places: betterPlaces(placings, place, options).map((option) => ({
      ...written(option),
      place: option.place,
      shared: option.shared,
      rival: placings.find((one) => one.place === option.place)?.competitor.bib ?? null,
    })),
    standard: reaching ? written(reaching) : null,
    fill: filling && fill > 0 && (place ?? Infinity) > fill ? written(filling) : null,
  };
}

function barrierTo(card: VerticalCard, competitor: VerticalCompetitor): VerticalBarrier | null {
  const { status, guest, series } = competitor;
  if (status === 'DNS') return 'DID_NOT_START';
  if (status === 'DQ') return 'DISQUALIFIED';
  if (guest) return 'GUEST';
  if (card.jumpOff.length > 0) return 'JUMP_OFF';
  const { ended, best } = verticalStanding(series);
  if (ended) return ended === 'retired' ? 'RETIRED' : 'THREE_FAILURES';
  const standard = card.qualifying?.standard ?? Infinity;
  if (best !== null && card.heights[best]! >= standard) return 'STANDARD_REACHED';
  return nextIndex(card, competitor) < card.heights.length ? null : 'NO_HEIGHT_LEFT';
}

/** The first height at which a trial may still be taken. */
function nextIndex({ heights }: VerticalCard, { series }: VerticalCompetitor): number {
  const isLeft = (index: number): boolean => {
    const last = series[index]?.at(-1);
    return last === undefined || last === 'failed';
  };
  const next = heights.findIndex((_, index) => isLeft(index));
  return next < 0 ? heights.length : next;
}

/** Every clearance still open, the least demanding first: by height, then from the last trial to the first. */
function optionsOf(
  card: VerticalCard,
  placings: readonly VerticalPlacing[],
  competitor: VerticalCompetitor,
  from: number,
): Option[] {
  const { series } = competitor;
  const others = placings.filter((one) => one.competitor !== competitor).map(({ standing }) => standing);
  const { consecutiveFailures } = verticalStanding(series);
  const failures = series.flatMap((trials) => trials ?? []).filter((trial) => trial === 'failed').length;
  const options: Option[] = [];
  for (let index = from; index < card.heights.length; index++) {
    const taken = index === from ? (series[from]?.length ?? 0) : 0;
    for (let more = FAILURES_ALLOWED - consecutiveFailures - 1; more >= 0; more--) {
      const failuresAtBest = taken + more;
      const own = { best: index, failuresAtBest, failuresToBest: failures + more };
      options.push({ index, trial: failuresAtBest + 1, ...placeAmong(others, own) });
    }
  }
  return options;
}

function placeAmong(
  others: readonly RankedStanding[],
  own: Pick<RankedStanding, 'best' | 'failuresAtBest' | 'failuresToBest'>,
): { readonly place: number; readonly shared: boolean } {
  const comparisons = others.map((other) => compareStandings(other, own));
  return {
    place: 1 + comparisons.filter((comparison) => comparison < 0).length,
    shared: comparisons.includes(0),
  };
}

/** The options that bring a better place than any less demanding one. */
function betterPlaces(
  placings: readonly VerticalPlacing[],
  place: number | null,
  options: readonly Option[],
): Option[] {
  let best = place ?? placings.length + 2;
  return options.filter((option) => {
    const isBetter = option.place < best;
    if (isBetter) best = option.place;
    return isBetter;
  });
}
