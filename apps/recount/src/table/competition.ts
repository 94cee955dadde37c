import type { ResultRow } from '#rules';
import type { Competitor, Sheet } from '../sheet.js';
import { grid, type Column } from './grid.js';
import { placeCell } from './place.js';

type Row = ResultRow & { readonly points?: string };

/** One column and what stands in it for a competitor. */
interface Field extends Column {
  readonly cell: (row: Row, competitor: Competitor) => string;
}

function right(title: string, cell: Field['cell']): Field {
  return { title, align: 'right', cell };
}

function left(title: string, cell: Field['cell']): Field {
  return { title, align: 'left', cell };
}

function withWind(mark: string | null, wind: string | null): string {
  return [mark, wind].filter((part) => part !== null).join(' ');
}

function trialFields(sheet: Sheet, rounds: number): Field[] {
  const titles = sheet.heights ?? Array.from({ length: rounds }, (_, index) => `${index + 1}`);
  const trials = titles.map((title, index) => right(title, (_, { series }) => series?.[index] ?? ''));
  const jumpOff = (sheet.jumpOff ?? []).map(({ height, tries }) =>
    right(`jump-off ${height}`, ({ bib }) => (Object.hasOwn(tries, bib) ? (tries[bib] ?? '') : '')),
  );
  return [...trials, ...jumpOff];
}

/** What only some competitions have. */
function optional(field: Field): Field {
  return { ...field, optional: true };
}

/** The best that may count for records, where the wind makes it another one. */
function legalBest({ mark, windLegal, windLegalMark }: Row): string {
  if (mark === null || windLegal === true || windLegalMark === mark) return '';
  return windLegalMark ?? '–';
}

/**
 * The result table of one competition: places, the series as written, the best mark.
 *
 * @param rounds how many trials the plan has; for vertical jumps the heights stand instead.
 */
export function competitionTable(sheet: Sheet, results: readonly Row[], rounds: number): string[] {
  const competitors = new Map(sheet.competitors.map((competitor) => [competitor.bib, competitor]));
  const rows = results.map((row) => [row, competitors.get(row.bib) ?? { bib: row.bib }] as const);
  const windy = results.some(({ windLegal }) => windLegal !== null);
  const fields = [
    right('Place', placeCell),
    left('Bib', ({ bib }) => bib),
    optional(left('Name', (_, { name }) => name ?? '')),
    optional(left('Club', (_, { club }) => club ?? '')),
    ...trialFields(sheet, rounds),
    right('Best', ({ mark, wind }) => withWind(mark, wind)),
    ...(windy ? [optional(right('Best with legal wind', legalBest))] : []),
    optional(left('Goes on', ({ qualified }) => qualified ?? '')),
    optional(right('Points', ({ points }) => points ?? '')),
  ];
  return grid(
    fields,
    rows.map(([row, competitor]) => fields.map((field) => field.cell(row, competitor))),
  );
}
