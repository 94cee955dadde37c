import { eventOf } from '../events/event.js';
import type { Recheck } from '../implements/inspection-log.js';
import { windStanding, type Performance } from './performance.js';
import type { Ratification } from './ratification.js';
import { isRefused, performancesIn, type RecordBook } from './record-book.js';
import { listsOf, type RecordList } from './record-list.js';

export const RATIFICATION_PROBLEM_CODES = [
  ...['NO_SUCH_MARK', 'NO_SUCH_LIST', 'WIND', 'NOT_THE_BEST', 'RECHECK', 'MEASURING'],
] as const;
export type RatificationProblemCode = (typeof RATIFICATION_PROBLEM_CODES)[number];

/** How the mark was measured: over ground with a steel tape or electronically; over a bar, the bar before and after. */
export type Measuring = 'steel-tape' | 'electronic' | 'bar';

/** What was looked at after the attempt. */
export interface RatificationChecks {
  /** How the implement was found; `null`: nobody looked, or nothing is thrown. */
  readonly recheck: Recheck | null;
  /** `null`: not said. */
  readonly measuring: Measuring | null;
}

const UNCHECKED: RatificationChecks = { recheck: null, measuring: null };

/** What speaks against ratifying a mark. The referee decides; the wind and an unknown mark are not up for decision. */
export interface RatificationProblem {
  readonly code: RatificationProblemCode;
  /** Whether the mark could not become a record all the same. */
  readonly prevents: boolean;
  readonly message: string;
}

/** Everything that speaks against a ratification, to be shown before it is made. */
export function ratificationProblems(
  book: RecordBook,
  { performance: id, kind }: Pick<Ratification, 'performance' | 'kind'>,
  checks: RatificationChecks = UNCHECKED,
): RatificationProblem[] {
  const performance = book.performances.get(id);
  if (!performance) {
    return [
      problem('NO_SUCH_MARK', true, 'No such mark stands. Choose one of the marks that would be a record.'),
    ];
  }
  const lists = listsOf(performance, book.terms).filter((list) => list.kind === kind);
  if (lists.length === 0) {
    const message = `The mark stands in no list of this kind (${kind}): enter club or meet, category and implement.`;
    return [problem('NO_SUCH_LIST', true, message)];
  }
  const isBeaten = lists.every((list) => isBeatenIn(book, list, performance));
  const wind = windStanding(performance, book.terms.windLimitTenths);
  const windy = `Wind ${wind}: the mark cannot be a record. Enter the reading, if there is one.`;
  return [
    ...(wind === 'legal' ? [] : [problem('WIND', true, windy)]),
    ...(isBeaten ? [problem('NOT_THE_BEST', false, 'A better mark stands in every list of this one.')] : []),
    ...checkProblems(performance, checks),
  ];
}

function isBeatenIn(book: RecordBook, list: RecordList, { mark }: Performance): boolean {
  return performancesIn(book, list).some(
    (one) =>
      one.mark > mark &&
      windStanding(one, book.terms.windLimitTenths) === 'legal' &&
      !isRefused(book, list, one.id),
  );
}

/** Re-check and measuring as World Athletics CR31 asks for them (from memory). */
function checkProblems(
  { event }: Performance,
  { recheck, measuring }: RatificationChecks,
): RatificationProblem[] {
  const { hasImplement, kind } = eventOf(event);
  const problems: RatificationProblem[] = [];
  if (hasImplement && recheck !== 'passed') {
    const found = recheck === null || recheck === 'missing' ? 'was not checked' : `re-check: ${recheck}`;
    const message = `The implement ${found} after the attempt. Weigh and measure it again.`;
    problems.push(problem('RECHECK', false, message));
  }
  if (kind === 'vertical-jump' && measuring !== 'bar') {
    problems.push(problem('MEASURING', false, 'The bar is measured before the trial and after it.'));
  }
  if (kind !== 'vertical-jump' && measuring !== 'steel-tape' && measuring !== 'electronic') {
    const message = 'A record is measured with a steel tape or electronically, by the officials.';
    problems.push(problem('MEASURING', false, message));
  }
  return problems;
}

function problem(code: RatificationProblem['code'], prevents: boolean, message: string): RatificationProblem {
  return { code, prevents, message };
}
