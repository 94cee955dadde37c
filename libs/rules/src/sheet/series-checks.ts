import type { Findings } from './findings.js';
import type { CellDraft, CompetitorDraft } from './read-competitors.js';

/** Reports cells beyond the last round or height, empty ones included. */
export function checkLength<T>(
  series: readonly CellDraft<T>[],
  most: number,
  what: string,
  rule: string | null,
  findings: Findings,
): void {
  for (const { place } of series.slice(most)) {
    findings.report(place, 'TOO_MANY', `There are only ${most} ${what}; take this cell out.`, rule);
  }
}

/** Reports every trial of a competitor who did not start. */
export function checkStarted<T>(competitor: CompetitorDraft<T>, findings: Findings): void {
  if (competitor.status !== 'DNS') return;
  for (const { place, content } of competitor.series ?? []) {
    if (content === null) continue;
    const message = 'Who did not start has no trial; take it out, or take out the status DNS.';
    findings.report(place, 'AFTER_DNS', message);
  }
}
