import { formatRaceTime, parseRaceTime } from './race-time.js';

describe('the time of a race', () => {
  it.each([
    ['10.39', 1039, 'electronic'],
    ['9.4', 940, 'hand'],
    ['0.01', 1, 'electronic'],
    ['59.99', 5999, 'electronic'],
    ['1:00.00', 6000, 'electronic'],
    ['4:36.4', 27640, 'hand'],
    ['99:59.99', 599_999, 'electronic'],
  ])('%s is read and written', (text, hundredths, timing) => {
    expect(parseRaceTime(text)).toEqual({ hundredths, timing });
  });

  it.each(['', '10', '60.00', '0:59.00', '1:60.00', '10.395', '10,39', '0.00', '-1.00', '1e3', '100:00.00'])(
    '%j is none',
    (text) => {
      expect(parseRaceTime(text)).toBeNull();
    },
  );

  it('is read as it was written, every one of them', () => {
    for (let hundredths = 1; hundredths < 600_000; hundredths += 1) {
      const time = { hundredths, timing: 'electronic' } as const;
      const read = parseRaceTime(formatRaceTime(time));
      if (read?.hundredths !== hundredths || read.timing !== 'electronic') expect(read).toEqual(time);
    }
    for (let hundredths = 10; hundredths < 600_000; hundredths += 10) {
      const time = { hundredths, timing: 'hand' } as const;
      const read = parseRaceTime(formatRaceTime(time));
      if (read?.hundredths !== hundredths || read.timing !== 'hand') expect(read).toEqual(time);
    }
  });
});
