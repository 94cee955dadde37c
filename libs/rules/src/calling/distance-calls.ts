import { callsOf } from '../competition/calls.js';
import { isOrderFixed } from '../competition/order-change.js';
import type { CompetitionState } from '../competition/state.js';
import { commonOrder, turnsOf, type OrderedCompetitor } from './group-order.js';
import type { CalledCompetition, CallingGroup, GroupCall } from './group.js';
import { merge, type Rank } from './merge.js';

type DistanceGroup = Extract<CallingGroup, { kind: 'distance' }>;
type Member = CalledCompetition<CompetitionState>;

/**
 * The trials still to be taken in a group of throws or horizontal jumps, in the order in which they are called: rounds
 * stay together, whether they are the third of six or the third of three. Within a round
 *
 * - the common order of the group holds as long as none of the competitions that have the round has a new order yet;
 * - from then on the competitions follow each other in the group's sequence, each in the order that its own rules give
 *   it: orders by the standing of different competitions cannot be mixed, and a block of its own is how masters' age
 *   groups are commonly called.
 *
 * Where the start lists have several flights, a flight takes all its rounds up to the first cut of each competition
 * before the next begins, as in a single competition. Common practice, no published source.
 */
export function distanceCalls({ competitions, startOrder }: DistanceGroup): GroupCall[] {
  const order = commonOrder(competitions.map(asOrdered), startOrder);
  const rank = rankIn(competitions, order);
  return merge(competitions.map(callsIn), rank);
}

function asOrdered({ key, state }: Member): { key: string; competitors: string[] } {
  return { key, competitors: state.setup.competitors.map((competitor) => competitor.key) };
}

function callsIn({ key, state }: Member): GroupCall[] {
  if (state.signedOff) return [];
  return [...callsOf(state)].map(({ competitor, round, flight }) => ({
    ...{ competition: key, competitor, round, flight },
    ...{ height: null, jumpOff: false, underProtest: false },
  }));
}

function rankIn(
  competitions: readonly Member[],
  order: readonly OrderedCompetitor[],
): (call: GroupCall) => Rank {
  const flights = flightsIn(competitions, order);
  const members = new Map(competitions.map((member, sequence) => [member.key, { member, sequence }]));
  const turns = new Map<string, ReadonlyMap<string, number>>();
  const turnOf = ({ competition, competitor, round }: GroupCall): number => {
    const { member } = members.get(competition)!;
    const moved = member.state.orderChanges.get(round)?.competitors ?? [];
    const which = `${competition} ${round}`;
    if (!turns.has(which)) turns.set(which, turnsOf(order, competition, moved));
    return turns.get(which)!.get(competitor)!;
  };
  return (call) => {
    const { member, sequence } = members.get(call.competition)!;
    const inFlights = flights.length > 1 && call.round <= firstCutOf(member);
    const afterFlights = flights.length > 1 && !inFlights;
    return [
      Number(afterFlights),
      inFlights ? flights.indexOf(call.flight) : 0,
      call.round,
      ...(isReordered(competitions, call.round)
        ? [sequence, Number(isCalledLate(member, call))]
        : [Number(isCalledLate(member, call)), turnOf(call)]),
    ];
  };
}

/** Labels in the order in which they first stand in the common order; `null` = without one. */
function flightsIn(
  competitions: readonly Member[],
  order: readonly OrderedCompetitor[],
): readonly (string | null)[] {
  const lines = competitions.flatMap(({ state }) => state.setup.competitors);
  const flightOf = new Map(lines.map(({ key, flight }) => [key, flight]));
  return [...new Set(order.map(({ competitor }) => flightOf.get(competitor) ?? null))];
}

/** Away at another event, in a round whose order may be changed for that. */
function isCalledLate({ state }: Member, { competitor, round }: GroupCall): boolean {
  return state.away.has(competitor) && !isOrderFixed(state, { round });
}

function firstCutOf({ state: { setup } }: Member): number {
  return setup.plan.cuts[0]?.after ?? setup.plan.rounds;
}

/** Whether a competition that has this round has a new order by then. */
function isReordered(competitions: readonly Member[], round: number): boolean {
  return competitions.some(
    ({ state: { setup } }) =>
      setup.plan.rounds >= round && setup.plan.reorderAfter.some((after) => after < round),
  );
}
