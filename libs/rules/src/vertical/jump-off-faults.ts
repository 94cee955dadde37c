import { isDecided, playRound, startJumpOff, triesOf, type JumpOffState } from './jump-off.js';
import type { JumpOffRound, VerticalCard, VerticalTrial } from './vertical-card.js';
import { levelForFirst } from './vertical-ranking.js';

export type JumpOffFaultKind = 'not level for first' | 'already decided' | 'already out' | 'no entry';

/** What could not have been in a jump-off. */
export interface JumpOffFault {
  /** Index of the round. */
  readonly round: number;
  /** Whose entry it is, there or missing; `null`: the round as a whole. */
  readonly bib: string | null;
  readonly kind: JumpOffFaultKind;
}

/**
 * Checks the jump-off of a card: by round, first the entries in their order, then the missing ones in the order of
 * competition. The disqualified are set aside: their entries neither count nor are at fault, since a disqualification
 * may come after them, and a round that held them is not too late because it would have been without them.
 */
export function jumpOffFaults(card: VerticalCard): JumpOffFault[] {
  const level = levelForFirst(card);
  const field = new Set(level);
  const disqualified = new Set(card.competitors.filter((one) => one.status === 'DQ').map((one) => one.bib));
  const faults: JumpOffFault[] = [];
  let state = startJumpOff(level);
  for (const [index, round] of card.jumpOff.entries()) {
    const counted = { ...round, tries: round.tries.filter(({ bib }) => !disqualified.has(bib)) };
    const heldWithDisqualified = counted.tries.length < round.tries.length;
    const found = isDecided(state)
      ? faultsWhenDecided(counted, field, heldWithDisqualified)
      : [...faultsOfEntries(counted, field, state), ...missingEntries(counted, state)];
    faults.push(...found.map((fault) => ({ round: index, ...fault })));
    state = playRound(state, counted);
  }
  return faults;
}

type RoundFault = Omit<JumpOffFault, 'round'>;

function faultsWhenDecided(
  round: JumpOffRound,
  field: ReadonlySet<string>,
  heldWithDisqualified: boolean,
): RoundFault[] {
  const strangers = round.tries.filter(({ bib }) => !field.has(bib));
  if (strangers.length > 0) return strangers.map(({ bib }) => ({ bib, kind: 'not level for first' }));
  return heldWithDisqualified ? [] : [{ bib: null, kind: 'already decided' }];
}

function faultsOfEntries(round: JumpOffRound, field: ReadonlySet<string>, state: JumpOffState): RoundFault[] {
  const remaining = new Set(state.remaining);
  return round.tries
    .filter(({ bib }) => !remaining.has(bib))
    .map(({ bib }) => ({ bib, kind: field.has(bib) ? 'already out' : 'not level for first' }));
}

function missingEntries(round: JumpOffRound, state: JumpOffState): RoundFault[] {
  const tries = triesOf(round);
  const someJumped = state.remaining.some((bib) => isJump(tries.get(bib)));
  const missing = someJumped ? state.remaining.filter((bib) => !tries.has(bib)) : [];
  return missing.map((bib) => ({ bib, kind: 'no entry' }));
}

function isJump(trial: VerticalTrial | undefined): boolean {
  return trial === 'cleared' || trial === 'failed';
}
