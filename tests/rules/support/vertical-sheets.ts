import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import type fc from 'fast-check';
import { readSheetSource, type CompetitionContent, type VerticalCard } from '#rules';
import { drawn } from '../../reference/draw.js';
import { verticalSheet } from '../../reference/generate-vertical.js';

const FOLDER = join(import.meta.dirname, '..', '..', 'cases');

/** The vertical jumps of a sheet: one, several in a meet, or none. */
function verticalCardsOf(source: string): VerticalCard[] {
  const reading = readSheetSource(source);
  if (!reading.ok || reading.content.kind === 'combined') return [];
  const sheets: readonly CompetitionContent[] =
    reading.content.kind === 'meet' ? reading.content.sheets : [reading.content];
  return sheets.flatMap((content) => (content.kind === 'vertical' ? [content.card] : []));
}

/** Every vertical jump among the cases: real results, worked examples, generated sheets. */
export const VERTICAL_CASES: readonly { readonly name: string; readonly card: VerticalCard }[] = readdirSync(
  FOLDER,
)
  .filter((name) => name.endsWith('.json'))
  .sort()
  .flatMap((name) => {
    const { sheet } = JSON.parse(readFileSync(join(FOLDER, name), 'utf8')) as { sheet: unknown };
    return verticalCardsOf(JSON.stringify(sheet)).map((card) => ({ name, card }));
  });

/** The card of any valid sheet of a vertical jump. */
export const anyVerticalCard: fc.Arbitrary<VerticalCard> = drawn((draw) => {
  const [card] = verticalCardsOf(JSON.stringify(verticalSheet(draw).sheet));
  if (!card) throw new Error('The sheet that was drawn is not valid.');
  return card;
});
