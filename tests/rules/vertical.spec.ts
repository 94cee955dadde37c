import { countVertical } from '#rules';
import { highJump, jumper, jumpOff, resultOf } from './support/vertical-card.js';

describe('worked examples of the rule books', () => {
  // The example table of WA TR26.8 and 26.9, from memory. Failures above the last cleared height never count.
  it('four at 1.88, three level for first', () => {
    const card = highJump(
      '1.75 1.80 1.84 1.88 1.91 1.94 1.97',
      {
        A: 'O XO O XO X- XX',
        B: '- XO - XO - - XXX',
        C: '- O XO XO - XXX',
        D: '- XO XO XO XXX',
      },
      { jumpOff: jumpOff('1.91 AX BX CX', '1.89 AO BO CX', '1.91 AX BO') },
    );
    expect(resultOf(card)).toEqual([
      '1 B 1.91 first',
      '2 A 1.89 jump-off',
      '3 C 1.88 jump-off',
      '4 D 1.88 total failures',
    ]);
  });

  // primidi.com/high_jump/declaring_the_winner; the page places E, who by WA has no mark and so no place.
  it('an encyclopedia’s table', () => {
    const card = highJump('1.91 1.93 1.95 1.97 1.99 2.01', {
      A: '- - XO XO XO XXX',
      B: 'O - O O XXX',
      C: 'O - XO XO X- XX',
      D: '- XO O XXO XXO XXX',
      E: '- - - XXX',
    });
    expect(resultOf(card)).toEqual([
      '1 A 1.99 first',
      '2 D 1.99 failures at height',
      '3 B 1.97 height',
      '4 C 1.97 failures at height',
      'NM E –',
    ]);
  });

  // Olympic final of 2024-08-10 as nbcsportschicago.com reported it; earlier heights, equal, left out.
  it('a jump-off that goes down does not lower the mark', () => {
    const card = highJump(
      '2.36 2.38',
      { A: 'O XXX', B: 'O XXX' },
      { jumpOff: jumpOff('2.38 AX BX', '2.36 AX BX', '2.34 AO BX') },
    );
    expect(resultOf(card)).toEqual(['1 A 2.36 first', '2 B 2.36 jump-off']);
  });

  // WA TR26.8.4, from memory; that first place may be shared: kob.com on the same day, of the final of 2021.
  it('no jump-off: first place shared', () => {
    const card = highJump('2.37 2.39', { A: 'O XXX', B: 'O XXX', C: 'XO XXX' });
    expect(resultOf(card)).toEqual(['1= A 2.37 first', '1= B 2.37 equal', '3 C 2.37 failures at height']);
  });

  // WA TR26.8; the steps as m.polevaultpower.com p=177486 quotes NFHS, NCAA and USATF; constructed.
  it('a tie for another place is left', () => {
    const card = highJump('4.00 4.20 4.40 4.60', {
      A: 'O O O XXX',
      B: 'O XO XXX',
      C: 'XO O XXX',
      D: '- XO XXX',
    });
    expect(resultOf(card)).toEqual([
      '1 A 4.40 first',
      '2 C 4.20 height',
      '3= B 4.20 failures at height',
      '3= D 4.20 equal',
    ]);
  });

  // WA TR26.2 and 26.8; constructed.
  it('a failure before a pass counts in the total', () => {
    const card = highJump(
      '1.60 1.65 1.70 1.73',
      { A: 'O X- O XXX', B: 'O O O XXX', C: 'O - O XXX' },
      { jumpOff: jumpOff('1.73 BO CX') },
    );
    expect(resultOf(card)).toEqual(['1 B 1.73 first', '2 C 1.70 jump-off', '3 A 1.70 total failures']);
  });

  // All rule sets, TR26.8; constructed.
  it('skipping a height is neither better nor worse', () => {
    expect(resultOf(highJump('1.90 1.95 2.00', { A: '- O XXX', B: 'O O XXX' }))).toEqual([
      '1= A 1.95 first',
      '1= B 1.95 equal',
    ]);
  });

  // WA TR26.9.5, from memory.
  it('who withdraws from the jump-off leaves first place to the other', () => {
    const jumpers = { A: 'O XXX', B: 'O XXX' };
    expect(resultOf(highJump('2.00 2.03', jumpers, { jumpOff: jumpOff('2.03 Ar') }))).toEqual([
      '1 B 2.00 first',
      '2 A 2.00 jump-off',
    ]);
    expect(resultOf(highJump('2.00 2.03', jumpers, { jumpOff: jumpOff('2.03 Ar BO') }))).toEqual([
      '1 B 2.03 first',
      '2 A 2.00 jump-off',
    ]);
  });
});

