import { eventOf } from '../events/event.js';
import type { Recheck } from '../implements/inspection-log.js';
import { windStanding } from './performance.js';
import type { Ratification } from './ratification.js';
import { isRefused, performancesIn, type RecordBook } from './record-book.js';
import { listsOf } from './record-list.js';

/** What speaks against ratifying a mark. The referee decides; the wind and an unknown mark are not up for decision. */
export interface RatificationProblem {
  readonly code: 'NO_SUCH_MARK' | 'NO_SUCH_LIST' | 'WIND' | 'NOT_THE_BEST' | 'RECHECK';
  /** Whether the mark could not become a record all the same. */
  readonly prevents: boolean;
  readonly message: string;
}

/**
 * Everything that speaks against a ratification, to be shown before it is made.
 * @param recheck how the implement was found after the attempt; `null`: nobody looked.
 */
export function ratificationProblems(
  book: RecordBook,
  { performance: id, kind }: Pick<Ratification, 'performance' | 'kind'>,
  recheck: Recheck | null = null,
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
  const problems: RatificationProblem[] = [];
  const wind = windStanding(performance, book.terms.windLimitTenths);
  if (wind !== 'legal') {
    problems.push(
      problem('WIND', true, `Wind ${wind}: the mark cannot be a record. Enter the reading, if there is one.`),
    );
  }
  const isBeaten = lists.every((list) =>
    performancesIn(book, list).some(
      (one) =>
        one.mark > performance.mark &&
        windStanding(one, book.terms.windLimitTenths) === 'legal' &&
        !isRefused(book, list, one.id),
    ),
  );
  if (isBeaten) {
    problems.push(problem('NOT_THE_BEST', false, 'A better mark stands in every list of this one.'));
  }
  if (eventOf(performance.event).hasImplement && recheck !== 'passed') {
    const found = recheck === null || recheck === 'missing' ? 'was not checked' : `re-check: ${recheck}`;
    problems.push(
      problem('RECHECK', false, `The implement ${found} after the attempt. Weigh and measure it again.`),
    );
  }
  return problems;
}

function problem(code: RatificationProblem['code'], prevents: boolean, message: string): RatificationProblem {
  return { code, prevents, message };
}
