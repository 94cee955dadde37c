import type { Performance } from './performance.js';
import { decisionKey, decisionsOf, type Ratification, type RatificationDecision } from './ratification.js';
import { lineOf, type RecordLine } from './record-line.js';
import { listKey, listsOf, type RecordList } from './record-list.js';
import type { RecordTerms } from './record-terms.js';

/**
 * All lists of bests and records. A book is never changed: what comes in makes a new one, and every line is derived
 * from the marks and decisions that are in it, so that it does not matter in which order they came.
 */
export interface RecordBook {
  readonly terms: RecordTerms;
  readonly performances: ReadonlyMap<string, Performance>;
  readonly decisions: ReadonlyMap<string, RatificationDecision>;
  readonly entries: ReadonlyMap<string, ListEntries>;
}

/** The marks of a list, by id. */
export interface ListEntries {
  readonly list: RecordList;
  readonly performances: ReadonlyMap<string, Performance>;
}

/**
 * The book of all marks and decisions. Of two marks with one id the later in the list replaces the other.
 * @param ratifications in the order in which they were made.
 */
export function recordBook(
  terms: RecordTerms,
  performances: Iterable<Performance> = [],
  ratifications: readonly Ratification[] = [],
): RecordBook {
  const byId = new Map<string, Performance>();
  for (const performance of performances) byId.set(performance.id, performance);
  const entries = new Map<string, { list: RecordList; performances: Map<string, Performance> }>();
  for (const performance of byId.values()) {
    for (const list of listsOf(performance, terms)) {
      const key = listKey(list);
      const entry = entries.get(key) ?? { list, performances: new Map<string, Performance>() };
      entry.performances.set(performance.id, performance);
      entries.set(key, entry);
    }
  }
  return { terms, performances: byId, decisions: decisionsOf(ratifications), entries };
}

/** With one more mark, or with another one in the place of the one that had its id. */
export function withPerformance(book: RecordBook, performance: Performance): RecordBook {
  const before = withoutPerformance(book, performance.id);
  const entries = new Map(before.entries);
  for (const list of listsOf(performance, book.terms)) {
    const key = listKey(list);
    const performances = new Map(entries.get(key)?.performances).set(performance.id, performance);
    entries.set(key, { list, performances });
  }
  const performances = new Map(before.performances).set(performance.id, performance);
  return { ...before, performances, entries };
}

/** Without a mark that turned out not to be one. */
export function withoutPerformance(book: RecordBook, id: string): RecordBook {
  const performance = book.performances.get(id);
  if (!performance) return book;
  const performances = new Map(book.performances);
  performances.delete(id);
  const entries = new Map(book.entries);
  for (const list of listsOf(performance, book.terms)) {
    const key = listKey(list);
    const left = new Map(entries.get(key)?.performances);
    left.delete(id);
    if (left.size > 0) entries.set(key, { list, performances: left });
    else entries.delete(key);
  }
  return { ...book, performances, entries };
}

/**
 * With the marks of a competition as they stand now, in the place of those that it had: after each entry, whatever the
 * entry changed.
 */
export function withCompetition(
  book: RecordBook,
  competition: string,
  performances: readonly Performance[],
): RecordBook {
  const now = new Map(performances.map((one) => [one.id, JSON.stringify(one)]));
  const gone = [...book.performances.values()].filter(
    (one) => one.competition === competition && !now.has(one.id),
  );
  const changed = performances.filter(
    (one) => now.get(one.id) !== JSON.stringify(book.performances.get(one.id)),
  );
  const without = gone.reduce((left, { id }) => withoutPerformance(left, id), book);
  return changed.reduce(withPerformance, without);
}

/** With a decision of the referee. It is kept even if the mark is not (yet) in the book. */
export function withRatification(
  book: RecordBook,
  { kind, performance, decision }: Ratification,
): RecordBook {
  return { ...book, decisions: new Map(book.decisions).set(decisionKey(kind, performance), decision) };
}

/** How one list stands; `null`: no mark is in it. */
export function recordLine(book: RecordBook, list: RecordList): RecordLine | null {
  const entry = book.entries.get(listKey(list));
  return entry ? lineOf(entry.list, [...entry.performances.values()], book) : null;
}

/** All lists, in the order of their keys. */
export function recordLines(book: RecordBook): RecordLine[] {
  const keys = [...book.entries.keys()].sort();
  return keys.flatMap((key) => recordLine(book, book.entries.get(key)!.list) ?? []);
}

/** The marks of a list, in no order; empty without any. */
export function performancesIn(book: RecordBook, list: RecordList): readonly Performance[] {
  return [...(book.entries.get(listKey(list))?.performances.values() ?? [])];
}

/** Whether the referee refused a mark in lists of this kind. */
export function isRefused(
  { decisions }: RecordBook,
  { kind }: Pick<RecordList, 'kind'>,
  id: string,
): boolean {
  return decisions.get(decisionKey(kind, id)) === 'refused';
}
