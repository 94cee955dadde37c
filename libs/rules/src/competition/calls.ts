import { orderOf } from '../progression/order.js';
import { isOrderFixed } from './order-change.js';
import type { CompetitionState } from './state.js';

/** One trial that is still to be taken. */
export interface Call {
  readonly competitor: string;
  readonly round: number;
  readonly flight: string | null;
}

/** Where a competition is. */
export interface Progress {
  readonly phase: 'not started' | 'running' | 'complete' | 'official';
  /** Round and flight of who is up; `null` when nobody is, also while the competition is interrupted. */
  readonly round: number | null;
  readonly flight: string | null;
  readonly up: Call | null;
  readonly next: Call | null;
  readonly then: Call | null;
  /** Trials still to be taken as things stand, the one that is up included. */
  readonly remaining: number;
}

/** Where the competition is and who is called, as things stand. */
export function progressOf(state: CompetitionState): Progress {
  const calls = [...callsOf(state)];
  const nobody = state.signedOff || state.safety.stops.length > 0;
  const [up = null, next = null, then = null] = nobody ? [] : calls;
  const begun = state.competitors.some(({ series }) => series.some((id) => id !== null));
  const phase = state.signedOff
    ? 'official'
    : calls.length === 0 && begun
      ? 'complete'
      : begun
        ? 'running'
        : 'not started';
  return {
    phase,
    round: up?.round ?? null,
    flight: up?.flight ?? null,
    up,
    next,
    then,
    remaining: calls.length,
  };
}

/**
 * The trials still to be taken, in the order in which they are called. Up to the first cut one flight takes all its
 * rounds before the next begins; a cut or a new order starts afresh.
 */
export function* callsOf(state: CompetitionState): Generator<Call> {
  const { setup } = state;
  const rowOf = new Map(state.competitors.map((competitor, index) => [competitor.bib, index]));
  const order = orderOf(state.card);
  const firstCut = setup.plan.cuts[0]?.after ?? setup.plan.rounds;
  for (const [first, last] of sections(state)) {
    const flights = first <= firstCut ? flightsOf(state) : [undefined];
    for (const flight of flights) {
      for (let round = first; round <= last; round++) {
        for (const bib of inOrder(state, round, order[String(round)] ?? [])) {
          const row = rowOf.get(bib)!;
          const competitor = setup.competitors[row]!;
          if (flight !== undefined && competitor.flight !== flight) continue;
          if (state.competitors[row]!.series[round - 1] !== null) continue;
          yield { competitor: competitor.key, round, flight: competitor.flight };
        }
      }
    }
  }
}

/** The rounds between two cuts or new orders, first and last. */
function sections({ setup: { plan } }: CompetitionState): [number, number][] {
  const ends = new Set([...plan.cuts.map((cut) => cut.after), ...plan.reorderAfter, plan.rounds]);
  let first = 1;
  return [...ends]
    .sort((a, b) => a - b)
    .map((last) => {
      const section: [number, number] = [first, last];
      first = last + 1;
      return section;
    });
}

/** Flight labels in the order in which they first stand on the start list; `null` = without one. */
function flightsOf({ setup }: CompetitionState): (string | null)[] {
  return [...new Set(setup.competitors.map((competitor) => competitor.flight))];
}

/** Those whom an official moved to the front of a round come first, the others follow in the order of the rules. */
function inOrder(state: CompetitionState, round: number, byRule: readonly string[]): readonly string[] {
  const change = state.orderChanges.get(round);
  if (!change) return awayLast(state, round, byRule);
  const bibs = new Map(state.competitors.map(({ key, bib }) => [key, bib]));
  const present = new Set(byRule);
  const moved = change.competitors.map((key) => bibs.get(key)!).filter((bib) => present.has(bib));
  const ahead = new Set(moved);
  return awayLast(state, round, [...moved, ...byRule.filter((bib) => !ahead.has(bib))]);
}

/** Who is away at another event is called when the others of the round have had their turn. */
function awayLast(state: CompetitionState, round: number, order: readonly string[]): readonly string[] {
  if (state.away.size === 0 || isOrderFixed(state, { round })) return order;
  const away = new Set(state.competitors.filter(({ key }) => state.away.has(key)).map(({ bib }) => bib));
  return [...order.filter((bib) => !away.has(bib)), ...order.filter((bib) => away.has(bib))];
}
