import type { Unit, VerticalTerms } from '#persistence';
import {
  isDistanceEvent,
  parseMark,
  progressionProblems,
  ruleSet,
  type ProgressionFault,
  type RuleSetCode,
  type VerticalEventCode,
} from '#rules';
import { refusal, type Refusal } from '../platform/errors/user-error.types.js';
import type { CompetitionCreateInput } from './competitions.inputs.js';
import type { VerticalTermsInput } from './vertical-terms.inputs.js';

/** Whether heights belong to the event, and whether all that there is to say is said in its place. */
export function verticalShapeProblems({ event, vertical, plan }: CompetitionCreateInput): Refusal[] {
  if (isDistanceEvent(event)) return vertical ? [NOT_EXPECTED] : [];
  return [...(vertical ? [] : [MISSING]), ...(plan ? [PLAN_NOT_EXPECTED] : [])];
}

interface Rules {
  readonly rules: RuleSetCode;
  readonly edition: string;
}

/** What is wrong with the announced heights: first their unit, then by how much the bar is raised. */
export function heightProblems(
  { event, unit, vertical }: CompetitionCreateInput,
  { rules, edition }: Rules,
): Refusal[] {
  if (!vertical || isDistanceEvent(event)) return [];
  const wrongUnit = vertical.heights.flatMap((height, at) => (heightIn(unit, height) === null ? [at] : []));
  if (wrongUnit.length > 0) return wrongUnit.map(wrongUnitAt);
  const { heights, combined } = termsOf(vertical, unit);
  const problems = progressionProblems({ rules, edition, event, unit, combined }, heights);
  return problems
    .filter(({ code }) => code === 'BAR_NOT_RISING' || !vertical.hasOwnSteps)
    .map(({ index, code }) => stepProblem(index, code, ruleOf({ rules, edition }, event, combined)));
}

/** As they are stored. The heights have been found to be in the unit of the competition. */
export function termsOf(
  { heights, isCombined: combined, passGivesUp, tieForFirst }: VerticalTermsInput,
  unit: Unit,
): VerticalTerms {
  return { heights: heights.map((text) => heightIn(unit, text) ?? 0), combined, passGivesUp, tieForFirst };
}

function heightIn(unit: Unit, text: string): number | null {
  const height = parseMark(text);
  return height?.unit === unit ? height.value : null;
}

function ruleOf({ rules, edition }: Rules, event: VerticalEventCode, combined: boolean): string {
  const { minimumStep, combinedStep } = ruleSet(rules, edition).vertical[event];
  return (combined ? combinedStep : minimumStep).cite.rule;
}

const STEP_TEXTS: Readonly<Record<ProgressionFault, string>> = {
  BAR_NOT_RISING: 'The bar only rises: this height is not greater than the one before.',
  BAR_STEP_TOO_SMALL: 'From the height before, the bar would be raised by less than the smallest step.',
  BAR_STEP_GROWS: 'From the height before, the bar would be raised by more than the last time.',
  BAR_STEP_NOT_UNIFORM: 'In a combined event the bar is always raised by the same step.',
};

function stepProblem(index: number, code: ProgressionFault, rule: string): Refusal {
  const remedy =
    code === 'BAR_NOT_RISING'
      ? 'Leave it out, or put the heights in order.'
      : 'Change the heights; or, where the regulations of the meet set the steps, send `hasOwnSteps`.';
  return refusal({ code, path: [...HEIGHTS, String(index)], message: STEP_TEXTS[code], rule, remedy });
}

const HEIGHTS = ['vertical', 'heights'] as const;

function wrongUnitAt(index: number): Refusal {
  return refusal({
    code: 'WRONG_UNIT',
    path: [...HEIGHTS, String(index)],
    message: 'The height is not in the unit of the competition.',
    remedy: 'Write it in the unit in which the event is measured.',
  });
}

const MISSING = refusal({
  code: 'VERTICAL_MISSING',
  path: ['vertical'],
  message: 'A high jump or pole vault needs its announced heights.',
  remedy: 'Send the heights; they may be changed with barSet while it goes on.',
});

const NOT_EXPECTED = refusal({
  code: 'VERTICAL_NOT_EXPECTED',
  path: ['vertical'],
  message: 'Only high jump and pole vault have a bar.',
  remedy: 'Leave the field out.',
});

const PLAN_NOT_EXPECTED = refusal({
  code: 'PLAN_NOT_EXPECTED',
  path: ['plan'],
  message: 'High jump and pole vault have heights instead of rounds.',
  remedy: 'Leave the field out.',
});
