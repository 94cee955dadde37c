import { ordinal, wordsOf } from './decision.js';

describe('the words of a decision', () => {
  it.each([
    ['first', 'first'],
    ['equal', 'equal'],
    [1, 'best'],
    [2, '2nd best'],
    [3, '3rd best'],
    [4, '4th best'],
    [6, '6th best'],
    [12, '12th best'],
  ] as const)('%s is "%s"', (decision, words) => {
    expect(wordsOf(decision)).toBe(words);
  });

  it.each([
    [1, '1st'],
    [2, '2nd'],
    [3, '3rd'],
    [4, '4th'],
    [10, '10th'],
    [11, '11th'],
    [12, '12th'],
    [13, '13th'],
    [21, '21st'],
    [22, '22nd'],
    [101, '101st'],
    [111, '111th'],
  ])('writes %i as %s', (n, text) => {
    expect(ordinal(n)).toBe(text);
  });
});
