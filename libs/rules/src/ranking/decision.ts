/**
 * What separates a placed competitor from the one placed just before: nobody is before (`first`), nothing does
 * (`equal`), or the n-th best mark (n ≥ 1).
 */
export type Decision = 'first' | 'equal' | number;

/** The words of the result document: `first`, `equal`, `best`, `2nd best`, `3rd best`, … */
export function wordsOf(decision: Decision): string {
  if (typeof decision === 'string') return decision;
  return decision === 1 ? 'best' : `${ordinal(decision)} best`;
}

/** `1st`, `2nd`, `3rd`, `4th`, … `11th`, `12th`, `13th`, … `21st`. */
export function ordinal(n: number): string {
  const teen = n % 100 >= 11 && n % 100 <= 13;
  const suffix = teen ? 'th' : (['th', 'st', 'nd', 'rd'][n % 10] ?? 'th');
  return `${n}${suffix}`;
}