describe('who is not placed', () => {
  const card = highJump(
    '1.40 1.45',
    {},
    {
      competitors: [
        jumper('1', 'O O', { guest: true }),
        jumper('2', '', { status: 'DNS', guest: true }),
        jumper('3', 'O O', { status: 'DQ' }),
        jumper('4', 'XXX'),
        jumper('5', 'O r'),
        jumper('6', 'XXX', { guest: true }),
        jumper('7', ''),
      ],
    },
  );

  it('follows those who are: no mark, disqualified, not started, guests', () => {
    expect(resultOf(card)).toEqual([
      '1 5 1.40 first',
      'NM 4 –',
      'NM 7 –',
      'DQ 3 –',
      'DNS 2 –',
      'GUEST 1 1.45',
      'GUEST 6 –',
    ]);
  });

  it('has every key of a row', () => {
    expect(countVertical(card).results[5]).toEqual({
      bib: '1',
      place: null,
      equal: false,
      mark: '1.45',
      wind: null,
      windLegal: null,
      windLegalMark: '1.45',
      status: 'GUEST',
      decidedBy: null,
      qualified: null,
    });
  });

  it('may be disqualified after the jump-off, which the others keep', () => {
    const after = highJump(
      '2.00 2.03',
      {},
      {
        competitors: [jumper('A', 'O XXX', { status: 'DQ' }), jumper('B', 'O XXX'), jumper('C', 'O XXX')],
        jumpOff: jumpOff('2.03 AO BO CX', '2.05 AO BX'),
      },
    );
    expect(resultOf(after)).toEqual(['1 B 2.03 first', '2 C 2.00 jump-off', 'DQ A –']);
  });
});

// WA TR25.9 to 25.16, from memory.
describe('a qualification', () => {
  const jumpers = { A: 'O O', B: 'O XXX', C: 'O XXX', D: 'XO XXX', E: 'XXX', F: 'XO O' };
  const qualified = (standard: number, fill: number, bib: string, by: 'R' | 'J' | 'D') => {
    const card = highJump('1.80 1.85', jumpers, {
      stage: 'qualification',
      qualifying: { standard, fill },
      admitted: [{ bib, after: null, by }],
    });
    return countVertical(card).results.map((row) => `${row.bib}${row.qualified ?? ''}`);
  };

  it('takes all with the standard, fills up with equals, and takes whom the referee admits', () => {
    expect(qualified(185, 3, 'E', 'R')).toEqual(['AQ', 'FQ', 'Bq', 'Cq', 'D', 'EqR']);
    expect(qualified(185, 0, 'D', 'J')).toEqual(['AQ', 'FQ', 'B', 'C', 'DqJ', 'E']);
    expect(qualified(185, 1, 'B', 'D')).toEqual(['AQ', 'FQ', 'BqD', 'C', 'D', 'E']);
    expect(qualified(186, 12, 'A', 'R')).toEqual(['Aq', 'Fq', 'Bq', 'Cq', 'Dq', 'E']);
  });
});

it('feet and inches stay what they are', () => {
  const card = highJump('5-10.00 6-00.00', { A: 'O O', B: 'O XXX' }, { unit: 'qin' });
  expect(resultOf(card)).toEqual(['1 A 6-00.00 first', '2 B 5-10.00 height']);
});
