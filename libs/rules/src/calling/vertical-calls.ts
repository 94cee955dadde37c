import { turnKey } from '../vertical-competition/jumps.js';
import type { JumpCall, VerticalProgress } from '../vertical-competition/progress.js';
import type { VerticalState } from '../vertical-competition/state.js';
import { commonOrder, turnsOf } from './group-order.js';
import type { CalledCompetition, CallingGroup, GroupCall } from './group.js';
import { merge, type Rank } from './merge.js';

type VerticalGroup = Extract<CallingGroup, { kind: 'vertical' }>;
type Member = CalledCompetition<VerticalState>;

/**
 * Who is called at the bar of a group of high jumps or pole vaults, as far as it is certain. The heights of all
 * competitions are taken together, rising: at each of them everybody is called who is still in and in whose
 * competition it is a height; first all first trials in the common order, then the second and the third ones. Jump-offs
 * come when nobody else is to jump, so that the bar need not be lowered in between, competition by competition. Common
 * practice, no published source.
 */
export function verticalCalls(
  { competitions, startOrder }: VerticalGroup,
  progressOf: (member: Member) => VerticalProgress,
): GroupCall[] {
  const order = commonOrder(competitions.map(asOrdered), startOrder);
  const members = new Map(competitions.map((member, sequence) => [member.key, { member, sequence }]));
  const rankOf = ({ competition, competitor, height, round, jumpOff }: GroupCall): Rank => {
    const { member, sequence } = members.get(competition)!;
    if (jumpOff) return [1, sequence, 0, 0, 0];
    const moved = member.state.orderChanges.get(turnKey({ height: height!, trial: round }))?.competitors;
    const isAway = Number(member.state.away.has(competitor));
    return [0, height!, round, isAway, turnsOf(order, competition, moved).get(competitor)!];
  };
  const calls = merge(
    competitions.map((member) => progressOf(member).calls.map((call) => groupCallOf(member, call))),
    rankOf,
  );
  // Who fails at this bar is called again before anybody at the next.
  const [first] = calls;
  return calls.filter(
    (call) =>
      call.height === first?.height &&
      call.jumpOff === first.jumpOff &&
      (!call.jumpOff || call.competition === first.competition),
  );
}

export function groupCallOf({ key, state }: Member, call: JumpCall): GroupCall {
  const line = state.setup.competitors.find((competitor) => competitor.key === call.competitor);
  const { competitor, height, trial: round, jumpOff, underProtest } = call;
  return { competition: key, competitor, round, flight: line?.flight ?? null, height, jumpOff, underProtest };
}

function asOrdered({ key, state }: Member): { key: string; competitors: string[] } {
  return { key, competitors: state.setup.competitors.map((competitor) => competitor.key) };
}
