import { competitions, type CompetitionRow, type MeetRow, type Reads } from '#persistence';
import { forbidden, unauthenticated } from '../platform/errors/api-error.js';
import type { Capacity, Identity } from '../platform/identity/identity.js';

/*
 * Implements are looked at for the whole meet, in a tent beside all its circles: whoever officiates at any of its
 * competitions may register and inspect one. Whoever works at the meet reads the register; nobody else does.
 */

/** With which right the viewer looks at implements of the meet; `null`: with none. */
export async function authorityAt(at: Reads, viewer: Identity, meet: MeetRow): Promise<Capacity | null> {
  const ofMeet = viewer.capacityIn({ id: meet.id, meetId: meet.id, callingGroupId: null });
  if (ofMeet !== null || viewer.isPublic) return ofMeet;
  const rows: CompetitionRow[] = await competitions.ofMeet(at, meet.organisationId, meet.id);
  return rows.some((row) => viewer.mayDoAll(row)) ? 'official' : null;
}

/** The same; throws UNAUTHENTICATED or FORBIDDEN where there is none. */
export async function requireAuthority(at: Reads, viewer: Identity, meet: MeetRow): Promise<Capacity> {
  const authority = await authorityAt(at, viewer, meet);
  if (authority === null) throw refused(viewer);
  return authority;
}

/** May read what belongs to those who work at the meet: a director who keeps it, too. */
export async function requireCrew(at: Reads, viewer: Identity, meet: MeetRow): Promise<void> {
  if (!viewer.mayDirect(meet.id) && (await authorityAt(at, viewer, meet)) === null) throw refused(viewer);
}

function refused(viewer: Identity): Error {
  const message = 'Only those who work at this meet may do this.';
  return viewer.isPublic ? unauthenticated(`${message} Send a token.`) : forbidden(message);
}
