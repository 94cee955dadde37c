import type { CompetitionRow, MeetRow } from '#persistence';
import type { Identity } from '../identity/identity.js';

/**
 * A published meet is everybody's, but for competitions that are kept back; before that it is for those who work on it.
 */
export function maySee(meet: MeetRow, competition: CompetitionRow | null, viewer: Identity): boolean {
  if (viewer.mayDirect(meet.id) || viewer.has('referee', meet.id)) return true;
  if (competition !== null && viewer.mayOfficiate(competition)) return true;
  return meet.publishedAt !== null && (competition === null || !isWithheld(competition));
}

/** Whether nothing of the competition is shown to those who do not work at it, at this moment. */
export function isWithheld(
  competition: Pick<CompetitionRow, 'isWithheld' | 'withheldUntil'>,
  nowMs: number = Date.now(),
): boolean {
  const { withheldUntil } = competition;
  return competition.isWithheld && (withheldUntil === null || nowMs < Date.parse(withheldUntil));
}

/** Whether it is kept back from this viewer, who may see the meet. */
export function isKeptBack(competition: CompetitionRow, viewer: Identity): boolean {
  if (!isWithheld(competition)) return false;
  return !viewer.mayDirect(competition.meetId) && viewer.capacityIn(competition) === null;
}
