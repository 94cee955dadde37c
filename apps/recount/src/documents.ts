import type { CombinedResultDocument, MeetResultDocument, Problem, ResultDocument } from '#rules';

/** What one FILE gives. */
export type Counted = ResultDocument | CombinedResultDocument | MeetResultDocument;

/** The document of a file that could not be read. */
export function unreadable(message: string): ResultDocument {
  const problem: Problem = { path: '', code: 'UNREADABLE', message, rule: null };
  return { format: 'sectorline-result/1', problems: [problem] };
}

function differs(document: Counted): boolean {
  if ('differences' in document && (document.differences ?? []).length > 0) return true;
  return document.format === 'sectorline-meet-result/1' && (document.results ?? []).some(differs);
}

/** Exit statuses; of several the smallest one wins, but for 0. */
export const EXIT = { counted: 0, failed: 1, invalid: 2, differs: 3 } as const;
export type Status = (typeof EXIT)[keyof typeof EXIT];

/** How counting one file went. */
export function statusOf(document: Counted): Status {
  if (document.problems.some(({ code }) => code === 'UNREADABLE')) return EXIT.failed;
  if (document.problems.length > 0) return EXIT.invalid;
  return differs(document) ? EXIT.differs : EXIT.counted;
}

/** The status of all of them together: the first that applies to any. */
export function worstOf(statuses: readonly Status[]): Status {
  const [first = EXIT.counted] = statuses.filter((status) => status !== EXIT.counted).sort((a, b) => a - b);
  return first;
}

const SAID: readonly (readonly [Status, string])[] = [
  [EXIT.counted, 'counted'],
  [EXIT.differs, 'counted otherwise than the card says'],
  [EXIT.invalid, 'not valid'],
  [EXIT.failed, 'not readable'],
];

/** `4 files: 2 counted, 1 counted otherwise than the card says, 1 not valid`. */
export function summaryOf(statuses: readonly Status[]): string {
  const counts = SAID.map(([status, words]) => ({
    count: statuses.filter((one) => one === status).length,
    words,
  }));
  const said = counts.filter(({ count }) => count > 0).map(({ count, words }) => `${count} ${words}`);
  return `${statuses.length} files: ${said.join(', ')}`;
}
