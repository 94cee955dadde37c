import type { AthleteRow, CompetitorRow, MeetRow, NameDisplay } from '#persistence';

/** Whom a line of a start list names: an athlete on record, or just a name that was written down, or nobody. */
export interface Named {
  readonly competitor: Pick<CompetitorRow, 'bib' | 'listedName'>;
  readonly athlete: Pick<AthleteRow, 'givenName' | 'familyName' | 'birthDate' | 'display'> | null;
}

/** At this age one is no longer a child (Convention on the Rights of the Child, article 1). */
const ADULT_YEARS = 18;

/**
 * What the public sees of a name. An athlete's own choice goes before all; otherwise adults show their name, and
 * children, and everybody whose age is not known, as the meet decides.
 */
export function displayName(
  { competitor, athlete }: Named,
  meet: Pick<MeetRow, 'startsOn' | 'minorsDisplay'>,
): string {
  const adult = isAdult(athlete?.birthDate ?? null, meet.startsOn);
  const display = athlete?.display ?? (adult ? 'full' : meet.minorsDisplay);
  const shown = shownAs(display, nameParts(competitor, athlete));
  return shown === '' ? `#${competitor.bib}` : shown;
}

/**
 * Whether results of several meets may be put together under this name: an athlete who is known to be of age, or who
 * decided to be shown whole. That a meet shows children by their names is no such decision.
 */
export function hasPublicResults(
  { athlete }: Pick<Named, 'athlete'>,
  { startsOn }: Pick<MeetRow, 'startsOn'>,
): boolean {
  if (!athlete) return false;
  return (athlete.display ?? (isAdult(athlete.birthDate, startsOn) ? 'full' : null)) === 'full';
}

/** The whole name, for officials; null when the line has none. */
export function fullName({ competitor, athlete }: Named): string | null {
  const name = nameParts(competitor, athlete).join(' ');
  return name === '' ? null : name;
}

function nameParts(competitor: Named['competitor'], athlete: Named['athlete']): readonly string[] {
  if (athlete) return [athlete.givenName, athlete.familyName];
  return (competitor.listedName ?? '').split(/\s+/u).filter((part) => part !== '');
}

function shownAs(display: NameDisplay, parts: readonly string[]): string {
  switch (display) {
    case 'full':
      return parts.join(' ');
    case 'initials':
      return (parts.length > 2 ? [parts[0], parts.at(-1)] : parts)
        .map((part) => initialOf(part ?? ''))
        .join(' ');
    case 'bib':
      return '';
  }
}

const graphemes = new Intl.Segmenter('en', { granularity: 'grapheme' });

function initialOf(part: string): string {
  for (const { segment } of graphemes.segment(part.trim())) return `${segment.toUpperCase()}.`;
  return '';
}

/**
 * Whether somebody is known to be of age on a day. Days are compared as text, so that no time zone has a say. Who is
 * born on 29 February is of age on 1 March.
 */
export function isAdult(birthDate: string | null, on: string): boolean {
  if (birthDate === null) return false;
  const comesOfAge = `${Number(birthDate.slice(0, 4)) + ADULT_YEARS}${birthDate.slice(4)}`;
  return comesOfAge <= on;
}
