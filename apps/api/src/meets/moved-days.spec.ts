import { daysBetween, movedDay, movedInstant } from './moved-days.js';

/* Clock changes of the IANA time zone database as Node has it. */
describe('days later, by the clock of the place', () => {
  it.each([
    ['within the summer', '2026-06-13T12:30:00Z', 364, 'Europe/London', '2027-06-12T12:30:00Z'],
    ['from summer to winter', '2026-10-10T12:30:00Z', 28, 'Europe/London', '2026-11-07T13:30:00Z'],
    ['from winter to summer', '2026-03-14T12:30:00Z', 28, 'America/New_York', '2026-04-11T12:30:00Z'],
    ['over the change in New York', '2026-02-14T17:30:00Z', 28, 'America/New_York', '2026-03-14T16:30:00Z'],
    ['back', '2026-11-07T13:30:00Z', -28, 'Europe/London', '2026-10-10T12:30:00Z'],
    ['where clocks are never changed', '2026-10-10T12:30:00Z', 28, 'Asia/Tokyo', '2026-11-07T12:30:00Z'],
    [
      'with half an hour of change',
      '2026-03-14T03:00:00Z',
      28,
      'Australia/Lord_Howe',
      '2026-04-11T03:30:00Z',
    ],
  ])('%s', (_how, at, days, timeZone, expected) => {
    expect(new Date(movedInstant(Date.parse(at), days, timeZone)).toISOString()).toBe(
      new Date(expected).toISOString(),
    );
  });

  it('counts days over a leap year', () => {
    expect(daysBetween('2027-06-12', '2028-06-10')).toBe(364);
    expect(movedDay('2028-02-28', 2)).toBe('2028-03-01');
  });
});
