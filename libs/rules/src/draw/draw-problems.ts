import { isDrawSeed } from './draw-seed.js';
import type { DrawEntry, DrawTerms } from './draw-terms.js';

export interface DrawProblem {
  readonly field: 'seed' | 'flights' | 'entries';
  readonly code: 'SEED' | 'FLIGHTS' | 'DUPLICATE' | 'MARK';
  readonly message: string;
}

/** Everything that keeps a draw from being made. */
export function drawProblems(entries: readonly DrawEntry[], { seed, flights }: DrawTerms): DrawProblem[] {
  const problems: DrawProblem[] = [];
  if (!isDrawSeed(seed)) {
    problems.push({
      field: 'seed',
      code: 'SEED',
      message: 'A seed is 1 to 200 printable ASCII characters. Choose one that can be copied from paper.',
    });
  }
  if (!Number.isSafeInteger(flights) || flights < 1 || flights > Math.max(1, entries.length)) {
    problems.push({
      field: 'flights',
      code: 'FLIGHTS',
      message: `${entries.length} competitors make 1 to ${Math.max(1, entries.length)} flights, not ${flights}.`,
    });
  }
  return [...problems, ...entryProblems(entries)];
}

function entryProblems(entries: readonly DrawEntry[]): DrawProblem[] {
  const keys = new Set<string>();
  return entries.flatMap(({ key, seedMark }): DrawProblem[] => {
    const isTwice = keys.has(key);
    keys.add(key);
    if (isTwice) {
      return [{ field: 'entries', code: 'DUPLICATE', message: `"${key}" is entered twice. Keep one entry.` }];
    }
    if (seedMark === null || (Number.isSafeInteger(seedMark) && seedMark > 0)) return [];
    const message = `The seed mark of "${key}" is a whole number of units above 0, or none, not ${seedMark}.`;
    return [{ field: 'entries', code: 'MARK', message }];
  });
}
