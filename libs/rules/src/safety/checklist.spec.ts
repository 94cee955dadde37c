import { DISTANCE_EVENT_CODES, VERTICAL_EVENT_CODES } from '../codes.js';
import { safetyChecklist } from './checklist.js';

/*
 * What belongs on a list: USATF guidance on safety at throwing events (read in part: sector, barriers, cage, circle,
 * warm-up under control, implements carried back, weather). For the jumps: common practice, no published source.
 */

const codesOf = (event: Parameters<typeof safetyChecklist>[0]) =>
  safetyChecklist(event).map(({ code }) => code);

describe('the checklist of an event', () => {
  it.each([...DISTANCE_EVENT_CODES, ...VERTICAL_EVENT_CODES])('of %s names each point once', (event) => {
    const codes = codesOf(event);
    expect(new Set(codes).size).toBe(codes.length);
    expect(codes).toEqual(expect.arrayContaining(['SURFACE', 'WARM_UP', 'WEATHER']));
  });

  it.each(['discus', 'hammer', 'weight', 'javelin', 'shot'] as const)(
    'of %s clears and closes the sector, and has implements carried back',
    (event) => {
      expect(codesOf(event)).toEqual(expect.arrayContaining(['SECTOR_CLEAR', 'SECTOR_CLOSED', 'RETRIEVAL']));
    },
  );

  it('asks for the cage where one throws out of a cage, and nowhere else', () => {
    const withCage = [...DISTANCE_EVENT_CODES, ...VERTICAL_EVENT_CODES].filter((event) =>
      codesOf(event).includes('CAGE_WHOLE'),
    );
    expect(withCage.sort()).toEqual(['discus', 'hammer', 'weight']);
  });

  it('asks for the box in the pole vault only', () => {
    expect(codesOf('pole-vault')).toContain('BOX');
    expect(codesOf('high-jump')).not.toContain('BOX');
  });
});
