import { eventOf } from '../events/event.js';
import type { Recheck } from '../implements/inspection-log.js';
import { formatMark } from '../quantities/mark.js';
import { compareInTime, windStanding, type Performance, type WindStanding } from './performance.js';
import { decisionKey } from './ratification.js';
import { isRefused, performancesIn, type RecordBook } from './record-book.js';
import { isRatified, listsOf, type RecordList } from './record-list.js';

/** What is still to be done before a mark counts. */
export type Outstanding = 'wind reading' | 'implement re-check' | 'measuring of the bar' | 'ratification';

/** What a mark would be, in one list, at the moment it was made. */
export interface Recognition {
  readonly list: RecordList;
  /** `first`: there was no mark in the list. */
  readonly relation: 'first' | 'better' | 'equal';
  /** The best until then, in units of the mark; `null`: none. */
  readonly before: number | null;
  /** Anything but `legal` and `expected`: it is shown as wind-assisted and does not count. */
  readonly wind: WindStanding;
  /** Empty: it counts already. */
  readonly outstanding: readonly Outstanding[];
}

/**
 * What a mark would be, in all its lists: a personal or season best, a club or meet record, or level with one. It is
 * held against the marks that were made before it, legal ones that the referee has not refused; later ones do not
 * matter, nor does whether the mark is in the book already. A wind-assisted mark is named where it is better.
 * @param recheck how the implement was found after the attempt; `null`: nothing is thrown, or nobody looked yet.
 */
export function recognise(
  book: RecordBook,
  performance: Performance,
  recheck: Recheck | null = null,
): Recognition[] {
  const wind = windStanding(performance, book.terms.windLimitTenths);
  const isAssisted = wind === 'over the limit' || wind === 'not measured';
  return listsOf(performance, book.terms).flatMap((list): Recognition[] => {
    const before = bestBefore(book, list, performance);
    const relation = before === null ? 'first' : relationTo(before, performance.mark);
    if (relation === null || (relation === 'equal' && isAssisted)) return [];
    const outstanding = isAssisted ? [] : outstandingFor(book, list, performance, wind, recheck);
    return [{ list, relation, before, wind, outstanding }];
  });
}

function relationTo(before: number, mark: number): 'better' | 'equal' | null {
  if (mark > before) return 'better';
  return mark === before ? 'equal' : null;
}

function bestBefore(book: RecordBook, list: RecordList, than: Performance): number | null {
  const marks = performancesIn(book, list)
    .filter((one) => one.id !== than.id && compareInTime(one, than) < 0)
    .filter((one) => windStanding(one, book.terms.windLimitTenths) === 'legal')
    .filter((one) => !isRefused(book, list, one.id))
    .map(({ mark }) => mark);
  return marks.length === 0 ? null : Math.max(...marks);
}

function outstandingFor(
  { decisions }: RecordBook,
  { kind }: RecordList,
  { id, event, competition }: Performance,
  wind: WindStanding,
  recheck: Recheck | null,
): Outstanding[] {
  const outstanding: Outstanding[] = wind === 'expected' ? ['wind reading'] : [];
  const decision = decisions.get(decisionKey(kind, id));
  if (!isRatified(kind) || competition === null || decision === 'ratified') return outstanding;
  if (eventOf(event).hasImplement && recheck !== 'passed') outstanding.push('implement re-check');
  if (eventOf(event).kind === 'vertical-jump') outstanding.push('measuring of the bar');
  return [...outstanding, 'ratification'];
}

/** In words: `would be a meet record of 52.10, before 51.80 (implement re-check, ratification outstanding)`. */
export function recognitionSentence(
  { list, relation, before, wind, outstanding }: Recognition,
  { mark, unit }: Pick<Performance, 'mark' | 'unit'>,
): string {
  const written = formatMark(mark, unit);
  const known = before === null ? 'the first on the list' : `before ${formatMark(before, unit)}`;
  if (wind === 'over the limit' || wind === 'not measured') {
    return `${written}, wind ${wind}: no ${list.kind} (${known})`;
  }
  const is = outstanding.length === 0 ? 'is' : 'would be';
  const what = relation === 'equal' ? `level with the ${list.kind}` : `a ${list.kind} of ${written}`;
  const left = outstanding.length === 0 ? '' : ` (${outstanding.join(', ')} outstanding)`;
  return `${is} ${what}, ${known}${left}`;
}
