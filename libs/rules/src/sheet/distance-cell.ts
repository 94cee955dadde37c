import { formatMark, parseMark, type Unit } from '../quantities/mark.js';
import { formatWind, parseWind } from '../quantities/wind.js';
import type { Trial } from '../trial.js';

export interface DistanceCell {
  readonly trial: Trial;
  /** Of the mark; `null` when there is none. */
  readonly unit: Unit | null;
}

/** Cells of one letter. */
const LETTERS: Readonly<Record<string, Trial['outcome']>> = Object.assign(
  Object.create(null) as Record<string, Trial['outcome']>,
  { O: 'unmeasured', X: 'foul', '-': 'pass', r: 'retired' },
);

/**
 * Reads one trial of a throw or a horizontal jump as a card shows it: `52.98`, `7.46 +1.3`, `7.46 NWI`, `O`, `X`,
 * `X -0.4`, `-`, `r`. Whether the event has wind is not looked at. `null` when it is malformed.
 */
export function parseDistanceCell(text: string): DistanceCell | null {
  const outcome = LETTERS[text];
  if (outcome !== undefined) return { trial: { outcome, mark: null, wind: null }, unit: null };
  const blank = text.indexOf(' ');
  const head = blank < 0 ? text : text.slice(0, blank);
  const wind = blank < 0 ? null : parseWind(text.slice(blank + 1));
  if (blank >= 0 && wind === null) return null;
  if (head === 'X') {
    return typeof wind === 'number' ? { trial: { outcome: 'foul', mark: null, wind }, unit: null } : null;
  }
  const mark = parseMark(head);
  return mark && { trial: { outcome: 'valid', mark: mark.value, wind }, unit: mark.unit };
}

/**
 * Writes one trial: the inverse of `parseDistanceCell`. A sheet cannot say that a wind is still expected: such a mark
 * is written without wind; nor that there is no information on the wind of a failure.
 */
export function formatDistanceCell({ outcome, mark, wind }: Trial, unit: Unit): string {
  switch (outcome) {
    case 'valid':
      return `${formatMark(mark ?? 0, unit)}${wind === null || wind === 'pending' ? '' : ` ${formatWind(wind)}`}`;
    case 'foul':
      return typeof wind === 'number' ? `X ${formatWind(wind)}` : 'X';
    case 'unmeasured':
      return 'O';
    case 'pass':
      return '-';
    case 'retired':
      return 'r';
  }
}
