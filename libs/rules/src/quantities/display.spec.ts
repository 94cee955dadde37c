import { displayMark } from './display.js';

describe('a mark for people', () => {
  // Common practice, no published source.
  it.each([
    [6123, 'cm', '61.23'],
    [(52 * 12 + 6) * 4 + 1, 'qin', '52-6 1/4'],
    [(52 * 12 + 10) * 4 + 2, 'qin', '52-10 1/2'],
    [6 * 12 * 4 + 3, 'qin', '6-0 3/4'],
    [(175 * 12 + 6) * 4, 'qin', '175-6'],
  ] as const)('%d %s is %s', (value, unit, text) => {
    expect(displayMark(value, unit)).toBe(text);
  });
});
