import type { Card } from '../card.js';
import { formatMark } from '../quantities/mark.js';
import type { Decision } from '../ranking/decision.js';
import { markAt } from '../ranking/keys.js';
import { positionIn, type Placed } from '../ranking/ranking.js';
import { standingOf, type Standing } from '../ranking/standing.js';
import { ruleSet } from '../rule-sets/index.js';
import type { Citation } from '../rule-sets/rule-set.js';
import { countRows, type CountedRow } from './count-card.js';
import type { ResultRow } from './result-document.js';

/** Why a row of the result of a throw or a horizontal jump stands where it stands. Marks are decimal strings. */
export type Reason = PlaceReason | NoPlaceReason;

export interface PlaceReason {
  readonly bib: string;
  readonly place: number;
  /** Whether the place is shared. */
  readonly shared: boolean;
  readonly decidedBy: Decision;
  /** The one placed just before, from whom the rest of this separates; `null` for the first. */
  readonly comparedWith: string | null;
  /** The best marks, best first, on which the two are level. */
  readonly level: readonly string[];
  /** The first mark that is not level (of the leader: the best); `null`: there is no further mark. */
  readonly own: string | null;
  readonly other: string | null;
  /** A valid trial of those level on the best mark was not measured, so the next best marks decide nothing. */
  readonly undecidable: boolean;
  readonly rule: Citation;
}

export interface NoPlaceReason {
  readonly bib: string;
  readonly place: null;
  readonly status: NonNullable<ResultRow['status']>;
  /** What a guest reached. */
  readonly mark: string | null;
}

/** The reason of every row, in the order of the result. */
export function reasonsOf(card: Card): Reason[] {
  const standing = standingOf(card);
  const { placed } = standing.ranking;
  return countRows(card, standing).map((counted, at) =>
    at < placed.length
      ? reasonOfPlace(card, standing, placed[at]!, placed[at - 1] ?? null)
      : reasonOfNone(counted),
  );
}

function reasonOfNone({ row }: CountedRow): NoPlaceReason {
  return { bib: row.bib, place: null, status: row.status!, mark: row.mark };
}

function reasonOfPlace(card: Card, standing: Standing, placed: Placed, before: Placed | null): PlaceReason {
  const { competitor, place, equal: shared, decidedBy } = placed;
  const bibOf = (index: number): string => card.competitors[index]!.bib;
  const { keys, members } = standing;
  const undecidable = shared && positionIn(keys, members, competitor)!.undecidable;
  const marksOf = (index: number): (string | null)[] => {
    const marks = Array.from({ length: keys.width }, (_, at) => markAt(keys, index, at + 1));
    return marks.map((mark) => (mark === 0 ? null : formatMark(mark, card.unit)));
  };
  const own = marksOf(competitor);
  const firstApart = levelMarks(decidedBy, undecidable, own);
  return {
    bib: bibOf(competitor),
    place,
    shared,
    decidedBy,
    comparedWith: before && bibOf(before.competitor),
    level: own.slice(0, firstApart).filter((mark) => mark !== null),
    own: decidedBy === 'equal' ? null : own[firstApart]!,
    other: decidedBy === 'equal' || before === null ? null : marksOf(before.competitor)[firstApart]!,
    undecidable,
    rule: ruleSet(card.rules, card.edition).ties,
  };
}

/** On how many of the best marks a competitor is level with the one before. */
function levelMarks(decidedBy: Decision, undecidable: boolean, own: readonly unknown[]): number {
  if (decidedBy === 'first') return 0;
  if (decidedBy !== 'equal') return decidedBy - 1;
  return undecidable ? 1 : own.length;
}
