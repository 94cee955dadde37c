import {
  readSheet,
  readSource,
  type CombinedContent,
  type CompetitionContent,
  type DistanceContent,
  type Problem,
  type VerticalContent,
} from '#rules';
import type { SheetImportInput } from './sheet-import.inputs.js';

/** One competition or combined event as a sheet has it, or everything that is wrong with the sheet. */
export type Reading =
  | { readonly content: CompetitionContent | CombinedContent }
  | { readonly problems: readonly Problem[] };

/** Reads what was sent as a sheet: JSON, or its text. */
export function readingOf({ sheet, unit }: SheetImportInput): Reading {
  const source = readSource(typeof sheet === 'string' ? sheet : JSON.stringify(sheet));
  if (!source.ok) return { problems: [source.problem] };
  const reading = readSheet(source.value);
  if (!reading.ok) return { problems: reading.problems };
  const { content } = reading;
  switch (content.kind) {
    case 'distance': {
      const card = unit && !hasMarks(content) ? { ...content.card, unit } : content.card;
      return { content: { ...content, card } };
    }
    case 'vertical':
      return { content: withTakenRounds(content) };
    case 'combined':
      return { content };
    default:
      return { problems: [NOT_YET] };
  }
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

const NOT_YET: Problem = {
  path: '/format',
  code: 'NOT_YET',
  message: 'A whole meet cannot be imported yet; import its sheets one by one, or recount it.',
  rule: null,
};
