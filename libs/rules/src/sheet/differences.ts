import { reasonsOf } from '../result/reason.js';
import type { Difference, ResultRow } from '../result/result-document.js';
import { sentenceOf } from '../result/sentence.js';
import { verticalReasonsOf } from '../vertical/vertical-reason.js';
import { verticalSentenceOf } from '../vertical/vertical-sentence.js';
import type { CompetitionContent, Written } from './sheet-content.js';

/**
 * Where what the card says is not what was counted, in the order of competition; `undefined` when the card says
 * nothing of anybody.
 */
export function differencesOf(
  content: CompetitionContent,
  rows: readonly ResultRow[],
): Difference[] | undefined {
  const { competitors } = content.information;
  if (competitors.every(({ written }) => written === null)) return undefined;
  const rowOf = new Map(rows.map((row) => [row.bib, row]));
  const sentences = sentencesOf(content);
  return content.card.competitors.flatMap(({ bib }, index) => {
    const written = competitors[index]?.written;
    const counted = rowOf.get(bib);
    if (!written || !counted) return [];
    return differencesOfRow(written, counted, sentences.get(bib) ?? '');
  });
}

function differencesOfRow(written: Written, row: ResultRow, because: string): Difference[] {
  const keys = ['place', 'mark'] as const;
  return keys.flatMap((key): Difference[] => {
    const said = written[key];
    return said === undefined || said === row[key]
      ? []
      : [{ bib: row.bib, key, written: said, counted: row[key], because }];
  });
}

function sentencesOf(content: CompetitionContent): ReadonlyMap<string, string> {
  if (content.kind === 'vertical') {
    return new Map(verticalReasonsOf(content.card).map((reason) => [reason.bib, verticalSentenceOf(reason)]));
  }
  return new Map(reasonsOf(content.card).map((reason) => [reason.bib, sentenceOf(reason)]));
}
