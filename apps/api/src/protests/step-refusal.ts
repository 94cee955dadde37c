import type { ProtestStepKind } from '#rules';
import { refusal, type Refusal } from '../platform/errors/user-error.types.js';

const REFUSALS: Readonly<Record<ProtestStepKind, Refusal>> = {
  decision: notNow(
    'This protest has been decided for good, or was withdrawn.',
    'A new protest is lodged as one of its own.',
  ),
  'appeal-decision': notNow('Nobody has appealed.', 'Write down the appeal first.'),
  appeal: notNow('There is no decision of the referee to appeal.', 'Decide the protest first.'),
  withdrawal: notNow('Nothing waits for a decision that could be withdrawn.', 'Nothing needs to be done.'),
};

function notNow(message: string, remedy: string): Refusal {
  return refusal({ code: 'NOT_NOW', path: ['protestId'], message, remedy });
}

/** Why a step cannot follow what was done before. */
export function stepRefusal(kind: ProtestStepKind): Refusal {
  return REFUSALS[kind];
}
