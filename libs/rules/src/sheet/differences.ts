import { ordinal } from '../ranking/decision.js';
import { reasonsOf } from '../result/reason.js';
import type { Difference, ResultRow } from '../result/result-document.js';
import { sentenceOf } from '../result/sentence.js';
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
  const rowOf = new Map(rows.map((row, index) => [row.bib, { row, before: rows[index - 1] }]));
  const sentences = sentencesOf(content);
  return content.card.competitors.flatMap(({ bib }, index) => {
    const written = competitors[index]?.written;
    const counted = rowOf.get(bib);
    if (!written || !counted) return [];
    const because = sentences.get(bib) ?? verticalSentence(counted.row, counted.before);
    return differencesOfRow(written, counted.row, because);
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
  if (content.kind === 'vertical') return new Map();
  return new Map(reasonsOf(content.card).map((reason) => [reason.bib, sentenceOf(reason)]));
}

function verticalSentence(row: ResultRow, before: ResultRow | undefined): string {
  if (row.place === null) return `No place: ${NO_PLACE[row.status ?? 'NM']}`;
  return `${ordinal(row.place)}${row.equal ? ', shared' : ''}: ${verticalGrounds(row, before)}`;
}

const NO_PLACE: Readonly<Record<NonNullable<ResultRow['status']>, string>> = {
  NM: 'no height cleared',
  DQ: 'disqualified',
  DNS: 'did not start',
  GUEST: 'guest',
};

function verticalGrounds({ mark, decidedBy }: ResultRow, before: ResultRow | undefined): string {
  const against = before ? ` against ${before.mark}` : '';
  switch (decidedBy) {
    case 'jump-off':
      return `cleared ${mark}; decided in the jump-off`;
    case 'failures at height':
      return `equal height ${mark}; more failures at that height`;
    case 'total failures':
      return `equal height ${mark} and failures at it; more failures up to it`;
    case 'equal':
      return `equal height ${mark}, failures at it and failures up to it`;
    default:
      return `cleared ${mark}${against}`;
  }
}
