import { parseValue } from 'graphql';
import { CalendarDate } from './calendar-date.js';
import { Instant } from './instant.js';
import { Json } from './json.js';
import { MarkText } from './mark.js';
import { Uuid } from './uuid.js';
import { WindText } from './wind-reading.js';

const hostile = [null, undefined, 1, true, [], {}, '', ' ', '\u0000', 'x'.repeat(10_000), NaN, new Date()];

describe('Scalars', () => {
  it.each([CalendarDate, Instant, MarkText, Uuid, WindText])(
    '%s refuses what is no text of its form',
    (scalar) => {
      for (const value of hostile) expect(() => scalar.parseValue(value)).toThrow(`${scalar.name} must be`);
    },
  );

  it.each([
    '2026-02-29',
    '2026-13-01',
    '2026-00-10',
    '2026-1-1',
    '1899-12-31',
    '2026-04-31',
    '2026-05-30T00:00:00Z',
  ])('Date refuses %s', (text) => {
    expect(() => CalendarDate.parseValue(text)).toThrow('Date must be');
  });

  it.each(['2024-02-29', '1900-01-01', '2099-12-31'])('Date takes %s as it is', (text) => {
    expect(CalendarDate.serialize(CalendarDate.parseValue(text))).toBe(text);
  });

  // RFC 3339 section 5.8, the examples without a leap second.
  it.each([
    ['1985-04-12T23:20:50.52Z', '1985-04-12T23:20:50.520Z'],
    ['1996-12-19T16:39:57-08:00', '1996-12-20T00:39:57.000Z'],
    ['1937-01-01T12:00:27.87+00:20', '1937-01-01T11:40:27.870Z'],
    ['2026-05-30t12:00:00z', '2026-05-30T12:00:00.000Z'],
  ])('DateTime reads %s', (text, utc) => {
    expect(Instant.serialize(Instant.parseValue(text))).toBe(utc);
  });

  it.each([
    '2026-05-30T12:00:00',
    '2026-05-30 12:00:00Z',
    '2026-02-30T12:00:00Z',
    '2026-05-30T25:00:00Z',
    '2026-05-30T12:00:00+25:00',
    '2026-05-30',
  ])('DateTime refuses %s', (text) => {
    expect(() => Instant.parseValue(text)).toThrow('DateTime must be');
  });

  it('Mark and WindReading keep the text that an official writes', () => {
    for (const mark of ['61.10', '0.01', '47-06.25']) expect(MarkText.parseValue(mark)).toBe(mark);
    for (const mark of ['61.1', '061.10', '0.00', '-1.00', '47-12.00', '6e1']) {
      expect(() => MarkText.parseValue(mark)).toThrow('Mark must be');
    }
    for (const wind of ['+1.3', '-0.4', '+0.0', 'NWI']) expect(WindText.parseValue(wind)).toBe(wind);
    for (const wind of ['1.3', '-0.0', '+1.30', 'nwi']) {
      expect(() => WindText.parseValue(wind)).toThrow('WindReading must be');
    }
  });

  it('UUID is written in lower case', () => {
    expect(Uuid.parseValue('01997F00-0000-7000-8000-0000000000AA')).toBe(
      '01997f00-0000-7000-8000-0000000000aa',
    );
  });

  it('JSON literals are the values that they write, odd keys included', () => {
    const read = (text: string): unknown => Json.parseLiteral(parseValue(text), { v: [1] });
    expect(read('{ a: [1, 2.5, "x", true, null], v: $v }')).toEqual({ a: [1, 2.5, 'x', true, null], v: [1] });
    const odd = read('{ __proto__: { polluted: true } }') as object;
    expect(Object.keys(odd)).toEqual(['__proto__']);
    expect(Object.getPrototypeOf(odd)).toBe(Object.prototype);
    expect(() => read('[WORD]')).toThrow('bare words');
  });
});
