import { ALWAYS } from '../categories/validity.js';
import type { RuleSetCode } from '../codes.js';
import { citation } from '../rule-sets/citing.js';
import { implementRules, type ImplementRule, type Masses } from './implement-rule.js';

const FROM_80 = ['80', '85', '90', '95', '100'];
const NO_LARGER_SIZE =
  'A lighter shot may be allowed the size of a heavier one; that is the referee’s to know.';

type Row = readonly ['M' | 'W', readonly string[], Masses];

const ROWS: readonly Row[] = [
  ['M', ['35', '40', '45'], { shot: 7260, discus: 2000, hammer: 7260, javelin: 800, weight: 15_880 }],
  ['M', ['50', '55'], { shot: 6000, discus: 1500, hammer: 6000, javelin: 700, weight: 11_340 }],
  ['M', ['60', '65'], { shot: 5000, discus: 1000, hammer: 5000, javelin: 600, weight: 9080 }],
  ['M', ['70', '75'], { shot: 4000, discus: 1000, hammer: 4000, javelin: 500, weight: 7260 }],
  ['M', FROM_80, { shot: 3000, discus: 1000, hammer: 3000, javelin: 400, weight: 5450 }],
  ['W', ['35', '40', '45'], { shot: 4000, discus: 1000, hammer: 4000, javelin: 600, weight: 9080 }],
  ['W', ['50', '55'], { shot: 3000, discus: 1000, hammer: 3000, javelin: 500, weight: 7260 }],
  ['W', ['60', '65', '70'], { shot: 3000, discus: 1000, hammer: 3000, weight: 5450 }],
  ['W', ['75', ...FROM_80], { shot: 2000, discus: 750, hammer: 2000, javelin: 400, weight: 4000 }],
];

/** The javelin of women from 60 to 74 was 400 g before 2014; the older marks are closed. */
const WOMEN_60: readonly string[] = ['60', '65', '70'];

/** Masters: the same under WMA and USATF. */
export const MASTERS_IMPLEMENTS: readonly ImplementRule[] = [
  ...mastersUnder('WMA'),
  ...mastersUnder('USATF'),
];

function mastersUnder(rules: RuleSetCode): ImplementRule[] {
  const cite = citation(`${rules}, implements of masters`, 'read in part', NO_LARGER_SIZE);
  return [
    ...implementRules({ rules, valid: ALWAYS, cite }, ROWS),
    ...implementRules({ rules, valid: { from: null, until: '2013-12-31' }, cite }, [
      ['W', WOMEN_60, { javelin: 400 }],
    ]),
    ...implementRules({ rules, valid: { from: '2014-01-01', until: null }, cite }, [
      ['W', WOMEN_60, { javelin: 500 }],
    ]),
  ];
}
