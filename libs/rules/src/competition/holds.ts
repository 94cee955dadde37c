import { awaitsReferee } from '../journal/targets.js';
import type { CutChange, HoldCode } from '../journal/verdict.js';
import { cutsOf } from '../progression/cuts.js';
import type { CorrectionEntry, Entry, EntryKind, Judgement } from './entry.js';
import { implementInQuestion } from './implement-in-question.js';
import { isOrderFixed } from './order-change.js';
import type { CompetitionState } from './state.js';

const MAY_CHANGE_A_CUT: ReadonlySet<EntryKind> = new Set([
  'attempt',
  'correction',
  'move',
  'reversal',
  'replacement',
]);

/** Why an entry waits for a referee, known before it is applied: from the journal alone. */
export function holdBefore(state: CompetitionState, entry: Entry): HoldCode | null {
  if (state.signedOff && entry.kind !== 'reopening' && entry.kind !== 'sign-off') return 'SIGNED_OFF';
  if (entry.kind === 'attempt') {
    for (const other of state.attempts.values()) {
      const gone =
        other.standing === 'struck' || other.standing === 'displaced' || other.standing === 'dismissed';
      if (!gone && other.competitor === entry.competitor && other.round === entry.round) return 'ROUND_TAKEN';
    }
    if (state.safety.stops.length > 0 && wasTaken(entry)) return 'DURING_INTERRUPTION';
    return implementInQuestion(state.setup, entry.competitor, entry);
  }
  if (entry.kind === 'order' && isOrderFixed(state, entry)) return 'LAST_ROUND_REORDERED';
  if (awaitsReferee(state, entry) && !bringsMissingWind(state, entry)) return 'AWAITS_REFEREE';
  return entry.kind === 'correction' && entry.by === 'official' ? implementOfCorrection(state, entry) : null;
}

/** A referee who corrects has looked; what an official only learns afterwards is as open as if it came at once. */
function implementOfCorrection(state: CompetitionState, correction: CorrectionEntry): HoldCode | null {
  const trial = state.attempts.get(correction.attempt);
  return trial ? implementInQuestion(state.setup, trial.competitor, correction) : null;
}

/** A pass or a retirement endangers nobody. */
function wasTaken({ outcome }: Judgement): boolean {
  return outcome === 'valid' || outcome === 'unmeasured' || outcome === 'foul';
}

/** A wind that was still missing may come in at any time. */
function bringsMissingWind(state: CompetitionState, entry: Entry): boolean {
  return (
    entry.kind === 'wind' && (state.attempts.get(entry.attempt)?.judgement.wind ?? 'pending') === 'pending'
  );
}

/**
 * What an entry would do to cuts that are already made, that is, after which a trial has been taken. Empty when it
 * would not touch one.
 */
export function cutChanges(before: CompetitionState, after: CompetitionState, entry: Entry): CutChange[] {
  if (!MAY_CHANGE_A_CUT.has(entry.kind)) return [];
  const latest = latestRound(before);
  if (!before.setup.plan.cuts.some((cut) => cut.after < latest)) return [];
  const then = new Map(cutsOf(after.card).map((cut) => [cut.after, cut.through]));
  const keys = new Map(before.setup.competitors.map(({ key, bib }) => [bib, key]));
  return cutsOf(before.card)
    .filter((cut) => cut.after < latest)
    .map((cut) => {
      const through = then.get(cut.after) ?? [];
      return {
        after: cut.after,
        wouldBeIn: through.filter((bib) => !cut.through.includes(bib)).map((bib) => keys.get(bib)!),
        wouldBeOut: cut.through.filter((bib) => !through.includes(bib)).map((bib) => keys.get(bib)!),
      };
    })
    .filter((change) => change.wouldBeIn.length > 0 || change.wouldBeOut.length > 0);
}

/** The last round in which a trial counts. */
function latestRound(state: CompetitionState): number {
  let latest = 0;
  for (const { series } of state.competitors) {
    for (let round = series.length; round > latest; round--) if (series[round - 1] !== null) latest = round;
  }
  return latest;
}
