import { readSheetSource } from './read-sheet.js';

type Loose = Record<string, unknown>;
type Cells = (string | null)[];

const HEIGHTS = ['1.60', '1.65', '1.70', '1.75'];

function problemsIn(competitors: Loose[], changes: Loose = {}): string[] {
  const sheet = {
    format: 'sectorline-sheet/1',
    rules: 'WA',
    event: 'high-jump',
    heights: HEIGHTS,
    ...changes,
  };
  const reading = readSheetSource(JSON.stringify({ ...sheet, competitors, ...changes }));
  if (reading.ok) return [];
  return reading.problems.map(({ path, code }) => `${path.replace('/competitors/0/series/', '')} ${code}`);
}

function alone(series: Cells, changes: Loose = {}): string[] {
  return problemsIn([{ bib: '1', series }], changes);
}

describe('heights', () => {
  const withHeights = (...heights: unknown[]): string[] => alone([], { heights });

  it('are marks that rise', () => {
    expect(withHeights('1.60', '1.60', '1.59', '1.61')).toEqual([
      '/heights/1 NOT_RISING',
      '/heights/2 NOT_RISING',
    ]);
    expect(withHeights('1.60', 1.65, '1,70', '0.00')).toEqual([
      '/heights/1 WRONG_TYPE',
      '/heights/2 CELL',
      '/heights/3 CELL',
    ]);
    expect(withHeights('5-03.00', '5-04.00', '1.70')).toEqual(['/heights/2 UNIT']);
    expect(withHeights()).toEqual(['/heights UNKNOWN_VALUE']);
  });

  it('are in the unit of the standard and the jump-off', () => {
    const qualification = { stage: 'qualification', qualifying: { standard: '5-03.00' } };
    expect(alone([], qualification)).toEqual(['/qualifying/standard UNIT']);
    const jumpOff = [{ height: '5-03.00', tries: {} }];
    expect(alone(['O'], { jumpOff })).toContain('/jumpOff/0/height UNIT');
  });
});

describe('cells of a vertical jump', () => {
  it('are those of the format', () => {
    expect(alone(['O', 'XO', 'XXO', 'XXX'])).toEqual([]);
    expect(alone(['-', 'X-', 'X-', 'X'])).toEqual([]);
    expect(alone(['X-', 'O', 'r'])).toEqual([]);
    expect(alone(['O', 'Xr'])).toEqual([]);
    expect(alone(['XXr'])).toEqual([]);
    expect(alone(['OX', 'xo', 'XXXO', '1.80'])).toEqual(['0 CELL', '1 CELL', '2 CELL', '3 CELL']);
  });

  it('are no more than the heights, empty ones included', () => {
    expect(alone([null, null, null, null, null])).toEqual(['4 TOO_MANY']);
  });

  it('follow one another without a gap', () => {
    expect(alone(['O', null, 'O'])).toEqual(['2 GAP']);
  });

  it('end with retiring', () => {
    expect(alone(['Xr', 'O', null, null])).toEqual(['1 AFTER_RETIRING']);
  });

  it('are none of who did not start', () => {
    expect(problemsIn([{ bib: '1', status: 'DNS', series: ['-', 'O'] }])).toEqual([
      '0 AFTER_DNS',
      '1 AFTER_DNS',
    ]);
  });

  it('end with the height that reaches the standard', () => {
    const qualification = { stage: 'qualification', qualifying: { standard: '1.68' } };
    expect(alone(['O', 'O', 'XO', '-'], qualification)).toEqual(['3 AFTER_STANDARD']);
    expect(alone(['O', 'O', '-', 'O'], qualification)).toEqual([]);
    expect(alone(['O', 'O', 'O', 'O'], { ...qualification, qualifying: { standard: '2.00' } })).toEqual([]);
  });

  it('end with the third failure in a row; a pass does not break it', () => {
    expect(alone(['X-', 'XX', 'O'])).toEqual(['2 AFTER_THREE_FAILURES']);
    expect(alone(['XXX', '-', 'O'])).toEqual(['1 AFTER_THREE_FAILURES', '2 AFTER_THREE_FAILURES']);
    expect(alone(['X-', '-', 'X-', 'X'])).toEqual([]);
    expect(alone(['XX-', 'XO'])).toEqual(['1 AFTER_THREE_FAILURES']);
    expect(alone(['XX-', 'X-'])).toEqual(['1 AFTER_THREE_FAILURES']);
    expect(alone(['XX-', 'XX'])).toEqual(['1 AFTER_THREE_FAILURES']);
    expect(alone(['XX-', 'O', 'XX-', 'X'])).toEqual([]);
  });

  it('are not left open', () => {
    expect(alone(['X', 'O'])).toEqual(['0 OPEN_HEIGHT']);
    expect(alone(['O', 'XX', '-'])).toEqual(['1 OPEN_HEIGHT']);
    expect(alone(['X', null, null])).toEqual([]);
    expect(alone(['X', null, 'O'])).toEqual(['0 OPEN_HEIGHT', '2 GAP']);
  });

  it('are judged after a cell that cannot be read only by what holds whatever it was', () => {
    expect(alone(['X-', '?', 'XX', 'O'])).toEqual(['1 CELL']);
    expect(alone(['r', '?', 'XX', 'O'])).toEqual(['1 CELL', '2 AFTER_RETIRING', '3 AFTER_RETIRING']);
  });

  it('name the rule', () => {
    const sheet = { format: 'sectorline-sheet/1', rules: 'NFHS', event: 'pole-vault', heights: HEIGHTS };
    const reading = readSheetSource(
      JSON.stringify({ ...sheet, competitors: [{ bib: '1', series: ['XXX', 'O'] }] }),
    );
    expect(reading).toMatchObject({ problems: [{ rule: 'NFHS, as WA TR26.2' }] });
  });
});

