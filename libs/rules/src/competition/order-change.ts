import { ruleSet } from '../rule-sets/index.js';
import type { OrderEntry } from './entry.js';
import type { CompetitionState } from './state.js';

/** Whether the rules leave the order of this round alone: the last one, outside combined events. */
export function isOrderFixed(
  { setup }: Pick<CompetitionState, 'setup'>,
  { round }: Pick<OrderEntry, 'round'>,
): boolean {
  if (round !== setup.plan.rounds) return false;
  const { orderChange, combinedOrderChange } = ruleSet(setup.rules, setup.edition);
  return (setup.combined ? combinedOrderChange : orderChange).value === 'not in the last round';
}

/** Whether all who are named have taken their trial of the round: the entry tells what happened. */
export function isAfterTheFact(state: CompetitionState, { round, competitors }: OrderEntry): boolean {
  const taken = new Set(
    state.competitors.filter(({ series }) => typeof series[round - 1] === 'string').map(({ key }) => key),
  );
  return competitors.length > 0 && competitors.every((key) => taken.has(key));
}
