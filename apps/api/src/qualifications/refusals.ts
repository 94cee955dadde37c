import type { MergeProblem } from '#rules';
import { refusal, type Refusal } from '../platform/errors/user-error.types.js';

/* Why a qualification is not set up so, or its final not drawn. */

export function groupRefusal({ code, group, message }: MergeProblem): Refusal {
  return refusal({
    code,
    path: ['competitionIds', String(group)],
    message,
    remedy: 'Name competitions that are qualifications of one event under the same terms.',
  });
}

export function groupsOpen(titles: readonly string[], rule: string): Refusal {
  return refusal({
    code: 'GROUPS_OPEN',
    path: ['qualificationId'],
    message: `Not signed off yet: ${titles.join(', ')}.`,
    rule,
    remedy: 'Have the referee sign them off; or send a reason for drawing before that.',
  });
}

export function questionsOpen(titles: readonly string[]): Refusal {
  return refusal({
    code: 'QUESTIONS_OPEN',
    path: ['qualificationId'],
    message: `The referee has questions to rule on: ${titles.join(', ')}.`,
    remedy: 'Rule on them first: they may change who goes on.',
  });
}

export function notQualified(bibs: readonly string[]): Refusal {
  return refusal({
    code: 'NOT_QUALIFIED',
    path: ['finalId'],
    message: `On the start list of the final are others than those who go on: ${bibs.join(', ')}.`,
    remedy: 'Withdraw them from the final, or have the referee admit them to it in their group.',
  });
}

export function bibTwice(bibs: readonly string[]): Refusal {
  return refusal({
    code: 'BIB_TWICE',
    path: ['qualificationId'],
    message: `Two who go on have the same bib: ${bibs.join(', ')}.`,
    remedy: 'Enter the finalists by hand under bibs that differ, then draw the final with startListDraw.',
  });
}

export const GROUP_TWICE = refusal({
  code: 'GROUP_TWICE',
  path: ['competitionIds'],
  message: 'A competition is one group of one qualification.',
  remedy: 'Name each group once; dissolve the other qualification if it was set up in error.',
});

export const FINAL_TAKEN = refusal({
  code: 'FINAL_TAKEN',
  path: ['finalId'],
  message: 'The final belongs to another qualification.',
  remedy: 'Name another final, or dissolve the other qualification if it was set up in error.',
});

export const FINAL_DIFFERS = refusal({
  code: 'FINAL_DIFFERS',
  path: ['finalId'],
  message: 'This is no final of the same event at the same meet, measured in the same unit.',
  remedy: 'Name the final that comes of these groups.',
});

export const FINAL_SET = refusal({
  code: 'FINAL_SET',
  path: ['finalId'],
  message: 'The qualification has its final.',
  remedy: 'Leave the field out.',
});

export const FINAL_MISSING = refusal({
  code: 'FINAL_MISSING',
  path: ['finalId'],
  message: 'The final is not set up.',
  remedy: 'Send `finalId`; or `finalTitle` where there are no heights to be announced.',
});

export const FINAL_DRAWN = refusal({
  code: 'FINAL_DRAWN',
  path: ['qualificationId'],
  message: 'A final was drawn of this qualification, and draws stay on record.',
  remedy: 'Leave it as it is; the final can be drawn again, with a reason.',
});

export const NOBODY_QUALIFIED = refusal({
  code: 'NOBODY_QUALIFIED',
  path: ['qualificationId'],
  message: 'Nobody goes on, as things stand.',
  remedy: 'Draw the final when there are results.',
});

export const REASON_MISSING = refusal({
  code: 'REASON_MISSING',
  path: ['reason'],
  message: 'The start list of the final is drawn already.',
  remedy: 'Say why it is drawn again; the draw before stays on record.',
});

export const ID_REUSED = refusal({
  code: 'ID_REUSED',
  path: ['id'],
  message: 'Something else was drawn under this id.',
  remedy: 'Make a new id; send the same id only with the same content.',
});
