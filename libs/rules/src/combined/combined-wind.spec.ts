import { combinedWindOf, combinedWindRule, windEventsOf } from './combined-wind.js';
import { COMBINED_TABLES, THROWS_PENTATHLON } from './combined-tables.js';

const NEW = combinedWindRule('2024-06-01').value;
const OLD = combinedWindRule('2009-12-31').value;

describe('the wind of a combined events competition', () => {
  // +1.4, +2.0, +2.4 counted (a post on athleticsweekly.com/forums); the other mean is constructed.
  it.each([
    [[14, 20, 24], true],
    [[20, 20, 20], true],
    [[20, 20, 21], false],
    // The sign counts: against the wind in one event allows more in another.
    [[-30, 40, 50], true],
  ])('%j tenths on average may count: %s', (winds, legal) => {
    expect(combinedWindOf(winds, NEW)).toMatchObject({ legal, because: 'mean' });
  });

  it('is a mean without rounding', () => {
    const { meanTenths } = combinedWindOf([14, 20, 24], NEW);
    expect([meanTenths?.numerator, meanTenths?.denominator]).toEqual([58n, 3n]);
  });

  it('had, before the book of 2010, to be at most +4.0 in each event too', () => {
    expect(combinedWindOf([-10, 5, 41], OLD)).toMatchObject({ legal: false, because: 'each' });
    expect(combinedWindOf([-10, 5, 41], NEW)).toMatchObject({ legal: true, because: 'mean' });
    expect(combinedWindOf([0, 0, 40], OLD)).toMatchObject({ legal: true, because: 'mean' });
  });

  it('is not known where one wind is not, unless another decides', () => {
    expect(combinedWindOf([5, 'NWI', 5], NEW)).toEqual({
      legal: null,
      meanTenths: null,
      because: 'not known',
    });
    expect(combinedWindOf([5, 'pending', 41], OLD)).toMatchObject({ legal: false, because: 'each' });
  });

  it('leaves out an event without a mark, and is nothing without any', () => {
    expect(combinedWindOf([null, 20, 20], NEW)).toMatchObject({ legal: true, because: 'mean' });
    expect(combinedWindOf([], NEW)).toEqual({ legal: true, meanTenths: null, because: 'no wind' });
  });

  it('is measured in three events of decathlon and heptathlon, in none indoors', () => {
    expect(windEventsOf(COMBINED_TABLES.decathlon)).toEqual(['100m', 'long-jump', '110mh']);
    expect(windEventsOf(COMBINED_TABLES.heptathlon)).toEqual(['100mh', '200m', 'long-jump']);
    expect(windEventsOf(COMBINED_TABLES['pentathlon-indoor'])).toEqual([]);
    expect(windEventsOf(THROWS_PENTATHLON.W)).toEqual([]);
  });
});
