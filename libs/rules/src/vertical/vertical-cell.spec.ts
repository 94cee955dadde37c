import { formatJumpOffTry, formatVerticalCell, parseJumpOffTry, parseVerticalCell } from './vertical-cell.js';

const CELLS = ['O', 'XO', 'XXO', 'X', 'XX', 'XXX', '-', 'X-', 'XX-', 'r', 'Xr', 'XXr'];

describe('the trials at one height', () => {
  it.each(CELLS)('%s is read and written alike', (cell) => {
    const trials = parseVerticalCell(cell);
    expect(trials).toHaveLength(cell.length);
    expect(formatVerticalCell(trials ?? [])).toBe(cell);
  });

  it('are told apart', () => {
    expect(parseVerticalCell('XXO')).toEqual(['failed', 'failed', 'cleared']);
    expect(parseVerticalCell('X-')).toEqual(['failed', 'passed']);
    expect(parseVerticalCell('r')).toEqual(['retired']);
  });

  // Every word of up to four of these letters is malformed but for the twelve that the format lists.
  it('are malformed in every other way', () => {
    const letters = ['O', 'X', '-', 'r', 'x', 'o', ' '];
    let words = [''];
    const read: string[] = [];
    for (let length = 0; length <= 4; length += 1) {
      read.push(...words.filter((word) => parseVerticalCell(word) !== null));
      words = words.flatMap((word) => letters.map((letter) => word + letter));
    }
    expect(read.sort()).toEqual([...CELLS].sort());
  });

  it.each(['constructor', '__proto__', 'toString', '1.80', '\u041e'])('%s is no cell', (text) => {
    expect(parseVerticalCell(text)).toBeNull();
    expect(parseJumpOffTry(text)).toBeNull();
  });
});

describe('a trial of a jump-off', () => {
  it.each(['O', 'X', '-', 'r'])('%s is read and written alike', (text) => {
    const trial = parseJumpOffTry(text);
    expect(trial && formatJumpOffTry(trial)).toBe(text);
  });

  it.each(['XO', '', 'o', 'XX'])('is one trial, not %j', (text) => {
    expect(parseJumpOffTry(text)).toBeNull();
  });
});
