import { applyVertical, editionsOf, openVertical, verticalProgressOf, type VerticalTrial } from '#rules';

/** One trial of a script at a bar. */
export interface JumpLine {
  readonly bib: string;
  readonly height: number;
  readonly trial: number;
  readonly isJumpOff: boolean;
  readonly letter: string;
}

export const HEIGHTS = ['1.70', '1.75', '1.80', '1.84'];
const HEIGHTS_CM = HEIGHTS.map((height) => Number(height.replace('.', '')));

/** By bib and height as on a field card, and round by round in the jump-off. */
const CARD: Readonly<Record<string, readonly string[]>> = {
  1: ['O', 'XO', 'O', 'XXX'],
  2: ['XO', '-', 'XXX'],
  3: ['-', 'XO', 'O', 'XXX'],
  4: ['O', 'X-', 'Xr'],
};
const JUMP_OFF: Readonly<Record<string, readonly string[]>> = { 1: ['X', 'O'], 3: ['X', 'X'] };

const TRIALS: Readonly<Record<string, VerticalTrial>> = {
  O: 'cleared',
  X: 'failed',
  '-': 'passed',
  r: 'retired',
};

/** Every trial in the order in which the rules call it, found without the desk. */
export function highJump(): readonly JumpLine[] {
  let state = openVertical({
    rules: 'WA',
    edition: editionsOf('WA').at(-1)!,
    event: 'high-jump',
    indoor: false,
    stage: 'final',
    qualifying: null,
    unit: 'cm',
    heights: HEIGHTS_CM,
    combined: false,
    passGivesUp: 'height',
    tieForFirst: 'jump-off',
    competitors: Object.keys(CARD).map((bib) => ({
      key: bib,
      bib,
      name: null,
      club: null,
      flight: null,
      guest: false,
    })),
  });
  const lines: JumpLine[] = [];
  for (let { up } = verticalProgressOf(state); up !== null; { up } = verticalProgressOf(state)) {
    const { competitor: bib, height, trial, jumpOff: isJumpOff } = up;
    const letter = isJumpOff
      ? JUMP_OFF[bib]![trial - 1]!
      : CARD[bib]![HEIGHTS_CM.indexOf(height)]![trial - 1]!;
    lines.push({ bib, height, trial, isJumpOff, letter });
    const id = `00000000-0000-7000-8000-${String(lines.length).padStart(12, '0')}`;
    const head = { id, by: 'official', actor: 'script', competitor: bib, height, trial } as const;
    ({ state } = applyVertical(state, {
      ...head,
      kind: isJumpOff ? 'jump-off' : 'jump',
      ...judgedJump(letter),
    }));
  }
  return lines;
}

/** What the journal has to say of a letter. */
export function judgedJump(letter: string) {
  return { outcome: TRIALS[letter]!, foul: null, incident: null, protested: false };
}
