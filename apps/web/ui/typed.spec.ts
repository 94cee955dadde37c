import { readTyped, readTypedWind, shownWhileTyping } from './typed.js';

describe('what is typed as a mark', () => {
  it.each([
    ['4862', 4862],
    ['48.62', 4862],
    ['48,62', 4862],
    [' 705 ', 705],
    ['7.05', 705],
  ])('reads %s in metres', (text, value) => {
    expect(readTyped(text, 'cm')).toEqual({ kind: 'mark', value });
  });

  it.each([
    ['47-6', 2280],
    ['47-06.25', 2281],
    ['47-6 1/4', 2281],
    ['47-6.5', 2282],
    ['47-06.75', 2283],
  ])('reads %s in feet and inches', (text, value) => {
    expect(readTyped(text, 'qin')).toEqual({ kind: 'mark', value });
  });

  it.each([
    ['x', 'foul'],
    ['-', 'pass'],
    ['r', 'retired'],
    ['o', 'unmeasured'],
  ])('reads %s as on a field card', (text, outcome) => {
    expect(readTyped(text, 'cm')).toEqual({ kind: 'outcome', outcome });
  });

  it.each(['48.6', '48.623', '0', '4-8', 'XX', '123456'])('does not guess at %s', (text) => {
    expect(readTyped(text, 'cm').kind).toBe('unreadable');
  });

  it.each(['47', '47-12', '47-6.3'])('does not guess at %s in feet', (text) => {
    expect(readTyped(text, 'qin').kind).toBe('unreadable');
  });

  it('is shown with its decimal sign as soon as there are metres', () => {
    expect(['4', '48', '486', '4862', '48.62', 'x'].map((text) => shownWhileTyping(text, 'cm', ','))).toEqual(
      ['4', '48', '4,86', '48,62', '48.62', 'x'],
    );
  });
});

describe('what is typed as a wind', () => {
  it.each([
    ['13', 13],
    ['+1.3', 13],
    ['1,3', 13],
    ['-4', -4],
    ['−0.4', -4],
    ['-0', 0],
    ['105', 105],
  ])('reads %s', (text, tenths) => {
    expect(readTypedWind(text)).toBe(tenths);
  });

  it.each(['', '+', '1.25', 'NWI'])('does not guess at “%s”', (text) => {
    expect(readTypedWind(text)).toBeNull();
  });
});
