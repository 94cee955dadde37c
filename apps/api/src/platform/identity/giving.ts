import { athletes, callingGroups, competitions, meets, type Reads } from '#persistence';
import { refusal, type Refusal } from '../errors/user-error.types.js';
import type { Grant, Role } from './grant.js';
import type { Identity } from './identity.js';

/** What a role is for, as tables keep it, and the meet in which that lies. */
export interface RoleObject {
  /** Null: an athlete, or the installation. */
  readonly ofMeet: string | null;
  readonly meetId: string | null;
  readonly competitionId: string | null;
  readonly callingGroupId: string | null;
  readonly athleteId: string | null;
}

const NONE: RoleObject = {
  ofMeet: null,
  meetId: null,
  competitionId: null,
  callingGroupId: null,
  athleteId: null,
};

/** The object of a role; null: there is none of the kind that the role is for. */
export async function findRoleObject(
  at: Reads,
  organisationId: string,
  role: Role,
  on: string | null,
): Promise<RoleObject | null> {
  if (role === 'admin') return on === null ? NONE : null;
  if (on === null) return null;
  if (role === 'director' || role === 'referee') {
    return (await meets.find(at, organisationId, on)) && { ...NONE, ofMeet: on, meetId: on };
  }
  if (role !== 'official') {
    return (await athletes.find(at, organisationId, on)) && { ...NONE, athleteId: on };
  }
  const competition = await competitions.find(at, organisationId, on);
  if (competition) return { ...NONE, ofMeet: competition.meetId, competitionId: on };
  const group = await callingGroups.find(at, organisationId, on);
  return group && { ...NONE, ofMeet: group.meetId, callingGroupId: on };
}

/** Seconds since the epoch; `until` null: without end. */
export interface Window {
  readonly from: number;
  readonly until: number | null;
}

/**
 * The window of a right at a meet that the viewer gives away: an administrator as wanted, others within their own, to
 * whose end it goes if no end is wanted. `roles`: those of the viewer that may give it. Throws UNAUTHENTICATED or
 * FORBIDDEN without one of them.
 */
export function windowGiven(
  viewer: Identity,
  roles: readonly ('director' | 'referee')[],
  meetId: string,
  { from, until }: Window,
): Window | { readonly refusal: Refusal } {
  if (viewer.isAdmin) return checked({ from, until });
  if (!roles.some((role) => viewer.has(role, meetId))) viewer.requireDirector(meetId);
  const isOver = ({ role, on }: Grant): boolean => (roles as readonly Role[]).includes(role) && on === meetId;
  const end = until ?? ownEnd(viewer, isOver);
  if (!viewer.covers(isOver, from, end)) return { refusal: BEYOND_OWN };
  return checked({ from, until: end });
}

function ownEnd(viewer: Identity, isOver: (grant: Grant) => boolean): number | null {
  const ends = viewer
    .open()
    .filter(isOver)
    .map(({ until }) => until);
  return ends.includes(null) ? null : Math.max(...ends.map(Number));
}

function checked(window: Window): Window | { readonly refusal: Refusal } {
  return window.until !== null && window.until <= window.from ? { refusal: WINDOW_EMPTY } : window;
}

const WINDOW_EMPTY = refusal({
  code: 'WINDOW_EMPTY',
  path: ['until'],
  message: 'It would end before it begins.',
  remedy: 'Send a later end.',
});

const BEYOND_OWN = refusal({
  code: 'BEYOND_OWN',
  path: ['until'],
  message: 'Your own right does not last so long.',
  remedy: 'Send a window within your own, or ask an administrator.',
});

export function isRefused<T extends object>(
  outcome: T | { readonly refusal: Refusal },
): outcome is { readonly refusal: Refusal } {
  return 'refusal' in outcome;
}
