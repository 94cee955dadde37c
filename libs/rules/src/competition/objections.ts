import type { Fault } from '../journal/faults.js';
import { HOLD_TEXTS } from '../journal/hold-texts.js';
import { objectionOf } from '../journal/objection.js';
import { REFUSAL_TEXTS } from '../journal/refusal-texts.js';
import type { HoldCode, Objection, RefusalCode } from '../journal/verdict.js';
import { formatMark } from '../quantities/mark.js';
import type { Entry } from './entry.js';
import type { CompetitionState } from './state.js';

/** A refusal in full: what is wrong, by which rule, what to do now. */
export function refusalObjection(
  state: CompetitionState,
  entry: Entry,
  fault: Fault,
): Objection<RefusalCode> {
  return objectionOf(state.setup, fault, REFUSAL_TEXTS[fault.code], subjectOf(state, entry));
}

/** A hold in full: why the entry waits, by which rule, what lets it in. */
export function holdObjection(state: CompetitionState, entry: Entry, code: HoldCode): Objection<HoldCode> {
  return objectionOf(state.setup, { code, field: null }, HOLD_TEXTS[code], subjectOf(state, entry));
}

/** Whom an entry is about, so that the sentence can be read alone: "bib 12, round 3, 58.10". */
function subjectOf(state: CompetitionState, entry: Entry): string | null {
  if (entry.kind !== 'attempt') return null;
  const competitor = state.setup.competitors.find(({ key }) => key === entry.competitor);
  if (!competitor) return null;
  const inRange = entry.mark !== null && Number.isSafeInteger(entry.mark) && entry.mark > 0;
  const mark = inRange ? `, ${formatMark(entry.mark, state.setup.unit)}` : '';
  return `bib ${competitor.bib}, round ${entry.round}${mark}`;
}
