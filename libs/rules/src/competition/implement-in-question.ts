import type { HoldCode } from '../journal/verdict.js';
import type { Judgement } from './entry.js';
import type { CompetitionSetup } from './setup.js';
import type { CompetitionState } from './state.js';

/** Whether a trial so judged counts, or would if its protest were upheld. */
export function mayCount({ outcome, protested }: Judgement): boolean {
  return outcome === 'valid' || outcome === 'unmeasured' || protested !== null;
}

/**
 * Why a trial cannot count before a referee has looked at its implement: it is not the one of the competitor's
 * category or of the event, or, as far as the register knows, it has not passed. `null`: nothing is known against it.
 */
export function implementInQuestion(
  { competitors }: CompetitionSetup,
  competitor: string,
  judgement: Judgement,
): Extract<HoldCode, 'WRONG_IMPLEMENT' | 'IMPLEMENT_NOT_PASSED'> | null {
  const { implementGrams: used, implementStanding: standing } = judgement;
  const due = competitors.find(({ key }) => key === competitor)?.implementGrams ?? null;
  if (standing === 'other event' || standing === 'other mass') return 'WRONG_IMPLEMENT';
  if (used !== null && due !== null && used !== due) return 'WRONG_IMPLEMENT';
  const hasPassed = standing === undefined || standing === 'passed';
  return hasPassed || !mayCount(judgement) ? null : 'IMPLEMENT_NOT_PASSED';
}

/**
 * The trials made with an implement that count, or would if a protest were upheld, in the order of recording; without
 * those whose implement is in question already.
 */
export function trialsMadeWith({ attempts, questions }: CompetitionState, implementId: string): string[] {
  const asked = new Set(questions.flatMap(({ entry, about }) => (about === 'implement' ? [entry] : [])));
  return [...attempts.values()]
    .filter(({ id, standing, judgement }) => {
      const isMadeWith = judgement.implementId === implementId && mayCount(judgement);
      return isMadeWith && standing === 'counts' && !asked.has(id);
    })
    .sort((a, b) => a.sequence - b.sequence)
    .map(({ id }) => id);
}
