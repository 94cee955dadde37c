import { grid } from './grid.js';
import { printable, widthOf } from './text.js';

describe('text in a terminal', () => {
  // Widths by Unicode Standard Annex #11 (East Asian Width) and #29 (grapheme clusters).
  it.each([
    ['Ada', 3],
    ['Zoë', 3],
    ['Zoe\u0308', 3],
    ['Åsa Ström', 9],
    ['山田', 4],
    ['ﾔﾏﾀﾞ', 4],
    ['김', 2],
    ['🏅', 2],
    ['👩‍👧', 2],
    ['', 0],
    ['a\u200bb', 2],
  ])('%s is %d columns wide', (text, width) => {
    expect(widthOf(text)).toBe(width);
  });

  it('shows what a terminal would obey', () => {
    expect(printable('\u001b[2Jgone\r\n')).toBe('<U+001B>[2Jgone<U+000D><U+000A>');
    expect(printable('left\u202Eright')).toBe('left<U+202E>right');
    expect(printable('\u009b31m')).toBe('<U+009B>31m');
    expect(printable('\ud800')).toBe('<U+D800>');
    expect(printable('Zoë 🏅 山')).toBe('Zoë 🏅 山');
  });
});

describe('a grid', () => {
  const columns = [
    { title: 'Place', align: 'right' },
    { title: 'Name', align: 'left' },
    { title: 'Best', align: 'right' },
  ] as const;

  it('lines up what has different widths', () => {
    const rows = [
      ['1 ', 'Zoë', '61.20'],
      ['2=', '山田', '9.05'],
    ];
    expect(grid(columns, rows)).toEqual([
      'Place  Name   Best',
      '─────  ────  ─────',
      '   1   Zoë   61.20',
      '   2=  山田   9.05',
    ]);
  });

  it('is nothing without rows', () => {
    expect(grid(columns, [])).toEqual([]);
  });
});
