import type { ImplementRow } from '#persistence';
import { dimensionsOf } from '#rules';
import { refusal, type Refusal } from '../platform/errors/user-error.types.js';
import { isGiven } from '../platform/inputs/given.js';
import type { LookInput } from './inspection.inputs.js';

/** Everything in a look that cannot be right, whatever implement it is. */
export function lookProblems(look: LookInput): Refusal[] {
  return [...reasonProblems(look), ...measureProblems(look)];
}

function reasonProblems({ replacesId, reason }: LookInput): Refusal[] {
  if (isGiven(replacesId) === isGiven(reason)) return [];
  return [
    isGiven(replacesId)
      ? refusal({
          code: 'REASON_MISSING',
          path: ['reason'],
          message: 'What was found is not corrected without a reason.',
          remedy: 'Say why.',
        })
      : refusal({
          code: 'REASON_NOT_EXPECTED',
          path: ['reason'],
          message: 'Nothing is corrected.',
          remedy: 'Leave the reason out, or name the look that this one corrects.',
        }),
  ];
}

function measureProblems({ grams, dimensions, isKeptBack }: LookInput): Refusal[] {
  const problems = dimensions.flatMap(({ what }, at) => {
    if (dimensions.findIndex((one) => one.what === what) === at) return [];
    return [
      refusal({
        code: 'MEASURED_TWICE',
        path: ['dimensions', String(at), 'what'],
        message: `The ${what} is given twice.`,
        remedy: 'Measure again, and send one value.',
      }),
    ];
  });
  if (isGiven(grams) || dimensions.length > 0 || isKeptBack) return problems;
  return [
    ...problems,
    refusal({
      code: 'NOTHING_MEASURED',
      path: ['grams'],
      message: 'Nothing was weighed or measured, and the implement is not kept back.',
      remedy: 'Weigh it, and send the mass in grams.',
    }),
  ];
}

/** What is measured of no implement of the event. */
export function dimensionProblem({ event }: ImplementRow, { dimensions }: LookInput): Refusal | null {
  const known = dimensionsOf(event);
  const at = dimensions.findIndex(({ what }) => !known.includes(what));
  if (at < 0) return null;
  return refusal({
    code: 'DIMENSION_NOT_OF_EVENT',
    path: ['dimensions', String(at), 'what'],
    message: `An implement of the ${event} has no ${dimensions[at]!.what} to be measured.`,
    remedy: `Measure ${known.join(' and ')}, or look whether it is the implement that you meant.`,
  });
}
