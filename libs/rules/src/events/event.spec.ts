import { DISTANCE_EVENT_CODES, type EventCode, VERTICAL_EVENT_CODES } from '../codes.js';
import { formatMark } from '../quantities/mark.js';
import { eventOf, imperialOf, isFarOutside } from './event.js';

const EVENTS: readonly EventCode[] = [...DISTANCE_EVENT_CODES, ...VERTICAL_EVENT_CODES];

describe('an event', () => {
  it.each(EVENTS)('%s answers to its own code', (code) => {
    expect(eventOf(code).code).toBe(code);
  });

  // World Athletics TR29: the wind is read for the horizontal jumps, outdoors.
  it('has a wind only as a horizontal jump outdoors', () => {
    expect(EVENTS.filter((code) => eventOf(code).hasWind(false))).toEqual(['long-jump', 'triple-jump']);
    expect(EVENTS.filter((code) => eventOf(code).hasWind(true))).toEqual([]);
  });

  it('has an implement only as a throw', () => {
    const withImplement = EVENTS.filter((code) => eventOf(code).hasImplement);
    expect(withImplement).toEqual(['discus', 'shot', 'hammer', 'javelin', 'weight']);
  });

  // 63.00 as the US federation printed it among the standards for the 2013 World Youth Championships; the same
  // metric mark in another event would keep its quarter inches.
  it('is listed in whole inches as a long throw and in quarter inches otherwise', () => {
    expect(formatMark(imperialOf('hammer', 6300), 'qin')).toBe('206-08.00');
    expect(formatMark(imperialOf('shot', 6300), 'qin')).toBe('206-08.50');
  });

  it('is listed with the lesser lift as a vertical jump', () => {
    // 2.08 m: (208 + 0.2) / 2.54 = 81.97 inches, (208 + 0.499) / 2.54 = 82.09.
    expect(formatMark(imperialOf('high-jump', 208), 'qin')).toBe('6-09.75');
    expect(formatMark(imperialOf('long-jump', 208), 'qin')).toBe('6-10.00');
  });

  // World records (World Athletics, list of world records, as of 2025), in centimetres.
  it.each([
    ['shot', 2356],
    ['hammer', 8674],
    ['javelin', 9848],
    ['long-jump', 895],
    ['triple-jump', 1829],
    ['high-jump', 245],
    ['pole-vault', 630],
  ] as const)('does not call the world record in the %s far outside', (code, cm) => {
    expect(isFarOutside(code, cm, 'cm')).toBe(false);
  });

  it('calls a slipped decimal point far outside', () => {
    expect(isFarOutside('shot', 142, 'cm')).toBe(false);
    expect(isFarOutside('shot', 14_200, 'cm')).toBe(true);
    expect(isFarOutside('discus', 52, 'cm')).toBe(true);
    // 171-11 in quarter inches is no 82.52 m.
    expect(isFarOutside('discus', (171 * 12 + 11) * 4, 'qin')).toBe(false);
    expect(isFarOutside('discus', (271 * 12 + 11) * 4, 'qin')).toBe(true);
  });
});
