import { citation } from '../rule-sets/citing.js';
import type { AgeBand, CategoryDefinition } from './category-definition.js';
import { NATIONAL_DEFINITIONS } from './national-definitions.js';
import { ALWAYS } from './validity.js';

const FIRST_MASTERS_AGE = 35;
const LAST_MASTERS_AGE = 100;

/** Five years each from 35 on; the last one has no end. */
const MASTERS: readonly AgeBand[] = mastersBands();

function mastersBands(): AgeBand[] {
  const bands: AgeBand[] = [];
  for (let age = FIRST_MASTERS_AGE; age <= LAST_MASTERS_AGE; age += 5) {
    bands.push({ code: String(age), minAge: age, maxAge: age < LAST_MASTERS_AGE ? age + 4 : null });
  }
  return bands;
}

const BY_YEAR_OF_BIRTH: readonly AgeBand[] = [
  { code: 'U18', minAge: 16, maxAge: 17 },
  { code: 'U20', minAge: 18, maxAge: 19 },
  { code: 'senior', minAge: 20, maxAge: null },
];

const AT_SCHOOL = 'The associations limit the age; that is checked at enrolment and not here.';

/** The definitions that come with the library. A club or meet adds its own. */
export const CATEGORY_DEFINITIONS: readonly CategoryDefinition[] = [
  {
    scheme: 'WA',
    rules: 'WA',
    valid: ALWAYS,
    ageOn: { kind: 'end of year' },
    bands: BY_YEAR_OF_BIRTH,
    cite: citation('WA TR3', 'read in part', 'U18 was read in regulations of 2016, the rest is from memory.'),
  },
  {
    scheme: 'WMA',
    rules: 'WMA',
    valid: ALWAYS,
    ageOn: { kind: 'day of competition' },
    bands: MASTERS,
    cite: citation(
      'WA TR3, WMA age groups',
      'memory',
      'A meet of several days may name one of them for all.',
    ),
  },
  {
    scheme: 'USATF open',
    rules: 'USATF',
    valid: ALWAYS,
    ageOn: { kind: 'end of year' },
    bands: BY_YEAR_OF_BIRTH,
    cite: citation('USATF, as WA TR3', 'memory'),
  },
  {
    scheme: 'USATF masters',
    rules: 'USATF',
    valid: ALWAYS,
    ageOn: { kind: 'day of competition' },
    bands: MASTERS,
    cite: citation('USATF, masters divisions', 'memory'),
  },
  {
    scheme: 'USATF youth',
    rules: 'USATF',
    valid: ALWAYS,
    ageOn: { kind: 'end of year' },
    bands: [
      { code: '8-under', minAge: null, maxAge: 8 },
      { code: '9-10', minAge: 9, maxAge: 10 },
      { code: '11-12', minAge: 11, maxAge: 12 },
      { code: '13-14', minAge: 13, maxAge: 14 },
      { code: '15-16', minAge: 15, maxAge: 16 },
      { code: '17-18', minAge: 17, maxAge: 18 },
    ],
    cite: citation(
      'USATF Rule 300, youth divisions',
      'read in part',
      'The day on which the age counts is from memory.',
    ),
  },
  {
    scheme: 'NFHS',
    rules: 'NFHS',
    valid: ALWAYS,
    ageOn: { kind: 'no age' },
    bands: [{ code: 'high-school', minAge: null, maxAge: null }],
    cite: citation('NFHS, eligibility', 'constructed', AT_SCHOOL),
  },
  {
    scheme: 'NCAA',
    rules: 'NCAA',
    valid: ALWAYS,
    ageOn: { kind: 'no age' },
    bands: [{ code: 'college', minAge: null, maxAge: null }],
    cite: citation('NCAA, eligibility', 'constructed', AT_SCHOOL),
  },
  ...NATIONAL_DEFINITIONS,
];
