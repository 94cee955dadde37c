import type { CompetitionRow, MeetRow } from '#persistence';
import type { Identity } from '../identity/identity.js';

/** A published meet is everybody's; before that it is for those who work on it. */
export function maySee(meet: MeetRow, competition: CompetitionRow | null, viewer: Identity): boolean {
  if (meet.publishedAt !== null || viewer.mayDirect(meet.id) || viewer.has('referee', meet.id)) return true;
  return competition !== null && viewer.mayOfficiate(competition);
}
