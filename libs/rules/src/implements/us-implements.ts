import { ALWAYS } from '../categories/validity.js';
import { citation } from '../rule-sets/citing.js';
import { implementRules, type ImplementRule } from './implement-rule.js';

/** Pounds in whole grams, down, so that a true one passes; a pound is 453.59237 g. */
const POUNDS_6 = 2721;
const POUNDS_12 = 5443;
/** 20, 25 and 35 lb as the books print them in kilograms. */
const WEIGHT_20 = 9080;
const WEIGHT_25 = 11_340;
const WEIGHT_35 = 15_880;

const OPEN_WOMEN = { shot: 4000, discus: 1000, hammer: 4000, javelin: 600, weight: WEIGHT_20 };
const OPEN_MEN = { shot: 7260, discus: 2000, hammer: 7260, javelin: 800, weight: WEIGHT_35 };
const SCHOOL_WOMEN = { shot: 4000, discus: 1000, hammer: 4000, javelin: 600 };
const SCHOOL_MEN = { shot: POUNDS_12, discus: 1600, hammer: POUNDS_12, javelin: 800 };

/** US schools, colleges, open meets and youth. */
export const US_IMPLEMENTS: readonly ImplementRule[] = [
  ...implementRules(
    { rules: 'NFHS', valid: ALWAYS, cite: citation('NFHS Rule 6, implements', 'read in part') },
    [
      ['M', ['high-school'], { ...SCHOOL_MEN, weight: WEIGHT_25 }],
      ['W', ['high-school'], { ...SCHOOL_WOMEN, weight: WEIGHT_20 }],
    ],
  ),
  ...implementRules(
    { rules: 'NCAA', valid: ALWAYS, cite: citation('NCAA Rule 2, implements', 'read in part') },
    [
      ['M', ['college'], OPEN_MEN],
      ['W', ['college'], OPEN_WOMEN],
    ],
  ),
  ...implementRules(
    {
      rules: 'USATF',
      valid: ALWAYS,
      cite: citation(
        'USATF Rule 187 and others, implements',
        'read in part',
        'U20 and U18 as World Athletics.',
      ),
    },
    [
      ['M', ['senior'], OPEN_MEN],
      ['M', ['U20'], { shot: 6000, discus: 1750, hammer: 6000, javelin: 800 }],
      ['M', ['U18'], { shot: 5000, discus: 1500, hammer: 5000, javelin: 700 }],
      ['W', ['senior'], OPEN_WOMEN],
      ['W', ['U20'], SCHOOL_WOMEN],
      ['W', ['U18'], { shot: 3000, discus: 1000, hammer: 3000, javelin: 500 }],
    ],
  ),
  ...implementRules(
    {
      rules: 'USATF',
      valid: ALWAYS,
      cite: citation('USATF Rule 302, youth', 'read in part', 'A table of 2011; it is edited every year.'),
    },
    [
      ['M', ['8-under'], { shot: 2000, javelin: 300 }],
      ['W', ['8-under'], { shot: 2000, javelin: 300 }],
      ['M', ['9-10'], { shot: POUNDS_6, javelin: 300 }],
      ['W', ['9-10'], { shot: POUNDS_6, javelin: 300 }],
      ['M', ['11-12'], { shot: POUNDS_6, discus: 1000, javelin: 300 }],
      ['W', ['11-12'], { shot: POUNDS_6, discus: 1000, javelin: 300 }],
      ['M', ['13-14'], { shot: 4000, discus: 1000, javelin: 600 }],
      ['W', ['13-14'], { shot: POUNDS_6, discus: 1000, javelin: 600 }],
      ['M', ['15-16', '17-18'], SCHOOL_MEN],
      ['W', ['15-16', '17-18'], SCHOOL_WOMEN],
    ],
  ),
];
