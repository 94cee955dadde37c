import type { Identity } from '../platform/identity/identity.js';
import { displayName, fullName, isAdult } from '../platform/roster/display-name.js';
import type { Evident, Origin } from './evidence.js';

/** Somebody without a bib of whom only the bib may be shown. */
const NOBODY = { bib: '', listedName: null };

/** What a viewer may see of the name of whoever made a mark; `null`: nothing, or it is not on record. */
export function holderName({ performance, origin }: Evident, viewer: Identity): string | null {
  if (origin.kind === 'attempt') {
    const { line } = origin;
    return isCrew(origin, viewer) ? (line.name ?? line.displayName) : line.displayName;
  }
  if (!origin.athlete) return null;
  const named = { competitor: NOBODY, athlete: origin.athlete };
  if (viewer.mayKeepAthletes) return fullName(named);
  // As on the day of the mark: who was a child then is not named for it afterwards.
  const shown = displayName(named, { startsOn: performance.onDate, minorsDisplay: 'initials' });
  return shown === `#${NOBODY.bib}` ? null : shown;
}

/** Works at the competition in which the mark was made. */
function isCrew(origin: Extract<Origin, { kind: 'attempt' }>, viewer: Identity): boolean {
  return viewer.mayDirect(origin.meet.id) || viewer.capacityIn(origin.row) !== null;
}

/**
 * Whether a viewer may see an athlete's own bests beside a mark: those who work there, and everybody of an adult who
 * is shown by name. Children are compared with nobody but in the records of club and meet.
 */
export function maySeeBests({ origin }: Evident, viewer: Identity): boolean {
  if (origin.kind !== 'attempt') return viewer.mayKeepAthletes;
  if (isCrew(origin, viewer)) return true;
  const { line, meet } = origin;
  return isAdult(line.athlete?.birthDate ?? null, meet.startsOn) && line.displayName === line.name;
}