describe('a jump-off', () => {
  const level = ['a', 'b', 'c'].map((bib) => ({ bib, series: ['O', 'XXX'] }));
  const behind = { bib: 'd', series: ['XO', 'XXX'] };
  const disqualified = { bib: 'q', status: 'DQ', series: ['O', 'XXX'] };
  const all = [...level, behind, disqualified];
  const held = (...tries: Record<string, string>[]): string[] =>
    problemsIn(all, { jumpOff: tries.map((round) => ({ height: '1.65', tries: round })) });

  it('is of those level for first', () => {
    expect(held()).toEqual([]);
    expect(held({ a: 'X', b: 'X', c: 'X' }, { a: 'O', b: 'O', c: 'X' }, { a: 'O', b: 'X' })).toEqual([]);
    expect(held({ a: 'O', b: 'O', c: 'O', d: 'X' })).toEqual(['/jumpOff/0/tries/d JUMP_OFF']);
    expect(held({ a: 'O', b: 'O', c: 'X' }, { a: 'O', c: 'O', b: 'O' })).toEqual([
      '/jumpOff/1/tries/c JUMP_OFF',
    ]);
  });

  it('sets the disqualified aside', () => {
    expect(held({ q: 'O', a: 'O', b: 'X', c: 'X' })).toEqual([]);
  });

  it('ends when it is decided', () => {
    expect(held({ a: 'O', b: 'X', c: 'X' }, { a: 'O' })).toEqual(['/jumpOff/1 JUMP_OFF']);
    expect(problemsIn([behind], { jumpOff: [{ height: '1.65', tries: {} }] })).toEqual([
      '/jumpOff/0 JUMP_OFF',
    ]);
  });

  it('has an entry of everybody who is still in it when somebody jumps', () => {
    expect(held({ c: 'X' })).toEqual(['/jumpOff/0/tries/a JUMP_OFF', '/jumpOff/0/tries/b JUMP_OFF']);
    expect(held({ a: 'r', b: '-' })).toEqual([]);
    expect(held({ a: 'r' }, { b: 'O', c: 'X' })).toEqual([]);
  });

  it('has entries of known bibs, one letter each', () => {
    expect(held({ a: 'O', b: 'XO', c: '', z: 'O' })).toEqual([
      '/jumpOff/0/tries/b CELL',
      '/jumpOff/0/tries/c CELL',
      '/jumpOff/0/tries/z UNKNOWN_BIB',
    ]);
    expect(problemsIn(all, { jumpOff: [{ height: '1,65', tries: { a: 1 } }, { tries: [] }, 7] })).toEqual([
      '/jumpOff/0/height CELL',
      '/jumpOff/0/tries/a WRONG_TYPE',
      '/jumpOff/1/height MISSING',
      '/jumpOff/1/tries WRONG_TYPE',
      '/jumpOff/2 WRONG_TYPE',
    ]);
  });

  it('is reported beside problems that do not touch it, and not where the heights do not tell who is level', () => {
    const jumpOff = [{ height: '1.65', tries: { d: 'X' } }];
    const odd = { bib: 'e', series: ['O?'] };
    expect(problemsIn(all, { jumpOff, colour: 1 })).toEqual([
      '/jumpOff/0/tries/d JUMP_OFF',
      '/colour UNKNOWN_KEY',
    ]);
    expect(problemsIn([...all, odd], { jumpOff })).toEqual(['/competitors/5/series/0 CELL']);
  });
});
