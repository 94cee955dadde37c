import { FAILURES_ALLOWED } from '../vertical/vertical-standing.js';
import type { HoldCode } from '../journal/verdict.js';
import type { JumpTurn } from './entry.js';
import { groupedBy, type Gathered, type JumpDraft } from './jumps.js';
import type { VerticalSetup } from './setup.js';

/** Trials at a height: after as many failures nobody has a further one. */
export const TRIALS_AT_A_HEIGHT = FAILURES_ALLOWED;

/** Why no further trial follows, or that one may (`in`). */
export type Condition =
  | 'in'
  | 'three failures'
  | 'retired'
  | 'standard reached'
  | 'did not start'
  | 'disqualified';

/** The trials of one competitor arranged by heights. */
export interface Row {
  /** Aligned with the heights; each in the order of the trials. */
  readonly trials: readonly (readonly JumpDraft[])[];
  readonly condition: Condition;
  /** The trial that is next; `null`: none, or not before the bar is set higher than all heights so far. */
  readonly next: JumpTurn | null;
}

/** What is settled for all competitors while rows are made. */
export interface Course {
  readonly setup: VerticalSetup;
  readonly gathered: Gathered;
  readonly heights: readonly number[];
  /** Jumps that waited count up to this height; `null`: none of them does yet. */
  readonly released: number | null;
}

/** How far the walk along the heights has come. */
interface Walk {
  condition: Condition;
  failures: number;
  next: JumpTurn | null;
}

/**
 * Arranges the jumps of a competitor by height and trial. What cannot be there is left outside with the reason;
 * nothing depends on the order in which jumps came in, but for a disqualification, which only stops what comes after
 * it, and for jumps that did not fit when they came in: they wait for the bar.
 */
export function rowOf(
  course: Course,
  competitor: string,
  own: readonly JumpDraft[],
  outside: Map<string, HoldCode>,
): Row {
  const { decisions } = course.gathered;
  const walk: Walk = { condition: 'in', failures: 0, next: null };
  const stoppedAt = decisions.disqualifiedAt.get(competitor) ?? Infinity;
  const started = !decisions.notStarted.has(competitor);
  const sorted = own.toSorted((a, b) => a.trial - b.trial);
  const keep = (draft: JumpDraft, reason: HoldCode | null): boolean => {
    const stop = draft.entered > stoppedAt ? 'DISQUALIFIED' : started ? reason : 'NOT_STARTED';
    if (stop) outside.set(draft.id, stop);
    return stop === null;
  };
  const byHeight = groupedBy(sorted, ({ height }) => height);
  const trials = course.heights.map((height) =>
    trialsAt(course, walk, height, byHeight.get(height) ?? [], keep),
  );
  for (const draft of sorted) {
    // A pass told for a height that was left out afterwards says nothing any more.
    const isMoot = draft.judgement.outcome === 'passed' && !draft.waited;
    if (!course.heights.includes(draft.height) && !isMoot) keep(draft, 'NOT_A_HEIGHT');
  }
  const condition = !started ? 'did not start' : stoppedAt < Infinity ? 'disqualified' : walk.condition;
  return { trials, condition, next: condition === 'in' ? walk.next : null };
}

function trialsAt(
  course: Course,
  walk: Walk,
  height: number,
  drafts: readonly JumpDraft[],
  keep: (draft: JumpDraft, reason: HoldCode | null) => boolean,
): JumpDraft[] {
  const taken: JumpDraft[] = [];
  for (const draft of drafts) {
    if (!keep(draft, objectionTo(course, walk, draft, taken))) continue;
    taken.push(draft);
    step(course, walk, draft);
  }
  if (walk.condition === 'in' && !isDone(taken)) {
    walk.next ??= { height, trial: (taken.at(-1)?.trial ?? 0) + 1 };
  }
  return taken;
}

function objectionTo(
  { setup, released }: Course,
  { condition, next }: Walk,
  draft: JumpDraft,
  taken: readonly JumpDraft[],
): HoldCode | null {
  if (condition === 'retired') return 'AFTER_RETIRING';
  if (draft.trial > TRIALS_AT_A_HEIGHT) return 'FOURTH_TRIAL';
  const last = taken.at(-1);
  if (last?.judgement.outcome === 'cleared') return 'HEIGHT_CLEARED';
  if (condition === 'standard reached') return 'AFTER_STANDARD';
  if (condition === 'three failures') return 'AFTER_THREE_FAILURES';
  if (last?.judgement.outcome === 'passed' && setup.passGivesUp === 'height') return 'HEIGHT_PASSED';
  if (draft.waited && isJump(draft) && !(released !== null && draft.height <= released))
    return 'ABOVE_THE_BAR';
  if (next) return 'EARLIER_HEIGHT_OPEN';
  return draft.trial > (last?.trial ?? 0) + 1 ? 'EARLIER_TRIAL_OPEN' : null;
}

function step({ setup }: Course, walk: Walk, { height, judgement: { outcome } }: JumpDraft): void {
  if (outcome === 'failed' && ++walk.failures >= FAILURES_ALLOWED) walk.condition = 'three failures';
  if (outcome === 'retired') walk.condition = 'retired';
  if (outcome !== 'cleared') return;
  walk.failures = 0;
  const standard = setup.qualifying?.standard;
  if (standard !== undefined && height >= standard) walk.condition = 'standard reached';
}

/** Whether nothing more is to come at the height from somebody who is still in. */
function isDone(taken: readonly JumpDraft[]): boolean {
  const last = taken.at(-1);
  const outcome = last?.judgement.outcome;
  return outcome === 'cleared' || outcome === 'passed' || last?.trial === TRIALS_AT_A_HEIGHT;
}

/** Whether somebody ran up, other than a pass or a retirement, which can be told at any time. */
export function isJump({ judgement: { outcome } }: JumpDraft): boolean {
  return outcome === 'cleared' || outcome === 'failed';
}
