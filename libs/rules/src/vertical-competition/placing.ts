import { admittedOf, statusOf } from '../journal/decisions.js';
import type { HoldCode } from '../journal/verdict.js';
import type { HeightTrials, VerticalCard, VerticalCompetitor } from '../vertical/vertical-card.js';
import { barSetOf, heightsOf } from './heights.js';
import { arrangeJumpOff } from './jump-off-rounds.js';
import { groupedBy, turnOf, type Gathered, type JumpDraft } from './jumps.js';
import { isJump, rowOf, TRIALS_AT_A_HEIGHT, type Course, type Row } from './rows.js';
import type { VerticalSetup } from './setup.js';

/** The jumps of a competition arranged by competitor and height, and those that fit nowhere (yet). */
export interface Placing {
  readonly heights: readonly number[];
  /** Where the bar is. */
  readonly bar: number;
  /** By competitor, in the order of the start list. */
  readonly rows: readonly Row[];
  readonly outside: ReadonlyMap<string, HoldCode>;
  readonly card: VerticalCard;
}

export function place(setup: VerticalSetup, gathered: Gathered): Placing {
  const counted = countedIn(gathered.drafts);
  const jumps = counted.filter((draft) => draft.kind === 'jump');
  const { heights, bar, rows, outside } = settle(setup, gathered, jumps);
  const withoutJumpOff = cardOf(setup, gathered, heights, rows);
  const jumpedOff = counted.filter((draft) => draft.kind === 'jump-off');
  const jumpOff = arrangeJumpOff(setup, gathered, jumpedOff, withoutJumpOff);
  for (const [id, code] of jumpOff.outside) outside.set(id, code);
  return {
    heights,
    bar,
    rows,
    outside,
    card: { ...withoutJumpOff, jumpOff: jumpOff.rounds },
  };
}

/** Whether two jumps both count for one trial: entries that lead to this are not taken. */
export function hasClash({ drafts }: Gathered): boolean {
  const counted = countedIn(drafts);
  return new Set(counted.map(turnOf)).size < counted.length;
}

function countedIn(drafts: Gathered['drafts']): JumpDraft[] {
  return [...drafts.values()].filter((draft) => draft.fate === 'counts');
}

/**
 * Makes the rows, and again for as long as the bar they describe lets in jumps that waited for it: each look lets in
 * one height more, or is the last.
 */
function settle(setup: VerticalSetup, gathered: Gathered, jumps: readonly JumpDraft[]) {
  const heights = heightsOf(setup, gathered);
  const own = groupedBy(jumps, ({ competitor }) => competitor);
  const waiting = jumps.filter((draft) => draft.waited && isJump(draft));
  let released: number | null = null;
  for (;;) {
    const outside = new Map<string, HoldCode>();
    const course: Course = { setup, gathered, heights, released };
    const rows = setup.competitors.map(({ key }) => rowOf(course, key, own.get(key) ?? [], outside));
    const bar = barOf(heights, barSetOf(gathered), rows);
    const isReleased = released !== null && bar <= released;
    if (isReleased || !waiting.some(({ height }) => height > (released ?? 0) && height <= bar)) {
      return { heights, bar, rows, outside };
    }
    released = bar;
  }
}

/**
 * The bar stands where it was set, where somebody has jumped, or where the next trial is due, whichever is highest:
 * a trial that is still missing below does not bring it down.
 */
function barOf(heights: readonly number[], barSet: number | null, rows: readonly Row[]): number {
  const jumped = rows.flatMap(({ trials }) =>
    trials
      .flat()
      .filter(isJump)
      .map(({ height }) => height),
  );
  // Who is in and has no trial due has done with every height.
  const due = rows.flatMap(({ condition, next }) =>
    condition === 'in' ? [next?.height ?? heights.at(-1)!] : [],
  );
  const lowestDue = due.length > 0 ? Math.min(...due) : 0;
  return Math.max(heights[0]!, barSet ?? 0, lowestDue, ...jumped);
}

function cardOf(
  setup: VerticalSetup,
  gathered: Gathered,
  heights: readonly number[],
  rows: readonly Row[],
): VerticalCard {
  const { rules, edition, event, indoor, stage, qualifying, unit } = setup;
  return {
    rules,
    edition,
    event,
    indoor,
    stage,
    qualifying,
    unit,
    heights,
    competitors: setup.competitors.map(
      ({ key, bib, name, club, flight, guest }, index): VerticalCompetitor => {
        const status = statusOf(gathered.decisions, key);
        return { bib, name, club, flight, guest, status, series: seriesOf(rows[index]!) };
      },
    ),
    admitted: admittedOf(gathered.decisions, setup.competitors),
    jumpOff: [],
  };
}

function seriesOf({ trials, condition }: Row): (HeightTrials | null)[] {
  const last = trials.findLastIndex((taken) => taken.length > 0);
  return trials.slice(0, last + 1).map((taken, index) => {
    const isOut = index === last && condition === 'three failures';
    return taken.length === 0 ? null : cellOf(taken, isOut);
  });
}

/**
 * The trials at one height as a card shows them. Where a pass gives up one trial only and another one followed, the
 * pass is not shown, but for a height that was left without clearing it: `X-X` is `XX-`.
 */
function cellOf(taken: readonly JumpDraft[], isOut: boolean): HeightTrials {
  const outcomes = taken.map(({ judgement }) => judgement.outcome);
  const shown = outcomes.filter((outcome) => outcome !== 'passed');
  const hasPassed = shown.length < outcomes.length;
  const isLeft =
    outcomes.at(-1) === 'passed' || (taken.at(-1)!.trial === TRIALS_AT_A_HEIGHT && shown.at(-1) === 'failed');
  return hasPassed && isLeft && !isOut ? [...shown, 'passed'] : shown;
}
