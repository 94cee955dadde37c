import type { Role } from '../../../apps/api/src/platform/identity/grant.js';

/** Who asks: a role for the object in hand, or nobody in particular. */
export const ASKERS = [
  ...['public', 'admin', 'director', 'referee', 'official', 'coach', 'athlete', 'guardian'],
] as const satisfies readonly (Role | 'public')[];
export type Asker = (typeof ASKERS)[number];

/**
 * Of whom the object is. `own`: the role is for it (admin and public have nothing of their own and are asked all the
 * same); `draft`: so too, and the meet is not published; `other`: a published meet for which the role is not;
 * `unpublished`: one for which it is not, and not published.
 */
export const PLACES = ['own', 'draft', 'other', 'unpublished'] as const;
export type Place = (typeof PLACES)[number];

/** Who may, in each place. Whoever is not named is refused, or answered as if there were nothing. */
export type Row = Readonly<Record<Place, readonly Asker[]>>;

/** The same wherever the object is. */
export function anywhere(...who: Asker[]): Row {
  return { own: who, draft: who, other: who, unpublished: who };
}

/** With a role for the object; an administrator, where named, everywhere. */
export function forOwn(...who: Asker[]): Row {
  const everywhere = who.filter((one) => one === 'admin');
  return { own: who, draft: who, other: everywhere, unpublished: everywhere };
}

const EVERYBODY: readonly Asker[] = ASKERS;
const CREW: readonly Asker[] = ['admin', 'director', 'referee', 'official'];

export const everybody = anywhere(...EVERYBODY);
export const holders = anywhere(...EVERYBODY.filter((one) => one !== 'public'));

/** Everybody once the meet is published, before that whoever works at it. */
export const whenPublished: Row = { own: EVERYBODY, draft: CREW, other: EVERYBODY, unpublished: ['admin'] };
/** Whoever works at it, and administrators. */
export const crew = forOwn(...CREW);
/** Whoever records: an administrator does not. */
export const officials = forOwn('director', 'referee', 'official');
export const referees = forOwn('director', 'referee');
export const directors = forOwn('director');
/**
 * The same for what is of the meet and of no competition: before it is published for those whose role is for the meet.
 * So with combined events, where an official has part only through a competition that is linked; the scene has none.
 */
export const whenPublishedOfMeet: Row = { ...whenPublished, draft: ['admin', 'director', 'referee'] };
export const meetCrew = forOwn('admin', 'director', 'referee');
/** Whoever sets a meet up. */
export const organisers = forOwn('admin', 'director');
/** The same, and at a published meet who coaches the athlete. */
export const organisersAndCoaches: Row = { ...organisers, own: ['admin', 'director', 'coach'] };
/** The same, and directors of others once the meet is published. */
export const keepersWhenPublished: Row = { ...forOwn('admin', 'director'), other: ['admin', 'director'] };
/** Whoever keeps athletes, and whose role is for this one. */
const SEES_OWN: readonly Asker[] = ['admin', 'director', 'coach', 'athlete', 'guardian'];
export const followers: Row = { ...anywhere('admin', 'director'), own: SEES_OWN, draft: SEES_OWN };
/** What a coach keeps of an athlete: nobody who runs a meet has part in it. */
export const notebookReaders = forOwn('coach', 'athlete', 'guardian');
export const coaches = forOwn('coach');
/** Whatever the object: it belongs to the organisation's coaches together. */
export const anyFollower = anywhere('coach', 'athlete', 'guardian');
export const anyCoach = anywhere('coach');
/** Whoever sees to devices. */
export const linkers = forOwn('admin', 'director', 'referee');
/** What belongs to no meet. */
export const keepers = anywhere('admin', 'director');
export const admins = anywhere('admin');
