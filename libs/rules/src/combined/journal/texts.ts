import type { Objection } from '../../journal/verdict.js';
import type { CombinedHoldCode, CombinedRefusalCode } from './verdict.js';

interface Text {
  readonly message: string;
  readonly remedy: string;
  readonly rule?: string;
}

/** How Sectorline itself keeps a journal: not a federation's rule. */
const OURS = 'journal: nothing is changed or removed, every change names what it replaces and why';
/** The article on combined events (who does not start one is out: from memory, alike in every rule set seen). */
const COMBINED = 'WA TR39, combined events';
const WIND =
  'WA TR17 and TR29, wind: races up to 200 m, short hurdles and the long jump, outdoors (from memory)';

export const COMBINED_REFUSALS: Readonly<Record<CombinedRefusalCode, Text>> = {
  ID_REUSED: {
    message: 'The id already belongs to another entry of this journal.',
    remedy: 'Make a new id for a new entry; repeat an entry only unchanged.',
    rule: OURS,
  },
  NOT_ALLOWED: {
    message: 'This is for the referee or the meet director to decide.',
    remedy: 'Ask the referee to enter it.',
  },
  RESULT_OFFICIAL: {
    message: 'The result of the combined event is official.',
    remedy: 'Reopen it with a reason, then enter this.',
    rule: OURS,
  },
  UNKNOWN_ENTRANT: {
    message: 'Nobody entered in this combined event is named so.',
    remedy: 'Name an entrant, or have the director enter one.',
  },
  UNKNOWN_EVENT: {
    message: 'The programme of this combined event has no such event, or none is named where one is needed.',
    remedy: 'Name an event of the programme; the event from which somebody is out only with DNF.',
    rule: COMBINED,
  },
  COMPONENT_LINKED: {
    message: 'This event is counted from a competition of the meet.',
    remedy: 'Record in that competition; the points follow by themselves.',
  },
  UNKNOWN_ENTRY: {
    message: 'The journal of this combined event has no entry with the id that is named.',
    remedy: 'Read the journal again and name an entry that is in it.',
  },
  WRONG_KIND_OF_ENTRY: {
    message: 'The entry that is named is of a kind to which this cannot be done.',
    remedy: 'Name a time or a mark; an official result is reopened, not taken back.',
  },
  NOT_IN_FORCE: {
    message: 'The entry that is named is not in force: it was taken back, set aside or is still held.',
    remedy: 'Have the referee rule on it, or name the entry that took its place.',
  },
  NO_QUESTION: {
    message: 'There is nothing to rule on: the entry is not held.',
    remedy: 'Correct the result, or take it back.',
  },
  NOT_BY_RULING: {
    message: 'A ruling cannot put an entrant back into the event.',
    remedy: 'Correct that the entrant did not start, or set the start again; this then counts by itself.',
    rule: COMBINED,
  },
  REASON_MISSING: {
    message: 'A change of what is written needs its reason.',
    remedy: 'Say why, in a few words.',
    rule: OURS,
  },
  OUTCOME_NOT_OF_EVENT: {
    message: 'A race ends in a time, DNS, DNF or DQ; a field event in a mark, no mark (NM), DNS or DQ.',
    remedy: 'Send the outcome that this kind of event has.',
  },
  MARK_MISSING: {
    message: 'A valid result has its time or mark.',
    remedy: 'Send it, or say why there is none.',
  },
  MARK_NOT_EXPECTED: {
    message: 'Only a valid result has a time or mark, and only a time says how it was taken.',
    remedy: 'Leave it out, or send the outcome as valid.',
  },
  MARK_OUT_OF_RANGE: {
    message: 'Nobody needs so long, or gets so far.',
    remedy: 'Read it again.',
  },
  WIND_NOT_MEASURED: {
    message: 'No wind is measured in this event.',
    remedy: 'Leave the wind out.',
    rule: WIND,
  },
  WIND_NOT_EXPECTED: {
    message: 'The wind belongs to a time or mark, and there is none.',
    remedy: 'Leave the wind out.',
  },
  WIND_OUT_OF_RANGE: {
    message: 'No wind is that strong.',
    remedy: 'Read the gauge again: whole tenths of metres a second.',
  },
  HAS_RESULTS: {
    message: 'The entrant has results in an event that this says was not started.',
    remedy: 'Name the first event not started, or take the results back.',
  },
  OPEN_QUESTIONS: {
    message: 'Questions are open.',
    remedy: 'Rule on what is held, then sign.',
  },
  NOT_COMPLETE: {
    message: 'Results are to come, or a competition that is counted from is not signed off.',
    remedy: 'Enter what is missing and have the competitions signed, or say why it ends without.',
    rule: COMBINED,
  },
  ALREADY_SO: {
    message: 'It is so already.',
    remedy: 'Nothing is to be done.',
  },
};

export const COMBINED_HOLDS: Readonly<Record<CombinedHoldCode, Text>> = {
  SIGNED_OFF: {
    message: 'The result was already official when this came in.',
    remedy: 'Referee: reopen the combined event and rule on the entry, or leave it out.',
    rule: OURS,
  },
  OUT_OF_EVENT: {
    message: 'The entrant did not start an earlier event, or has given up, and so is out of the rest.',
    remedy:
      'Correct the earlier event or set the start if that was wrong: this then counts by itself. Or the referee dismisses it.',
    rule: COMBINED,
  },
  RESULT_TAKEN: {
    message: 'The entrant already has a result in this event.',
    remedy: 'If the other one is wrong, correct it; or the referee rules that this one counts in its place.',
  },
  AWAITS_REFEREE: {
    message: 'After the next event has begun, or for somebody else’s entry, a change is a request.',
    remedy: 'The referee decides.',
  },
};

/** An objection in full. `subject`: whom the entry is about, so that the sentence can be read alone. */
export function combinedObjection<C extends string>(
  code: C,
  field: string | null,
  text: Text,
  subject: string | null,
): Objection<C> {
  const message = subject === null ? text.message : `${subject}: ${text.message}`;
  return { code, field, message, rule: text.rule ?? null, remedy: text.remedy };
}
