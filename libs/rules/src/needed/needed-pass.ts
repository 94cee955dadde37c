import type { Card } from '../card.js';
import { throughOnMerit, type CutField } from '../progression/cuts.js';
import { formatMark } from '../quantities/mark.js';
import { bestOf, keysOf, withMark, type Keys } from '../ranking/keys.js';
import { rank } from '../ranking/ranking.js';
import type { Standing } from '../ranking/standing.js';
import { smallestMark } from './smallest-mark.js';

/** What takes a competitor among those who go on, as it stands. */
export interface NeededPass {
  /** Among them already. */
  readonly isIn: boolean;
  /** The smallest mark that is enough; `null` when `isIn`. */
  readonly mark: string | null;
  /** The last of those who go on now; `null` when `isIn`, or while there is room. */
  readonly rival: RivalInPass | null;
}

export interface RivalInPass {
  readonly bib: string;
  /** `null`: valid, but never measured. */
  readonly best: string | null;
  /** Whether a mark equal to the rival's best is enough, by the rule for ties; `null` when there is no such mark. */
  readonly equalIsEnough: boolean | null;
}

/** Through the cut that lies ahead. */
export function neededForCut(card: Card, { cut, counted, through }: CutField, index: number): NeededPass {
  const series = card.competitors.map((competitor) => competitor.series);
  const keys = keysOf(series, cut.after, card.plan.rounds);
  const isIn = through.includes(index);
  return neededToPass({
    card,
    keys,
    index,
    isIn,
    room: cut.through,
    passing: (withKeys) => throughOnMerit(withKeys, counted, cut, card.plan.cutTies),
  });
}

/** Among those who fill up a qualification; `null` when the standard alone decides, or has filled it. */
export function neededToFill(
  card: Card,
  { keys, members, ranking }: Standing,
  index: number,
  { standard, fill }: NonNullable<Card['qualifying']>,
): NeededPass | null {
  const withStandard = ranking.placed.filter(({ competitor }) => bestOf(keys, competitor) >= standard);
  if (withStandard.length >= fill) return null;
  const passing = (withKeys: Keys): readonly number[] =>
    rank(withKeys, members).placed.flatMap(({ competitor, place }) => (place <= fill ? [competitor] : []));
  return neededToPass({ card, keys, index, isIn: passing(keys).includes(index), room: fill, passing });
}

interface Passing {
  readonly card: Card;
  readonly keys: Keys;
  readonly index: number;
  readonly isIn: boolean;
  /** How many go on, without those who are level with the last. */
  readonly room: number;
  /** Who goes on, in ranking order. */
  readonly passing: (keys: Keys) => readonly number[];
}

function neededToPass({ card, keys, index, isIn, room, passing }: Passing): NeededPass {
  if (isIn) return { isIn, mark: null, rival: null };
  const goingOn = passing(keys);
  const last = goingOn.length < room ? undefined : goingOn.at(-1);
  const isEnough = (mark: number): boolean => passing(withMark(keys, index, mark)).includes(index);
  const toBeat = last === undefined ? 0 : bestOf(keys, last);
  const mark = smallestMark(card, { own: bestOf(keys, index), toBeat }, isEnough);
  return {
    isIn,
    mark: mark === null ? null : formatMark(mark, card.unit),
    rival: last === undefined ? null : rivalIn(card, last, toBeat, isEnough),
  };
}

function rivalIn(card: Card, last: number, best: number, isEnough: (mark: number) => boolean): RivalInPass {
  const { bib } = card.competitors[last]!;
  if (best === 0) return { bib, best: null, equalIsEnough: null };
  return { bib, best: formatMark(best, card.unit), equalIsEnough: isEnough(best) };
}
