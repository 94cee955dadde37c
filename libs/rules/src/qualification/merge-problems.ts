import type { Card } from '../card.js';
import type { VerticalCard } from '../vertical/vertical-card.js';

/** Why groups are not one qualification. `group`: the position of the card that does not fit. */
export interface MergeProblem {
  readonly group: number;
  readonly code: 'NOT_A_QUALIFICATION' | 'DIFFERS' | 'FILL' | 'NO_GROUP';
  readonly field:
    | 'stage'
    | 'rules'
    | 'edition'
    | 'event'
    | 'indoor'
    | 'unit'
    | 'standard'
    | 'rounds'
    | 'fill'
    | 'groups';
  readonly message: string;
}

/**
 * Everything that keeps cards from being groups of one qualification: each must be one, and what decides who goes on
 * must be the same in all. A throw or a horizontal jump must also have as many rounds.
 */
export function mergeProblems(cards: readonly (Card | VerticalCard)[], fill: number): MergeProblem[] {
  const [first] = cards;
  if (!first) {
    return [problem(0, 'NO_GROUP', 'groups', 'A qualification has at least one group. Name the first.')];
  }
  return [
    ...fillProblems(fill),
    ...cards.flatMap((card, group) => [...stageProblems(card, group), ...differences(first, card, group)]),
  ];
}

function fillProblems(fill: number): MergeProblem[] {
  if (Number.isSafeInteger(fill) && fill >= 0) return [];
  return [problem(0, 'FILL', 'fill', `The number to fill up to is 0 or more, whole, not ${fill}.`)];
}

function stageProblems(card: Card | VerticalCard, group: number): MergeProblem[] {
  if (card.stage === 'qualification' && card.qualifying !== null) return [];
  return [
    problem(group, 'NOT_A_QUALIFICATION', 'stage', `Group ${group + 1} is no qualification with a standard.`),
  ];
}

/** What must be the same in all groups, as it is compared. */
function termsOf(card: Card | VerticalCard): Partial<Record<MergeProblem['field'], unknown>> {
  return {
    rules: card.rules,
    edition: card.edition,
    event: card.event,
    indoor: card.indoor,
    unit: card.unit,
    standard: card.qualifying?.standard,
    ...('plan' in card ? { rounds: card.plan.rounds } : {}),
  };
}

function differences(first: Card | VerticalCard, card: Card | VerticalCard, group: number): MergeProblem[] {
  const [expected, found] = [termsOf(first), termsOf(card)];
  const fields = Object.keys(expected) as MergeProblem['field'][];
  return fields
    .filter((field) => expected[field] !== found[field])
    .map((field) => {
      const values = `${String(found[field])}, the first group ${String(expected[field])}`;
      return problem(
        group,
        'DIFFERS',
        field,
        `${field}: group ${group + 1} has ${values}. Correct one of them.`,
      );
    });
}

function problem(
  group: number,
  code: MergeProblem['code'],
  field: MergeProblem['field'],
  message: string,
): MergeProblem {
  return { group, code, field, message };
}
