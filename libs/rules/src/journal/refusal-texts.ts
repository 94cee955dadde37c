import type { ObjectionText } from './objection.js';
import type { RefusalCode } from './verdict.js';

/** Every refusal in words. */
export const REFUSAL_TEXTS: Readonly<Record<RefusalCode, ObjectionText>> = {
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
      'Enter what is missing (the earlier trial, the bar, the start, the admission, the reinstatement), or dismiss it.',
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
  LAST_ROUND_ORDER: {
    message: 'In the last round nobody is called at another place of the order.',
    remedy:
      'Call in the order of the rules; for who is absent when called, record a pass when the time is over.',
    rule: 'order',
  },
  CUT_NOT_IN_PLAN: {
    message: 'The plan has no cut after that round.',
    remedy: 'Name the round of a cut; from a qualification to the final, none.',
    rule: 'plan',
  },
  HEIGHT_OUT_OF_RANGE: {
    message: 'This cannot be a height of the bar: it is zero or greater than can be written.',
    remedy: 'Read the height on the standard again.',
    rule: 'measuring',
  },
  HEIGHT_NOT_LEFT_OUT: {
    message: 'Only a height of the competition, below the bar, at which nobody jumped can be left out.',
    remedy: 'Leave it in; who does not jump there passes it.',
    rule: 'step',
  },
  TRIAL_OUT_OF_RANGE: {
    message: 'Trials at a height, and rounds of a jump-off, are counted from one.',
    remedy: 'Say which trial of the competitor at this height it was: the first, the second, the third.',
    rule: 'plan',
  },
  UPRIGHTS_NOT_OF_EVENT: {
    message: 'Only in the pole vault are the uprights set for each competitor.',
    remedy: 'Leave the setting out.',
  },
  UPRIGHTS_OUT_OF_RANGE: {
    message: 'This cannot be a setting of the uprights: whole centimetres behind the zero line, 0 to 200.',
    remedy: 'Ask the vaulter again and read the scale.',
    rule: 'uprights',
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
  INCIDENT_NOT_OF_OUTCOME: {
    message: 'What is said to have happened does not belong to this event, or does not lead to this outcome.',
    remedy: 'Judge the trial as the incident demands, or leave the incident out.',
  },
  PROTEST_NOT_EXPECTED: {
    message: 'Only a failure is protested.',
    remedy: 'Leave the protest out, or enter the trial as a failure.',
    rule: 'plan',
  },
  NO_JUMP_OFF: {
    message: 'There is no tie for first place to be decided or left.',
    remedy: 'Enter the trials that are missing first; in a qualification there is no jump-off.',
    rule: 'jump-off',
  },
  JUMP_OFF_ROUND_OPEN: {
    message: 'The round of the jump-off has begun and is not finished.',
    remedy:
      'Enter the other jumps of the round, or take back those of it; then the jump-off can be declined.',
    rule: 'jump-off',
  },
  CHECKS_MISSING: {
    message: 'The all-clear confirms every point of the checklist of the event.',
    remedy: 'Go through the list at the place; what cannot be confirmed is put right first.',
    rule: 'safety',
  },
  WAIT_NOT_OVER: {
    message: 'The usual wait after the last flash or thunder is not over.',
    remedy: 'Wait; or the referee says on which ground it goes on earlier.',
    rule: 'lightning',
  },
  ROUND_CLASH: {
    message: 'Two trials would stand in one round of one competitor.',
    remedy: 'Move the other trial as well, in the same entry.',
    rule: 'plan',
  },
  TRIAL_CLASH: {
    message: 'Two jumps of one competitor would be the same trial at the same height.',
    remedy: 'Move the other jump as well, in the same entry.',
    rule: 'plan',
  },
  HAS_TRIALS: {
    message: 'Who has taken a trial has started.',
    remedy: 'Enter a pass or the retirement; move trials that are on the wrong line.',
    rule: 'plan',
  },
  NAMED_TWICE: { message: 'Somebody is named twice.', remedy: 'Name each once.' },
  BIB_TAKEN: {
    message: 'Two competitors of the competition would wear the same bib.',
    remedy: 'Give both their bibs in the same entry, or another number.',
  },
  FLIGHT_UNKNOWN: {
    message: 'The competition has no such flight.',
    remedy: 'Name a flight of the start list.',
    rule: 'plan',
  },
  UNMATCHED: {
    message: 'Somebody was entered at the circle, and nobody has said yet who it is.',
    remedy: 'Director: match each of them to an athlete, or accept the name that was written down.',
  },
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
