import { signingObstacle, type SignOffEntry, type SigningObstacle } from '#rules';
import type { LoadedCompetition } from '../platform/competition/loaded.js';
import { proceedingsOf, protestRulesOf, resultStateIn } from '../platform/competition/proceedings.js';
import { refusal, type Refusal } from '../platform/errors/user-error.types.js';

/**
 * Why a result is not signed yet: somebody has protested, or still may. A referee may sign all the same and says why.
 * @param nowMs by the server's clock
 */
export function signingObjection(
  loaded: LoadedCompetition,
  { despite }: Pick<SignOffEntry, 'despite'>,
  nowMs: number,
): Refusal | null {
  if (typeof despite === 'string') return null;
  const state = resultStateIn(loaded);
  const obstacle = signingObstacle(state, proceedingsOf(loaded), nowMs);
  if (obstacle === null) return null;
  const until = state.protestsUntil === null ? '' : new Date(state.protestsUntil).toISOString();
  const { message, remedy } = OBSTACLES[obstacle];
  const { rule } = protestRulesOf(loaded).windows.rules.cite;
  return refusal({ code: obstacle, message: message.replace('{until}', until), rule, remedy });
}

const OBSTACLES: Readonly<Record<SigningObstacle, { readonly message: string; readonly remedy: string }>> = {
  PROTEST_OPEN: {
    message: 'A protest has not been decided.',
    remedy: 'Decide it; or the referee signs all the same and says why.',
  },
  PROTEST_TIME_RUNS: {
    message: 'The result may be protested until {until}.',
    remedy: 'Sign it afterwards; or the referee signs before and says why.',
  },
};
