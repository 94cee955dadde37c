import { citation } from '../rule-sets/citing.js';
import type { AgeDay, CategoryDefinition } from './category-definition.js';

const NEXT_AUGUST: AgeDay = { kind: 'next', month: 8, day: 31 };

/** England: examples of categories that belong to no rule set and change on a day. */
export const NATIONAL_DEFINITIONS: readonly CategoryDefinition[] = [
  {
    scheme: 'England clubs',
    rules: null,
    valid: { from: null, until: '2026-03-31' },
    ageOn: NEXT_AUGUST,
    bands: [
      { code: 'U13', minAge: 11, maxAge: 12 },
      { code: 'U15', minAge: 13, maxAge: 14 },
      { code: 'U17', minAge: 15, maxAge: 16 },
      { code: 'U20', minAge: 17, maxAge: 19, maxAgeOn: { kind: 'end of year' } },
      { code: 'senior', minAge: 17, maxAge: null },
    ],
    cite: citation('UKA rules, age groups', 'memory'),
  },
  {
    scheme: 'England clubs',
    rules: null,
    valid: { from: '2026-04-01', until: null },
    ageOn: { kind: 'end of year' },
    bands: [
      { code: 'U12', minAge: 10, maxAge: 11 },
      { code: 'U14', minAge: 12, maxAge: 13 },
      { code: 'U16', minAge: 14, maxAge: 15 },
      { code: 'U18', minAge: 16, maxAge: 17 },
      { code: 'U20', minAge: 18, maxAge: 19 },
      { code: 'senior', minAge: 20, maxAge: null },
    ],
    cite: citation(
      'England, age groups from 1 April 2026',
      'read in part',
      'The groups and the day of the change were read; on which day the age counts was not, and is to be confirmed.',
    ),
  },
  {
    scheme: 'English schools',
    rules: null,
    valid: { from: null, until: '2026-03-31' },
    ageOn: NEXT_AUGUST,
    bands: [
      { code: 'junior', minAge: 12, maxAge: 14 },
      { code: 'intermediate', minAge: 15, maxAge: 16 },
      { code: 'senior', minAge: 17, maxAge: 18 },
    ],
    cite: citation(
      'English schools, age groups',
      'memory',
      'An older table; the implements were read, the ages not.',
    ),
  },
];
