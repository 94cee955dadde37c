import { cutsOf } from '../progression/cuts.js';
import { targetsOf } from './refusals.js';
import type { Entry, EntryKind } from './entry.js';
import type { CompetitionState } from './state.js';
import type { CutChange, HoldCode } from './verdict.js';

const AMENDMENTS: ReadonlySet<EntryKind> = new Set(['correction', 'move', 'reversal', 'replacement', 'wind']);
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
    const due = state.setup.competitors.find(
      (competitor) => competitor.key === entry.competitor,
    )?.implementGrams;
    const used = entry.implementGrams;
    return used !== null && due !== null && due !== undefined && used !== due ? 'WRONG_IMPLEMENT' : null;
  }
  return awaitsReferee(state, entry) ? 'AWAITS_REFEREE' : null;
}

/**
 * An official takes back or corrects what he entered himself until the next competitor acts; after that, and for
 * every replacement trial, the referee decides. A wind that was still missing may come in at any time.
 */
function awaitsReferee(state: CompetitionState, entry: Entry): boolean {
  if (entry.by !== 'official' || !AMENDMENTS.has(entry.kind)) return false;
  if (entry.kind === 'replacement') return true;
  const { ids } = targetsOf(entry);
  if (entry.kind === 'wind') {
    const known = state.attempts.get(entry.attempt)?.judgement.wind ?? 'pending';
    if (known === 'pending') return false;
  }
  return !ids.every((id) => isOwnAndLast(state, id, entry.actor, ids));
}

function isOwnAndLast(state: CompetitionState, id: string, actor: string, also: readonly string[]): boolean {
  const at = state.journal.findIndex((item) => item.entry.id === id);
  const target = state.journal[at]?.entry;
  if (!target || target.actor !== actor || target.by !== 'official') return false;
  const whose = 'competitor' in target ? target.competitor : null;
  return !state.journal
    .slice(at + 1)
    .some(({ entry }) => entry.kind === 'attempt' && entry.competitor !== whose && !also.includes(entry.id));
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
