import { jumpOffGroups } from './jump-off.js';
import type { VerticalCard, VerticalCompetitor } from './vertical-card.js';
import { verticalStanding, type VerticalStanding } from './vertical-standing.js';

/** What separates a competitor from the one placed just before. */
export type VerticalDecidedBy =
  | 'first'
  | 'height'
  | 'failures at height'
  | 'total failures'
  | 'jump-off'
  | 'equal';

export interface VerticalPlacing {
  readonly competitor: VerticalCompetitor;
  readonly standing: RankedStanding;
  readonly place: number;
  /** The place is shared. */
  readonly equal: boolean;
  readonly decidedBy: VerticalDecidedBy;
}

/** Of somebody who cleared a height. */
export type RankedStanding = VerticalStanding & { readonly best: number };

type Countable = Pick<RankedStanding, 'best' | 'failuresAtBest' | 'failuresToBest'>;

interface Ranked {
  readonly competitor: VerticalCompetitor;
  readonly standing: RankedStanding;
}

/**
 * The placed competitors, best first, equals in the order of competition: by height, failures at that height,
 * failures up to and including it; level for first by the jump-off, where it was held (WA TR26.8 and 26.9; the first
 * three steps are the same in all rule sets). Guests, the disqualified and those without a height have no place.
 */
export function rankVertical(card: VerticalCard): VerticalPlacing[] {
  const [leaders, ...others] = levelGroups(card);
  if (!leaders) return [];
  return placingsOf([...splitByJumpOff(leaders, card), ...others]);
}

/** The bibs that are level for first after the heights, in the order of competition. */
export function levelForFirst(card: VerticalCard): readonly string[] {
  return (levelGroups(card)[0] ?? []).map(({ competitor }) => competitor.bib);
}

/** What the first rule that separates two competitors is; `null` when the heights leave them level. */
export function separation(a: VerticalStanding, b: VerticalStanding): VerticalDecidedBy | null {
  if (a.best !== b.best) return 'height';
  if (a.failuresAtBest !== b.failuresAtBest) return 'failures at height';
  return a.failuresToBest !== b.failuresToBest ? 'total failures' : null;
}

function levelGroups(card: VerticalCard): Ranked[][] {
  const ranked = card.competitors.flatMap(rankedOf).sort((a, b) => compareStandings(a.standing, b.standing));
  const groups: Ranked[][] = [];
  for (const one of ranked) {
    const group = groups.at(-1);
    if (group?.[0] && compareStandings(group[0].standing, one.standing) === 0) group.push(one);
    else groups.push([one]);
  }
  return groups;
}

function rankedOf(competitor: VerticalCompetitor): Ranked[] {
  if (competitor.status !== null || competitor.guest) return [];
  const { best, ...standing } = verticalStanding(competitor.series);
  return best === null ? [] : [{ competitor, standing: { ...standing, best } }];
}

/** What the heights decide between two; negative when `a` is the better. */
export function compareStandings(a: Countable, b: Countable): number {
  return b.best - a.best || a.failuresAtBest - b.failuresAtBest || a.failuresToBest - b.failuresToBest;
}

function splitByJumpOff(leaders: readonly Ranked[], card: VerticalCard): (readonly Ranked[])[] {
  const byBib = new Map(leaders.map((leader) => [leader.competitor.bib, leader]));
  const groups = jumpOffGroups([...byBib.keys()], card.jumpOff);
  return groups.map((bibs) => bibs.flatMap((bib) => byBib.get(bib) ?? []));
}

function placingsOf(groups: readonly (readonly Ranked[])[]): VerticalPlacing[] {
  const placings: VerticalPlacing[] = [];
  for (const group of groups) {
    const place = placings.length + 1;
    const previous = placings.at(-1)?.standing;
    for (const [index, { competitor, standing }] of group.entries()) {
      const decidedBy = index > 0 ? 'equal' : decidedAgainst(previous, standing);
      placings.push({ competitor, standing, place, equal: group.length > 1, decidedBy });
    }
  }
  return placings;
}

function decidedAgainst(previous: RankedStanding | undefined, standing: RankedStanding): VerticalDecidedBy {
  if (!previous) return 'first';
  // Only a jump-off separates those whom the heights leave level.
  return separation(previous, standing) ?? 'jump-off';
}
