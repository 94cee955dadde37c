import type { HeightTrials, VerticalTrial } from './vertical-card.js';

const LETTERS: Readonly<Record<VerticalTrial, string>> = {
  cleared: 'O',
  failed: 'X',
  passed: '-',
  retired: 'r',
};

const TRIALS: ReadonlyMap<string, VerticalTrial> = new Map(
  (Object.keys(LETTERS) as VerticalTrial[]).map((trial) => [LETTERS[trial], trial]),
);

/** Up to two failures and what ended the height, or one to three failures. */
const CELLS: readonly string[] = [
  ...['O', '-', 'r'].flatMap((end) => [end, `X${end}`, `XX${end}`]),
  ...['X', 'XX', 'XXX'],
];

const TRIALS_OF_CELLS: ReadonlyMap<string, HeightTrials> = new Map(
  CELLS.map((cell) => [cell, [...cell].flatMap((letter) => TRIALS.get(letter) ?? [])]),
);

/** Reads the trials at one height as a card shows them, e.g. `XXO` or `X-`; `null` when malformed. */
export function parseVerticalCell(text: string): HeightTrials | null {
  return TRIALS_OF_CELLS.get(text) ?? null;
}

/** Writes the trials at one height: the inverse of `parseVerticalCell`. */
export function formatVerticalCell(trials: HeightTrials): string {
  return trials.map((trial) => LETTERS[trial]).join('');
}

/** Reads one trial of a jump-off: `O`, `X`, `-` or `r`; `null` when malformed. */
export function parseJumpOffTry(text: string): VerticalTrial | null {
  return TRIALS.get(text) ?? null;
}

/** Writes one trial of a jump-off: the inverse of `parseJumpOffTry`. */
export function formatJumpOffTry(trial: VerticalTrial): string {
  return LETTERS[trial];
}
