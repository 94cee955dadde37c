import type { Card } from '../card.js';
import { cutFieldsOf } from '../progression/cuts.js';
import type { Trial } from '../trial.js';
import type { Findings } from './findings.js';
import type { CellDraft, CompetitorDraft } from './read-competitors.js';

/**
 * Reports trials after a cut of those who are not through it. A cut is looked at only where all that decides it can
 * be read: what would follow from a guess is no problem of the sheet. `drafts`: aligned with the card's competitors.
 */
export function checkCuts(
  card: Card,
  drafts: readonly CompetitorDraft<Trial>[],
  rule: string,
  findings: Findings,
): void {
  const known = roundsKnown(card, drafts, findings);
  const guestsUntil = card.plan.cuts[0]?.after ?? Infinity;
  for (const { cut, through } of cutFieldsOf(card)) {
    if (cut.after > known) return;
    const isThrough = new Set(through);
    for (const [index, { guest, series }] of drafts.entries()) {
      if (guest ? guestsUntil > cut.after : isThrough.has(index)) continue;
      reportTrials(series?.slice(cut.after) ?? [], messageFor(cut.after, guest === true), rule, findings);
    }
  }
}

/** Up to which round nothing is wrong with what decides a cut. */
function roundsKnown(card: Card, drafts: readonly CompetitorDraft<Trial>[], findings: Findings): number {
  if (findings.count === 0) return Infinity;
  const known = drafts.map(({ status, guest, series }) => {
    if (status === undefined || guest === undefined || !series) return 0;
    if (status === 'DNS' || guest) return Infinity;
    const wrong = series.findIndex(({ place }) => findings.hasAt(place));
    return wrong < 0 || wrong >= card.plan.rounds ? Infinity : wrong;
  });
  return Math.min(Infinity, ...known);
}

function messageFor(after: number, isGuest: boolean): string {
  return isGuest
    ? `Guests compete up to the first cut, after round ${after}; take this trial out.`
    : `Not through the cut after round ${after}: take this trial out, or name who let the competitor through in "admitted".`;
}

function reportTrials(
  cells: readonly CellDraft<Trial>[],
  message: string,
  rule: string,
  findings: Findings,
): void {
  for (const { place, content } of cells) {
    if (content !== null) findings.report(place, 'AFTER_CUT', message, rule);
  }
}
