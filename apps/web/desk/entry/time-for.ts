import { ruleSet, timeAllowedFor, verticalProgressOf } from '#rules';
import { t } from '../../labels/languages.js';
import type { Turn } from '../competition/board-shape.js';
import type { OpenCompetition } from '../desk-store.js';

export interface TimeAllowed {
  readonly seconds: number;
  /** Where it is not the usual time. */
  readonly because: string | null;
}

/** The time allowed for a trial; null: nobody is called. */
export function timeFor({ folded }: OpenCompetition, turn: Turn): TimeAllowed | null {
  if (folded.kind === 'distance') {
    const { rules, edition } = folded.state.setup;
    const { value } = ruleSet(rules, edition).timeAllowed;
    const latest = [...folded.state.attempts.values()]
      .filter(({ standing, judgement }) => standing === 'counts' && judgement.outcome !== 'pass')
      .sort((a, b) => b.sequence - a.sequence)[0];
    const isConsecutive = latest?.competitor === turn.key;
    return {
      seconds: isConsecutive ? value.consecutiveS : value.trialS,
      because: isConsecutive ? t('time.consecutive') : null,
    };
  }
  const call = verticalProgressOf(folded.state).calls.find(({ competitor }) => competitor === turn.key);
  if (!call) return null;
  const { seconds, because, left, startsWhen } = timeAllowedFor(folded.state, call);
  const reasons = [
    because === 'first trial' ? t('time.first') : null,
    because === 'consecutive trials' ? t('time.consecutive') : null,
    because === 'one left' || because === 'two or three left' ? t('time.left', { count: left }) : null,
    startsWhen === 'uprights set' ? t('time.uprights') : null,
  ].filter((reason) => reason !== null);
  return { seconds, because: reasons.length > 0 ? reasons.join(' · ') : null };
}
