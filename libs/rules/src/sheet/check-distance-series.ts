import type { Trial } from '../trial.js';
import type { Findings } from './findings.js';
import type { CellDraft } from './read-competitors.js';

/** The standard of a qualification, in units of the sheet, and the rule behind it. */
export interface StandardToReach {
  readonly standard: number;
  readonly rule: string | null;
}

/** Reports trials that could not have been, by the competitor's own series alone. */
export function checkDistanceSeries(
  series: readonly CellDraft<Trial>[],
  toReach: StandardToReach | null,
  findings: Findings,
): void {
  let [gap, retired, reached] = [false, false, false];
  for (const { place, content } of series) {
    if (content === null) {
      gap = true;
      continue;
    }
    if (gap)
      findings.report(
        place,
        'GAP',
        'A trial stands before this one that was not taken: write "-" or "X" there.',
      );
    if (retired)
      findings.report(place, 'AFTER_RETIRING', 'Who has retired takes no more trials; take this one out.');
    if (reached && toReach) {
      const message = 'Who has reached the standard takes no more trials; take this one out.';
      findings.report(place, 'AFTER_STANDARD', message, toReach.rule);
    }
    retired ||= content?.outcome === 'retired';
    reached ||= toReach !== null && (content?.mark ?? 0) >= toReach.standard;
  }
}
