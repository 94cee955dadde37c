import type { ObjectionText } from './objection.js';
import type { HoldCode } from './verdict.js';

/** Every hold in words. */
export const HOLD_TEXTS: Readonly<Record<HoldCode, ObjectionText>> = {
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
    rule: 'qualification',
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
  DURING_INTERRUPTION: {
    message: 'The competition was interrupted when this came in.',
    remedy: 'Referee: rule whether the trial counts; was anybody in danger?',
    rule: 'safety',
  },
  LAST_ROUND_REORDERED: {
    message: 'In the last round nobody is called at another place of the order, and these have been.',
    remedy: 'Their trials count as they stand; the referee rules whether the change of order does.',
    rule: 'order',
  },
  EARLIER_ROUND_OPEN: {
    message: 'An earlier round of this competitor has no entry yet.',
    remedy: 'Enter the earlier trial (or a pass); this one then counts by itself.',
    rule: 'plan',
  },
  WRONG_IMPLEMENT: {
    message: 'The implement is not the one of the competitor’s category, or not one of the event.',
    remedy: 'Check the implement; the referee rules whether the trial counts.',
    rule: 'implement',
  },
  IMPLEMENT_NOT_PASSED: {
    message: 'As far as the register of the meet knows, the implement had not passed its inspection.',
    remedy: 'Look which implement it was, and have it inspected; the referee rules whether the trial counts.',
    rule: 'implement',
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
  AFTER_THREE_FAILURES: {
    message: 'The competitor has failed three times in a row and takes no further trials.',
    remedy:
      'Correct an earlier trial if it was wrong, or rule on its protest: this one then counts by itself. Or the referee dismisses it.',
    rule: 'plan',
  },
  HEIGHT_CLEARED: {
    message: 'The competitor has already cleared this height.',
    remedy: 'Name the height at which the bar stood; or the referee dismisses the trial.',
    rule: 'plan',
  },
  HEIGHT_PASSED: {
    message: 'The competitor has passed a trial at this height and takes no other there.',
    remedy: 'Take back the pass if it was entered in error; or the referee dismisses the trial.',
    rule: 'plan',
  },
  FOURTH_TRIAL: {
    message: 'Nobody has more than three trials at a height.',
    remedy:
      'If an earlier trial is to be taken again, grant the replacement and enter this one in its place; or the referee dismisses it.',
    rule: 'plan',
  },
  TRIAL_TAKEN: {
    message: 'The competitor already has this trial at this height.',
    remedy:
      'Referee: rule which of the two counts. If it was a replacement trial, grant the replacement first.',
    rule: 'plan',
  },
  EARLIER_TRIAL_OPEN: {
    message: 'An earlier trial of this competitor at this height, or in the jump-off, has no entry yet.',
    remedy: 'Enter the earlier trial; this one then counts by itself.',
    rule: 'plan',
  },
  EARLIER_HEIGHT_OPEN: {
    message: 'This competitor still has a trial to take, or to pass, at a lower height.',
    remedy: 'Enter the trial or the pass at the lower height; this one then counts by itself.',
    rule: 'plan',
  },
  NOT_A_HEIGHT: {
    message: 'The bar is not announced for this height.',
    remedy: 'Name the height at which the bar stood, or enter that the bar was set there.',
    rule: 'step',
  },
  ABOVE_THE_BAR: {
    message: 'The bar has not reached this height: others have trials to take below it.',
    remedy: 'Enter what is missing below, or that the bar was set at this height; it then counts by itself.',
    rule: 'step',
  },
  BAR_NOT_RISING: {
    message: 'The bar only rises.',
    remedy: 'Read the height again; if the bar did stand there, the referee rules.',
    rule: 'step',
  },
  BAR_STEP_TOO_SMALL: {
    message: 'The bar is raised by less than the smallest step.',
    remedy: 'Read the height again; if the bar did stand there, the referee rules.',
    rule: 'step',
  },
  BAR_STEP_GROWS: {
    message: 'The step by which the bar is raised never grows until one is left and has won.',
    remedy: 'Read the height again; if the bar did stand there, the referee rules.',
    rule: 'step',
  },
  BAR_STEP_NOT_UNIFORM: {
    message: 'In a combined event the bar is always raised by the same step.',
    remedy: 'Read the height again; if the bar did stand there, the referee rules.',
    rule: 'combined-step',
  },
  NOT_IN_JUMP_OFF: {
    message: 'As things stand the competitor is not level for first place, or no jump-off is held.',
    remedy:
      'Enter the trials that are missing at the heights; this one then counts by itself. Or the referee dismisses it.',
    rule: 'jump-off',
  },
  OUT_OF_JUMP_OFF: {
    message: 'As things stand the competitor is out of the jump-off, or it is decided.',
    remedy: 'Enter or correct the earlier round; or the referee dismisses the trial.',
    rule: 'jump-off',
  },
  JUMP_OFF_DECLINED: {
    message: 'The jump-off was declined before this.',
    remedy: 'Take back that it was declined; or the referee dismisses the trial.',
    rule: 'jump-off',
  },
  ANOTHER_JUMP_OFF_HEIGHT: {
    message: 'Another competitor jumped at another height in this round of the jump-off.',
    remedy: 'Move the trial that names the wrong height; or the referee dismisses it.',
    rule: 'jump-off',
  },
};
