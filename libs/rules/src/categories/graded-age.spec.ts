import type { AgeFactorTable } from './age-graded.js';
import type { CompetitionCategory } from './competition-category.js';
import { gradedAge, isByYears } from './graded-age.js';

/** Constructed factors: no published table comes with the library. */
const BY_CATEGORY: AgeFactorTable = {
  source: 'constructed for this test',
  factors: ['35', '40', '50'].map((age) => ({ sex: 'M', age, factor: '1.1' })),
};
const BY_YEARS: AgeFactorTable = {
  source: 'constructed for this test',
  factors: ['50', '51', '52'].map((age) => ({ sex: 'W', age, factor: '1.1' })),
};
const OPEN: CompetitionCategory = { rules: 'WA', scheme: null, sex: null, age: null, onDate: '2026-06-13' };
const WMA: CompetitionCategory = { ...OPEN, rules: 'WMA' };

describe('the line of an age-factor table', () => {
  it('is that of the five-year category on the day, also under open rules', () => {
    const of = (birthDate: string, category = OPEN) =>
      gradedAge({ birthDate, sex: 'M' }, category, BY_CATEGORY);
    expect(of('1976-06-13')).toEqual({ sex: 'M', age: '50' });
    expect(of('1976-06-14')).toBeNull();
    expect(of('1981-06-14', WMA)).toEqual({ sex: 'M', age: '40' });
    expect(of('2010-01-01')).toBeNull();
  });

  it('is that of the age in years where the table goes by years', () => {
    expect([isByYears(BY_CATEGORY), isByYears(BY_YEARS)]).toEqual([false, true]);
    const of = (birthDate: string) => gradedAge({ birthDate, sex: 'W' }, OPEN, BY_YEARS)?.age;
    expect([of('1974-06-13'), of('1974-06-14'), of('1973-06-13')]).toEqual(['52', '51', undefined]);
  });

  it('follows the competition where the athlete’s age or sex is not known', () => {
    const unknown = { birthDate: null, sex: null };
    expect(gradedAge(unknown, { ...WMA, sex: 'M', age: 'M50' }, BY_CATEGORY)).toEqual({
      sex: 'M',
      age: '50',
    });
    expect(gradedAge(unknown, { ...WMA, sex: 'M', age: '50+' }, BY_CATEGORY)).toBeNull();
    expect(gradedAge(unknown, { ...WMA, sex: 'W', age: '50' }, BY_YEARS)).toBeNull();
    expect(gradedAge({ birthDate: '1976-06-13', sex: 'X' }, OPEN, BY_CATEGORY)).toBeNull();
  });
});
