import type { RuleSet } from '../rule-sets/rule-set.js';
import { jumpOffFaults, type JumpOffFaultKind } from '../vertical/jump-off-faults.js';
import { seriesFaults, type SeriesFaultCode } from '../vertical/series-faults.js';
import type { HeightTrials, VerticalCard } from '../vertical/vertical-card.js';
import type { Findings } from './findings.js';
import type { CellDraft } from './read-competitors.js';
import type { RoundDraft } from './read-jump-off.js';

const SERIES_REMEDIES: Readonly<Record<SeriesFaultCode, string>> = {
  GAP: 'Before this cell stands a height without an entry: write "-" there if it was passed.',
  AFTER_RETIRING: 'Who has retired takes no more trials; take this cell out.',
  AFTER_STANDARD: 'Who has cleared the standard takes no more trials; take this cell out.',
  AFTER_THREE_FAILURES:
    'After three failures in a row nothing follows; write what was jumped before them, or take this out.',
  OPEN_HEIGHT: 'A height left after failures is written "X-" or "XX-".',
};

/** Read in an older text; the other rule sets have the same rule. */
const THREE_FAILURES = 'WA TR26.2';

/** What can only be told from cells that could all be read. */
const NEEDS_ALL_BEFORE: readonly SeriesFaultCode[] = [
  'AFTER_STANDARD',
  'AFTER_THREE_FAILURES',
  'OPEN_HEIGHT',
];

/**
 * Reports cells that could not have been, by the competitor's own series. After a cell that cannot be read, only what
 * holds whatever it was. `standardIndex`: the first height that reaches the standard, or `null`.
 */
export function checkVerticalSeries(
  series: readonly CellDraft<HeightTrials>[],
  standardIndex: number | null,
  ruleSet: RuleSet | undefined,
  findings: Findings,
): void {
  const unread = series.findIndex(({ content }) => content === undefined);
  const trials = series.map(({ content }) => (content === undefined ? [] : content));
  for (const { index, code } of seriesFaults(trials, standardIndex)) {
    if (unread >= 0 && index > unread && NEEDS_ALL_BEFORE.includes(code)) continue;
    const cell = series[index];
    if (cell) findings.report(cell.place, code, SERIES_REMEDIES[code], ruleBehind(code, ruleSet));
  }
}

function ruleBehind(code: SeriesFaultCode, ruleSet: RuleSet | undefined): string | null {
  if (code === 'AFTER_STANDARD') return ruleSet?.qualificationPlan.cite.rule ?? null;
  if (code !== 'AFTER_THREE_FAILURES' || !ruleSet) return null;
  return ruleSet.code === 'WA' ? THREE_FAILURES : `${ruleSet.code}, as ${THREE_FAILURES}`;
}

const JUMP_OFF_REMEDIES: Readonly<Record<JumpOffFaultKind, string>> = {
  'not level for first':
    'Only those level for first after the heights are in the jump-off; take this entry out.',
  'already decided': 'The jump-off was decided before this round; take the round out.',
  'already out': 'This competitor was out of the jump-off before this round; take the entry out.',
  'no entry':
    'This competitor is still in the jump-off and another one jumped: give the entry, "-" if there was none.',
};

/** Reports what could not have been in the jump-off of a card whose heights and series are without a problem. */
export function checkJumpOff(
  card: VerticalCard,
  rounds: readonly (RoundDraft | undefined)[],
  rule: string,
  findings: Findings,
): void {
  for (const { round, bib, kind } of jumpOffFaults(card)) {
    const draft = rounds[round];
    if (!draft) continue;
    const place = bib === null ? draft.place : draft.placeOf(bib);
    findings.report(place, 'JUMP_OFF', JUMP_OFF_REMEDIES[kind], rule);
  }
}
