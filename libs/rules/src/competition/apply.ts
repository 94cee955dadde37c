import { isFarOutside } from '../events/event.js';
import type { Fault } from '../journal/faults.js';
import type { JournalItem } from '../journal/journal-item.js';
import type { HoldCode, NoticeCode, Verdict } from '../journal/verdict.js';
import { isOnStep } from '../quantities/measuring.js';
import { ruleSet } from '../rule-sets/index.js';
import { callsOf } from './calls.js';
import type { Entry } from './entry.js';
import { cutChanges, holdBefore } from './holds.js';
import { implementInQuestion } from './implement-in-question.js';
import { holdObjection, refusalObjection } from './objections.js';
import { project } from './project.js';
import { faultOf } from './refusals.js';
import type { CompetitionSetup } from './setup.js';
import type { CompetitionState } from './state.js';

export interface Applied {
  /** The state with the entry in its journal; the same state as before when it was refused. */
  readonly state: CompetitionState;
  readonly verdict: Verdict;
}

/** A competition before its first entry. */
export function openCompetition(setup: CompetitionSetup): CompetitionState {
  return project(setup, []);
}

/**
 * The state that a stored journal describes, with the holds as they were decided when the entries came in. Gives the
 * same as {@link apply} entry by entry.
 */
export function restoreCompetition(
  setup: CompetitionSetup,
  journal: readonly JournalItem[],
): CompetitionState {
  return project(setup, journal);
}

/**
 * Decides one entry: accepted, held (it may well have happened, but a referee or a missing entry has to let it in) or
 * refused (it can never be right; not part of the journal). Pure: the given state is not touched.
 */
export function apply(state: CompetitionState, entry: Entry): Applied {
  const fault = faultOf(state, entry);
  if (fault) return refuse(state, entry, fault);
  const hold = holdBefore(state, entry);
  if (hold) return keep(state, entry, hold, []);
  const after = withItem(state, { entry, hold: null });
  if (after.clash) return refuse(state, entry, { code: 'ROUND_CLASH', field: null });
  const changes = cutChanges(state, after, entry);
  if (changes.length > 0) return keep(state, entry, 'CHANGES_A_CUT', changes);
  const standing = after.attempts.get(entry.id)?.standing;
  if (standing !== undefined && standing !== 'counts') return keep(state, entry, standing as HoldCode, []);
  return { state: after, verdict: { standing: 'accepted', notices: noticesOf(state, entry) } };
}

/** Decides a whole list of entries; refused ones leave no trace but their verdict. */
export function applyAll(
  setup: CompetitionSetup,
  entries: readonly Entry[],
): { readonly state: CompetitionState; readonly verdicts: readonly Verdict[] } {
  let state = openCompetition(setup);
  const verdicts = entries.map((entry) => {
    const applied = apply(state, entry);
    state = applied.state;
    return applied.verdict;
  });
  return { state, verdicts };
}

function withItem(state: CompetitionState, item: JournalItem): CompetitionState {
  return project(state.setup, [...state.journal, item]);
}

function refuse(state: CompetitionState, entry: Entry, fault: Fault): Applied {
  return { state, verdict: { standing: 'refused', refusal: refusalObjection(state, entry, fault) } };
}

function keep(
  state: CompetitionState,
  entry: Entry,
  hold: HoldCode,
  changes: Extract<Verdict, { standing: 'held' }>['cutChanges'],
): Applied {
  return {
    state: withItem(state, { entry, hold }),
    verdict: { standing: 'held', hold: holdObjection(state, entry, hold), cutChanges: changes },
  };
}

function noticesOf(state: CompetitionState, entry: Entry): NoticeCode[] {
  const notices: NoticeCode[] = [];
  if (entry.kind === 'attempt') {
    const [up] = callsOf(state);
    if (up?.competitor !== entry.competitor || up.round !== entry.round) notices.push('OUT_OF_TURN');
  }
  const { setup } = state;
  if (implementNoticed(state, entry)) notices.push('IMPLEMENT_IN_QUESTION');
  if ((entry.kind === 'attempt' || entry.kind === 'correction') && entry.mark !== null) {
    const { precision } = ruleSet(setup.rules, setup.edition);
    if (!isOnStep(entry.mark, precision[setup.event].value[setup.unit])) notices.push('FINER_THAN_MEASURED');
    if (isFarOutside(setup.event, entry.mark, setup.unit)) notices.push('FAR_OUTSIDE');
  }
  return notices;
}

/** A referee's correction counts at once, and a failure is one with whatever implement: it is only said. */
function implementNoticed({ setup, attempts }: CompetitionState, entry: Entry): boolean {
  if (entry.kind !== 'attempt' && entry.kind !== 'correction') return false;
  const { implementStanding } = entry;
  if (implementStanding !== undefined && implementStanding !== 'passed') return true;
  const competitor = entry.kind === 'attempt' ? entry.competitor : attempts.get(entry.attempt)?.competitor;
  return competitor !== undefined && implementInQuestion(setup, competitor, entry) !== null;
}
