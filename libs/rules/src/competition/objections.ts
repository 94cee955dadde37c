import { formatMark } from '../quantities/mark.js';
import { ruleSet } from '../rule-sets/index.js';
import type { Entry } from './entry.js';
import type { Fault } from './refusals.js';
import type { CompetitionState } from './state.js';
import type { HoldCode, Objection, RefusalCode } from './verdict.js';

interface Text {
  readonly message: string;
  readonly remedy: string;
  /** Where the rule is cited: in the rule set, or our own way of keeping a journal. */
  readonly rule?: 'plan' | 'wind' | 'measuring' | 'ours';
}

/** How Sectorline itself keeps a journal: not a federation's rule. */
const JOURNAL_RULE = 'journal: nothing is changed or removed, every change names what it replaces and why';

const REFUSALS: Readonly<Record<RefusalCode, Text>> = {
  ID_REUSED: {
    message: 'The id already belongs to another entry of this journal.',
    remedy: 'Make a new id for a new entry; repeat an entry only unchanged.',
    rule: 'ours',
  },
  NOT_ALLOWED: {
    message: 'This is for the referee or the meet director to decide.',
    remedy: 'Ask the referee to enter it.',
  },
  RESULT_OFFICIAL: {
    message: 'The result is official.',
    remedy: 'Reopen the competition with a reason, then enter it.',
    rule: 'ours',
  },
  UNKNOWN_COMPETITOR: {
    message: 'Nobody on the start list of this competition is named so.',
    remedy: 'Name a competitor of the start list, or have the director add one.',
  },
  UNKNOWN_ENTRY: {
    message: 'The journal of this competition has no entry with the id that is named.',
    remedy: 'Read the journal again and name an entry that is in it.',
  },
  WRONG_KIND_OF_ENTRY: {
    message: 'The entry that is named is of a kind to which this cannot be done.',
    remedy: 'Name an attempt; an official result is reopened, not taken back.',
  },
  NOT_IN_FORCE: {
    message:
      'The entry that is named is not in force: it was taken back, struck, set aside or is still held.',
    remedy: 'Have the referee rule on it, or name the entry that took its place.',
  },
  NO_QUESTION: {
    message: 'There is nothing to rule on: the entry is neither held nor under protest.',
    remedy: 'Correct the trial, or enter the protest with its held mark first.',
  },
  NOT_BY_RULING: {
    message: 'A ruling cannot supply what this trial is held for.',
    remedy:
      'Enter what is missing (the earlier round, the start, the admission, the reinstatement), or dismiss it.',
  },
  REASON_MISSING: {
    message: 'A change of what is written needs its reason.',
    remedy: 'Say why, in a few words.',
    rule: 'ours',
  },
  ROUND_NOT_IN_PLAN: {
    message: 'The competition has no such round.',
    remedy: 'Name a round of the plan.',
    rule: 'plan',
  },
  CUT_NOT_IN_PLAN: {
    message: 'The plan has no cut after that round.',
    remedy: 'Name the round of a cut; from a qualification to the final, none.',
    rule: 'plan',
  },
  MARK_MISSING: {
    message: 'A valid, measured trial has a mark.',
    remedy: 'Enter the mark, or say that it was valid and not measured.',
    rule: 'measuring',
  },
  MARK_NOT_EXPECTED: {
    message: 'Only a valid trial has a mark, and only a failure a mark held under protest.',
    remedy: 'Leave the mark out, or enter the trial as valid.',
    rule: 'measuring',
  },
  MARK_OUT_OF_RANGE: {
    message: 'This cannot be a mark: it is zero or longer than can be written.',
    remedy: 'Keep the spike in and read the tape again.',
    rule: 'measuring',
  },
  WIND_NOT_MEASURED: {
    message: 'No wind is measured in this event.',
    remedy: 'Send the trial without wind.',
    rule: 'wind',
  },
  WIND_NOT_EXPECTED: {
    message: 'A wind belongs to a measured trial or a failure only.',
    remedy: 'Send the trial without wind.',
    rule: 'wind',
  },
  WIND_OUT_OF_RANGE: {
    message: 'This cannot be a wind reading.',
    remedy: 'Read the gauge again: metres per second with one decimal.',
    rule: 'wind',
  },
  FOUL_NOT_OF_EVENT: {
    message:
      'This reason for a failure does not belong to the event under these rules, or the trial is no failure.',
    remedy: 'Choose one of the reasons listed for the event, or give none.',
  },
  ROUND_CLASH: {
    message: 'Two trials would stand in one round of one competitor.',
    remedy: 'Move the other trial as well, in the same entry.',
    rule: 'plan',
  },
  HAS_TRIALS: {
    message: 'Who has taken a trial has started.',
    remedy: 'Enter a pass or the retirement; move trials that are on the wrong line.',
    rule: 'plan',
  },
  NAMED_TWICE: { message: 'Somebody is named twice.', remedy: 'Name each once.' },
  OPEN_QUESTIONS: {
    message: 'Questions to the referee are still open.',
    remedy: 'Rule on every held entry and every protest first.',
  },
  NOT_COMPLETE: {
    message: 'Trials are still to be taken.',
    remedy: 'Enter them (a pass, a retirement), or say why the competition ended early.',
    rule: 'plan',
  },
  ALREADY_SO: {
    message: 'It already stands so.',
    remedy: 'Nothing has to be done.',
  },
};

