import type { ProtestGround } from '../rule-sets/protest-rules.js';

/** What was done about a protest, one after the other. */
export type ProtestStepKind = 'decision' | 'appeal' | 'appeal-decision' | 'withdrawal';
export type ProtestOutcome = 'upheld' | 'dismissed';

export interface ProtestStep {
  readonly kind: ProtestStepKind;
  /** Of a decision. */
  readonly outcome: ProtestOutcome | null;
  /** Milliseconds since the epoch. */
  readonly at: number;
}

/** A protest as far as anything is decided by it. */
export interface Protest {
  readonly ground: ProtestGround;
  /** When it was made, as told by whoever wrote it down: milliseconds since the epoch. */
  readonly lodgedAt: number;
  readonly steps: readonly ProtestStep[];
}

export type ProtestStanding = 'lodged' | 'upheld' | 'dismissed' | 'appealed' | 'withdrawn';

/**
 * What may follow. A referee may decide anew when something new is known, as long as nobody has appealed; what the jury
 * of appeal decides stays.
 */
const NEXT: Readonly<Record<ProtestStepKind | 'lodged', readonly ProtestStepKind[]>> = {
  lodged: ['decision', 'withdrawal'],
  decision: ['decision', 'appeal'],
  appeal: ['appeal-decision', 'withdrawal'],
  'appeal-decision': [],
  withdrawal: [],
};

export function nextSteps({ steps }: Pick<Protest, 'steps'>): readonly ProtestStepKind[] {
  return NEXT[steps.at(-1)?.kind ?? 'lodged'];
}

export function standingOfProtest({ steps }: Pick<Protest, 'steps'>): ProtestStanding {
  const last = steps.at(-1);
  if (!last) return 'lodged';
  if (last.kind === 'appeal') return 'appealed';
  if (last.kind === 'decision' || last.kind === 'appeal-decision') return last.outcome ?? 'dismissed';
  // An appeal that is withdrawn leaves what the referee decided.
  const decided = steps.findLast(({ kind }) => kind === 'decision');
  return decided ? (decided.outcome ?? 'dismissed') : 'withdrawn';
}

/** Somebody still has to decide. */
export function isOpenProtest(protest: Pick<Protest, 'steps'>): boolean {
  const standing = standingOfProtest(protest);
  return standing === 'lodged' || standing === 'appealed';
}
