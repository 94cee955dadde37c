import type { CompetitionRow } from '#persistence';
import type { RosterLine } from '../../platform/roster/roster.js';
import type { Wording } from '../labels/labels.js';
import { gramsText } from './head.js';

/** A line of a start list as the reader may see it. */
export interface ListLine {
  readonly order: string;
  readonly bib: string;
  readonly name: string;
  readonly club: string;
  readonly implement: string;
  readonly flight: string | null;
}

/** `whole`: whole names, for the crew. */
export function listLines(
  roster: readonly RosterLine[],
  competition: CompetitionRow,
  wording: Wording,
  whole: boolean,
): ListLine[] {
  return roster.map((line, index) => {
    const { bib, flight, guest, implementGrams } = line.competitor;
    const grams = implementGrams ?? competition.implementGrams;
    const name = whole ? (line.name ?? line.displayName) : line.displayName;
    return {
      order: String(index + 1),
      bib,
      name: guest ? `${name} (${wording.labels.guest})` : name,
      club: line.club ?? '',
      implement: grams === null ? '' : gramsText(grams, wording),
      flight,
    };
  });
}

/** In the order in which the flights first stand on the list; without flights, one. */
export function byFlight(lines: readonly ListLine[]): { flight: string | null; lines: ListLine[] }[] {
  const flights = [...new Set(lines.map(({ flight }) => flight))];
  return flights.map((flight) => ({ flight, lines: lines.filter((line) => line.flight === flight) }));
}
