import { quantile } from '../numbers/quantiles.js';
import { betaDraw, type Chance } from '../numbers/random.js';

/** A fault that might be worked on, with what is known of it for one athlete. */
export interface Candidate {
  readonly code: string;
  /** Order of the phase in the throw: what comes first may bring about what comes later. */
  readonly phase: number;
  /** Throws with the fault among those looked at for it. */
  readonly seen: { readonly k: number; readonly n: number };
  /** On log marks, pooled over athletes where there are enough. */
  readonly effect: { readonly beta: number; readonly error: number };
  /** Fouls per throw more with the fault; `null` where that is not known. */
  readonly fouls: { readonly riskDifference: number; readonly error: number } | null;
  readonly stageReached: boolean;
  /** The throwing arm or the shoulders. */
  readonly armOrShoulder: boolean;
}

/** Why a candidate is not put forward, whatever its numbers. */
export type HeldBack = 'STAGE_NOT_REACHED' | 'ARM_OR_SHOULDER_IN_GROWTH';

export interface Ranked {
  readonly code: string;
  /** Centimetres per throw that go with the fault; may be negative. */
  readonly expectedCm: number;
  readonly sdCm: number;
  /** What it is at least with a chance of four in five: the order goes by this. */
  readonly cautiousCm: number;
  /** How often it was the largest of all that are put forward. */
  readonly chanceOfTop: number;
  /** From 1; those of one group cannot be told apart. `null` when held back. */
  readonly group: number | null;
  readonly heldBack: HeldBack | null;
}

export interface RankingOptions {
  readonly chance: Chance;
  readonly typicalMarkCm: number;
  /** What one foul more per throw costs the expected best, in centimetres. */
  readonly foulCostCm: number;
  /** A growing athlete is never pushed on arm and shoulder points. */
  readonly growing: boolean;
  readonly draws?: number;
}

const DRAWS = 10_000;
/** One that beats the head of a group at least this often belongs to the group. */
const SAME_GROUP = 0.2;
const CAUTIOUS = 0.2;

/**
 * What to look at next: L = π (−β) · mark + π · fouls · cost, drawn many times from what each is known to be. Ordered
 * by what L is at least; those that cannot be told apart share a group, and within one the earlier phase comes first.
 */
export function nextToWorkOn(candidates: readonly Candidate[], options: RankingOptions): readonly Ranked[] {
  const drawn = candidates.map((candidate) => lossesOf(candidate, options));
  const held = candidates.map((candidate) => heldBackOf(candidate, options.growing));
  const free = candidates.flatMap((_, at) => (held[at] === null ? [at] : []));
  const cautious = drawn.map((losses) => quantile(losses, CAUTIOUS));
  const groups = groupsOf(free, drawn, cautious);
  const tops = topsOf(free, drawn);
  const ranked = candidates.map((candidate, at): Ranked & { phase: number } => ({
    code: candidate.code,
    phase: candidate.phase,
    ...momentsOf(candidate, options),
    cautiousCm: cautious[at] ?? Number.NaN,
    chanceOfTop: tops.get(at) ?? 0,
    group: groups.get(at) ?? null,
    heldBack: held[at] ?? null,
  }));
  const last = Number.POSITIVE_INFINITY;
  return ranked
    .sort((a, b) => (a.group ?? last) - (b.group ?? last) || a.phase - b.phase || b.cautiousCm - a.cautiousCm)
    .map(({ phase: _, ...rest }) => rest);
}

function heldBackOf({ stageReached, armOrShoulder }: Candidate, growing: boolean): HeldBack | null {
  if (!stageReached) return 'STAGE_NOT_REACHED';
  return growing && armOrShoulder ? 'ARM_OR_SHOULDER_IN_GROWTH' : null;
}

/** What one throw with the fault is expected to lose, and the variance of that. */
function perFaultyThrow(
  { effect, fouls }: Candidate,
  options: RankingOptions,
): { mean: number; variance: number } {
  const { typicalMarkCm, foulCostCm } = options;
  return {
    mean: -effect.beta * typicalMarkCm + (fouls?.riskDifference ?? 0) * foulCostCm,
    variance: (effect.error * typicalMarkCm) ** 2 + ((fouls?.error ?? 0) * foulCostCm) ** 2,
  };
}

/** Var(πl) = π² Vₗ + l² V_π + V_π Vₗ, with the share π by Jeffreys' beta. */
function momentsOf(candidate: Candidate, options: RankingOptions): Pick<Ranked, 'expectedCm' | 'sdCm'> {
  const { k, n } = candidate.seen;
  const share = (k + 0.5) / (n + 1);
  const shareVariance = (share * (1 - share)) / (n + 2);
  const { mean, variance } = perFaultyThrow(candidate, options);
  return {
    expectedCm: share * mean,
    sdCm: Math.sqrt(share ** 2 * variance + mean ** 2 * shareVariance + shareVariance * variance),
  };
}

function lossesOf(candidate: Candidate, options: RankingOptions): readonly number[] {
  const { chance, draws = DRAWS } = options;
  const { k, n } = candidate.seen;
  const { mean, variance } = perFaultyThrow(candidate, options);
  const sd = Math.sqrt(variance);
  return Array.from(
    { length: draws },
    () => betaDraw(k + 0.5, n - k + 0.5, chance) * (mean + sd * chance.normal()),
  );
}

function groupsOf(
  free: readonly number[],
  drawn: readonly (readonly number[])[],
  cautious: readonly number[],
): ReadonlyMap<number, number> {
  const order = [...free].sort((a, b) => (cautious[b] ?? 0) - (cautious[a] ?? 0));
  const groups = new Map<number, number>();
  let [head, group] = [order[0], 1];
  for (const at of order) {
    if (head === undefined) break;
    if (at !== head && beats(drawn[at] ?? [], drawn[head] ?? []) < SAME_GROUP) {
      head = at;
      group++;
    }
    groups.set(at, group);
  }
  return groups;
}

function beats(one: readonly number[], other: readonly number[]): number {
  return one.filter((loss, at) => loss > (other[at] ?? 0)).length / one.length;
}

function topsOf(free: readonly number[], drawn: readonly (readonly number[])[]): ReadonlyMap<number, number> {
  const tops = new Map<number, number>(free.map((at) => [at, 0]));
  const draws = drawn[0]?.length ?? 0;
  for (let draw = 0; draw < draws; draw++) {
    const loss = (at: number): number => drawn[at]?.[draw] ?? Number.NEGATIVE_INFINITY;
    const [first, ...others] = free;
    if (first === undefined) break;
    const top = others.reduce((best, at) => (loss(at) > loss(best) ? at : best), first);
    tops.set(top, (tops.get(top) ?? 0) + 1 / draws);
  }
  return tops;
}

/** For a child: one point to try next, and nothing that could be a score. `null` when nothing stands out. */
export function oneFocus(ranked: readonly Ranked[]): string | null {
  const first = ranked.find(({ heldBack }) => heldBack === null);
  return first && first.cautiousCm > 0 ? first.code : null;
}
