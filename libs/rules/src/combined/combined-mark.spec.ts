import { handTimingAddition, parseCombinedMark, type Timing } from './combined-mark.js';
import { combinedPoints } from './count-combined.js';
import type { CombinedEventCode } from './scoring-table.js';

type Check = [text: string, event: CombinedEventCode, timing: Timing, hundredths: number | null];

describe('a mark of combined events', () => {
  it.each<Check>([
    ['10.39', '100m', 'electronic', 1039],
    ['9.58', '100m', 'electronic', 958],
    ['59.99', '400m', 'electronic', 5999],
    ['1:00.00', '400m', 'electronic', 6000],
    ['4:36.40', '1500m', 'electronic', 27_640],
    ['10:00.01', '1500m', 'electronic', 60_001],
    ['10.9', '100m', 'hand', 1090],
    ['10.90', '100m', 'hand', 1090],
    ['4:36.4', '1500m', 'hand', 27_640],
    ['0.01', '100m', 'electronic', 1],
    ['7.76', 'long-jump', 'electronic', 776],
    ['101.20', 'javelin', 'hand', 10_120],
  ])('%s in %s (%s) is %i', (text, event, timing, hundredths) => {
    expect(parseCombinedMark(text, event, timing)).toBe(hundredths);
  });

  it.each<Check>([
    ['10.9', '100m', 'electronic', null],
    ['4:36.4', '1500m', 'electronic', null],
    ['60.00', '400m', 'electronic', null],
    ['0:59.00', '400m', 'electronic', null],
    ['4:60.00', '1500m', 'electronic', null],
    ['4:6.00', '1500m', 'electronic', null],
    ['04:36.40', '1500m', 'electronic', null],
    ['010.39', '100m', 'electronic', null],
    ['05.20', '100m', 'electronic', null],
    ['10', '100m', 'hand', null],
    ['10.', '100m', 'hand', null],
    ['10.394', '100m', 'hand', null],
    ['0.00', '100m', 'electronic', null],
    ['0.0', '100m', 'hand', null],
    ['1:00:00.00', '1500m', 'electronic', null],
    ['-9.58', '100m', 'electronic', null],
    ['10,39', '100m', 'electronic', null],
    ['10.39 ', '100m', 'electronic', null],
    ['', '100m', 'hand', null],
    ['7.7', 'long-jump', 'hand', null],
    ['25-06.00', 'long-jump', 'electronic', null],
    ['0.00', 'shot', 'electronic', null],
    ['1:10.00', 'javelin', 'electronic', null],
  ])('%s in %s (%s) is malformed', (text, event, timing) => {
    expect(parseCombinedMark(text, event, timing)).toBeNull();
  });
});

describe('a time by hand', () => {
  // From memory; a qualifying list of the US federation of 2013 pairs 11.15 with 10.9 and 49.95 with 49.8, which with
  // its own rounding is the same.
  it.each<[CombinedEventCode, number]>([
    ['60m', 24],
    ['100m', 24],
    ['200m', 24],
    ['60mh', 24],
    ['100mh', 24],
    ['110mh', 24],
    ['400m', 14],
    ['800m', 0],
    ['1000m', 0],
    ['1500m', 0],
    ['shot', 0],
  ])('over %s is counted with %i hundredths more', (event, hundredths) => {
    expect(handTimingAddition(event)).toBe(hundredths);
    expect(combinedPoints('W', event, 2000, 'hand')).toBe(combinedPoints('W', event, 2000 + hundredths));
  });
});