const HOLDS: Readonly<Record<HoldCode, Text>> = {
  SIGNED_OFF: {
    message: 'The result was already official when this came in.',
    remedy: 'Referee: reopen the competition and rule on the entry, or leave it out.',
    rule: 'ours',
  },
  NOT_STARTED: {
    message: 'The competitor is marked as not started.',
    remedy: 'Mark the start if the competitor is there; or the referee dismisses the trial.',
  },
  DISQUALIFIED: {
    message: 'The competitor is disqualified.',
    remedy: 'The trial counts if the referee reinstates the competitor; or it is dismissed.',
  },
  AFTER_RETIRING: {
    message: 'The competitor has retired and takes no further trials.',
    remedy: 'Take back the retirement if it was entered in error; or the referee dismisses the trial.',
  },
  AFTER_STANDARD: {
    message: 'The competitor has reached the qualifying standard and takes no further trials.',
    remedy: 'Correct the earlier mark if it was wrong; or the referee dismisses the trial.',
  },
  NOT_THROUGH: {
    message: 'As things stand the competitor is not through the cut.',
    remedy:
      'Enter what is missing before the cut, or have the competitor admitted; or the referee dismisses the trial.',
    rule: 'plan',
  },
  ROUND_TAKEN: {
    message: 'The competitor already has a trial in this round.',
    remedy:
      'Referee: rule which of the two counts. If it was a replacement trial, grant the replacement first.',
    rule: 'plan',
  },
  EARLIER_ROUND_OPEN: {
    message: 'An earlier round of this competitor has no entry yet.',
    remedy: 'Enter the earlier trial (or a pass); this one then counts by itself.',
    rule: 'plan',
  },
  WRONG_IMPLEMENT: {
    message: 'The implement is not the one of the competitor’s category.',
    remedy: 'Check the implement; the referee rules whether the trial counts.',
  },
  CHANGES_A_CUT: {
    message: 'This would change who is through a cut after which trials have been taken.',
    remedy: 'Referee: see who would be in and out, rule, and admit whoever should go on all the same.',
    rule: 'plan',
  },
  AWAITS_REFEREE: {
    message: 'After the next competitor has acted, or for somebody else’s entry, a change is a request.',
    remedy: 'The referee decides.',
  },
};

/** A refusal in full: what is wrong, by which rule, what to do now. */
export function refusalObjection(
  state: CompetitionState,
  entry: Entry,
  fault: Fault,
): Objection<RefusalCode> {
  const text = REFUSALS[fault.code];
  return { code: fault.code, field: fault.field, ...worded(state, entry, text) };
}

/** A hold in full: why the entry waits, by which rule, what lets it in. */
export function holdObjection(state: CompetitionState, entry: Entry, code: HoldCode): Objection<HoldCode> {
  return { code, field: null, ...worded(state, entry, HOLDS[code]) };
}

function worded(
  state: CompetitionState,
  entry: Entry,
  text: Text,
): { message: string; rule: string | null; remedy: string } {
  const about = subjectOf(state, entry);
  return {
    message: about ? `${about}: ${text.message}` : text.message,
    rule: ruleOf(state, text.rule),
    remedy: text.remedy,
  };
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

function ruleOf({ setup }: CompetitionState, source: Text['rule']): string | null {
  const rules = ruleSet(setup.rules, setup.edition);
  switch (source) {
    case 'plan':
      return `${rules.code} ${(setup.stage === 'qualification' ? rules.qualificationPlan : rules.plan).cite.rule}`;
    case 'wind':
      return `${rules.code} ${rules.windLimit.cite.rule}`;
    case 'measuring':
      return `${rules.code} ${rules.precision[setup.event].cite.rule}`;
    case 'ours':
      return JOURNAL_RULE;
    case undefined:
      return null;
  }
}
