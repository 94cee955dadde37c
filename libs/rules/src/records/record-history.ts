import { compareInTime, type Performance } from './performance.js';
import { performancesIn, type RecordBook } from './record-book.js';
import { counts } from './record-line.js';
import type { RecordList } from './record-list.js';

/** A mark that was the best of its list when it was made, or level with it. */
export interface Holding {
  readonly performance: Performance;
  readonly relation: 'first' | 'better' | 'equal';
  /** The day on which a better one was made; `null`: it stands. */
  readonly until: string | null;
}

/**
 * Who held a best or record from when, as the marks and decisions of today tell it: the marks that count, in order of
 * time, each at least level with all before it.
 */
export function recordHistory(book: RecordBook, list: RecordList): Holding[] {
  const inTime = performancesIn(book, list)
    .filter((performance) => counts(list, performance, book))
    .toSorted(compareInTime);
  const held: Omit<Holding, 'until'>[] = [];
  for (const performance of inTime) {
    const best = held.at(-1)?.performance.mark ?? 0;
    if (performance.mark < best) continue;
    const relation = held.length === 0 ? 'first' : performance.mark > best ? 'better' : 'equal';
    held.push({ performance, relation });
  }
  return held.map((holding, at) => {
    const beaten = held.slice(at).find(({ performance }) => performance.mark > holding.performance.mark);
    return { ...holding, until: beaten?.performance.onDate ?? null };
  });
}
