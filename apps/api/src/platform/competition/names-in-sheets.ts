import type { SheetOptions } from './documents.js';
import type { LoadedCompetition } from './loaded.js';

type Line = LoadedCompetition['roster'][number];

/** Who sees whole names in a sheet: the crew; others see what the meet shows of a name. */
export function namesFor(isCrew: boolean): NonNullable<SheetOptions['nameOf']> {
  return isCrew ? crewName : publicName;
}

function crewName(line: Line): string | null {
  return line.name;
}

/** Where only the bib is shown there is no name to give. */
function publicName({ displayName, competitor }: Line): string | null {
  return displayName === `#${competitor.bib}` ? null : displayName;
}
