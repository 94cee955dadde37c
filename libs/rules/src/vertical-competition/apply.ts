import type { Fault } from '../journal/faults.js';
import { HOLD_TEXTS } from '../journal/hold-texts.js';
import type { JournalItem } from '../journal/journal-item.js';
import { objectionOf } from '../journal/objection.js';
import { REFUSAL_TEXTS } from '../journal/refusal-texts.js';
import type { HoldCode, Verdict } from '../journal/verdict.js';
import { formatMark, isMark } from '../quantities/mark.js';
import type { VerticalEntry } from './entry.js';
import { holdBefore, waitsFor } from './holds.js';
import { noticesOf } from './notices.js';
import { project } from './project.js';
import { verticalFaultOf } from './refusals.js';
import type { VerticalSetup } from './setup.js';
import type { VerticalState } from './state.js';

export interface VerticalApplied {
  /** The state with the entry in its journal; the same state as before when it was refused. */
  readonly state: VerticalState;
  readonly verdict: Verdict;
}

/** A high jump or pole vault before its first entry. */
export function openVertical(setup: VerticalSetup): VerticalState {
  return project(setup, []);
}

/**
 * The state that a stored journal describes, with the holds as they were decided when the entries came in. Gives the
 * same as {@link applyVertical} entry by entry.
 */
export function restoreVertical(
  setup: VerticalSetup,
  journal: readonly JournalItem<VerticalEntry>[],
): VerticalState {
  return project(setup, journal);
}

/**
 * Decides one entry: accepted, held (it may well have happened, but a referee or a missing entry has to let it in) or
 * refused (it can never be right; not part of the journal). Pure: the given state is not touched.
 */
export function applyVertical(state: VerticalState, entry: VerticalEntry): VerticalApplied {
  const fault = verticalFaultOf(state, entry);
  if (fault) return refuse(state, entry, fault);
  const hold = holdBefore(state, entry);
  if (hold) return keep(state, entry, hold);
  const after = withItem(state, { entry, hold: waitsFor(state, entry) });
  if (after.clash) return refuse(state, entry, { code: 'TRIAL_CLASH', field: null });
  const standing = after.attempts.get(entry.id)?.standing;
  if (standing !== undefined && standing !== 'counts') return keep(state, entry, standing as HoldCode);
  return { state: after, verdict: { standing: 'accepted', notices: noticesOf(state, entry) } };
}

/** Decides a whole list of entries; refused ones leave no trace but their verdict. */
export function applyAllVertical(
  setup: VerticalSetup,
  entries: readonly VerticalEntry[],
): { readonly state: VerticalState; readonly verdicts: readonly Verdict[] } {
  let state = openVertical(setup);
  const verdicts = entries.map((entry) => {
    const applied = applyVertical(state, entry);
    state = applied.state;
    return applied.verdict;
  });
  return { state, verdicts };
}

function withItem(state: VerticalState, item: JournalItem<VerticalEntry>): VerticalState {
  return project(state.setup, [...state.journal, item]);
}

function refuse(state: VerticalState, entry: VerticalEntry, fault: Fault): VerticalApplied {
  const refusal = objectionOf(state.setup, fault, REFUSAL_TEXTS[fault.code], subjectOf(state, entry));
  return { state, verdict: { standing: 'refused', refusal } };
}

function keep(state: VerticalState, entry: VerticalEntry, code: HoldCode): VerticalApplied {
  const hold = objectionOf(state.setup, { code, field: null }, HOLD_TEXTS[code], subjectOf(state, entry));
  return {
    state: withItem(state, { entry, hold: code }),
    verdict: { standing: 'held', hold, cutChanges: [] },
  };
}

/** Whom an entry is about, so that the sentence can be read alone: "bib 12, 1.88, trial 3". */
function subjectOf({ setup }: VerticalState, entry: VerticalEntry): string | null {
  if (entry.kind !== 'jump' && entry.kind !== 'jump-off' && entry.kind !== 'bar') return null;
  const height = isMark(entry.height, setup.unit) ? formatMark(entry.height, setup.unit) : null;
  if (entry.kind === 'bar') return height && `bar at ${height}`;
  const competitor = setup.competitors.find(({ key }) => key === entry.competitor);
  const trial = entry.kind === 'jump' ? `trial ${entry.trial}` : `round ${entry.trial} of the jump-off`;
  return competitor && height ? `bib ${competitor.bib}, ${height}, ${trial}` : null;
}
