import {
  readSheet,
  readSource,
  type CombinedContent,
  type CompetitionContent,
  type DistanceContent,
  type MeetContent,
  type Problem,
  type VerticalContent,
} from '#rules';
import { MOST_SHEETS } from './store-meet-sheet.js';
import type { SheetImportInput } from './sheet-import.inputs.js';

/** What a sheet holds, as a journal can say it, or everything that is wrong with the sheet. */
export type Reading =
  | { readonly content: CompetitionContent | CombinedContent | MeetContent }
  | { readonly problems: readonly Problem[] };

/** Reads what was sent as a sheet: JSON, or its text. */
export function readingOf({ sheet, unit }: SheetImportInput): Reading {
  const source = readSource(typeof sheet === 'string' ? sheet : JSON.stringify(sheet));
  if (!source.ok) return { problems: [source.problem] };
  const reading = readSheet(source.value);
  if (!reading.ok) return { problems: reading.problems };
  const { content } = reading;
  switch (content.kind) {
    case 'meet':
      if (content.sheets.length > MOST_SHEETS) return { problems: [TOO_LARGE] };
      return { content: { ...content, sheets: content.sheets.map((one) => recordable(one, unit)) } };
    case 'combined':
      return { content };
    default:
      return { content: recordable(content, unit) };
  }
}

function recordable(content: CompetitionContent, unit: SheetImportInput['unit']): CompetitionContent {
  if (content.kind === 'vertical') return withTakenRounds(content);
  const card = unit && !hasMarks(content) ? { ...content.card, unit } : content.card;
  return { ...content, card };
}

function hasMarks({ card }: DistanceContent): boolean {
  return (
    card.qualifying !== null || card.competitors.some(({ series }) => series.some((trial) => trial?.mark))
  );
}

/**
 * The jump-off as a journal can say it: a round that nobody took leaves no entry, and within a round the order of the
 * tries says nothing, since a sheet has them by bib.
 */
function withTakenRounds(content: VerticalContent): VerticalContent {
  const { card } = content;
  const position = new Map(card.competitors.map(({ bib }, index) => [bib, index]));
  const placeOf = (bib: string): number => position.get(bib) ?? 0;
  const jumpOff = card.jumpOff
    .filter(({ tries }) => tries.length > 0)
    .map(({ height, tries }) => ({
      height,
      tries: tries.toSorted((a, b) => placeOf(a.bib) - placeOf(b.bib)),
    }));
  return { ...content, card: { ...card, jumpOff } };
}

const TOO_LARGE: Problem = {
  path: '/sheets',
  code: 'TOO_LARGE',
  message: `A meet is imported with at most ${MOST_SHEETS} sheets.`,
  rule: null,
};
