import { verticalReasonsOf, verticalSentenceOf, type VerticalCard } from '#rules';
import { highJump, jumper, jumpOff } from './support/vertical-card.js';

function sentences(card: VerticalCard): string[] {
  return verticalReasonsOf(card).map((reason) => `${reason.bib} ${verticalSentenceOf(reason)}`);
}

describe('why a place in a vertical jump', () => {
  // The example table of WA TR26.8 and 26.9, from memory.
  const worked = highJump(
    '1.75 1.80 1.84 1.88 1.91 1.94 1.97',
    { A: 'O XO O XO X- XX', B: '- XO - XO - - XXX', C: '- O XO XO - XXX', D: '- XO XO XO XXX' },
    { jumpOff: jumpOff('1.91 AX BX CX', '1.89 AO BO CX', '1.91 AX BO') },
  );

  it('is told with the numbers', () => {
    expect(sentences(worked)).toEqual([
      'B 1st: cleared 1.88; best in the jump-off; cleared 1.91 in the jump-off',
      'A 2nd: equal height 1.88, 1 failure at it and 2 up to it; decided in the jump-off; cleared 1.89 in the jump-off',
      'C 3rd: equal height 1.88, 1 failure at it and 2 up to it; decided in the jump-off',
      'D 4th: equal height 1.88 and 1 failure at it; 3 failures up to it against 2',
    ]);
  });

  it('names whom it was compared with and the rule', () => {
    expect(
      verticalReasonsOf(worked).map((reason) => 'rule' in reason && [reason.comparedWith, reason.rule.rule]),
    ).toEqual([
      [null, 'WA TR26.8'],
      ['B', 'WA TR26.9'],
      ['A', 'WA TR26.9'],
      ['C', 'WA TR26.8'],
    ]);
  });

  it('is told of every step and of who has none', () => {
    const card = highJump(
      '1.50 1.55',
      {},
      {
        competitors: [
          jumper('1', 'O XO'),
          jumper('2', 'O O'),
          jumper('3', 'XO -'),
          jumper('4', '- XO'),
          jumper('5', 'XXX'),
          jumper('6', 'O -', { status: 'DQ' }),
          jumper('7', '', { status: 'DNS' }),
          jumper('8', 'O -', { guest: true }),
          jumper('9', '-', { guest: true }),
        ],
      },
    );
    expect(sentences(card)).toEqual([
      '2 1st: cleared 1.55',
      '1 2nd, shared: equal height 1.55; 1 failure at it against 0',
      '4 2nd, shared: equal height 1.55, 1 failure at it and 1 up to it',
      '3 4th: cleared 1.50 against 1.55',
      '5 No place: no height cleared',
      '6 No place: disqualified',
      '7 No place: did not start',
      '8 No place: guest, cleared 1.50',
      '9 No place: guest',
    ]);
  });

  it('tells a shared first place with and without a jump-off', () => {
    const level = { A: 'O XXX', B: 'O XXX' };
    expect(sentences(highJump('2.00 2.03', level))).toEqual([
      'A 1st, shared: cleared 2.00',
      'B 1st, shared: equal height 2.00, 0 failures at it and 0 up to it',
    ]);
    expect(sentences(highJump('2.00 2.03', level, { jumpOff: jumpOff('2.03 AX BX') }))).toEqual([
      'A 1st, shared: cleared 2.00; level in the jump-off',
      'B 1st, shared: equal height 2.00, 0 failures at it and 0 up to it; level in the jump-off',
    ]);
  });
});
