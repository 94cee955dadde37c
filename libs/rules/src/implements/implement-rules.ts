import { ALWAYS } from '../categories/validity.js';
import { citation } from '../rule-sets/citing.js';
import { implementRules, type ImplementRule } from './implement-rule.js';
import { MASTERS_IMPLEMENTS } from './masters-implements.js';
import { US_IMPLEMENTS } from './us-implements.js';

const UNTIL_2011 = 'The change is dated "about 2012".';

const WA_IMPLEMENTS: readonly ImplementRule[] = [
  ...implementRules(
    { rules: 'WA', valid: ALWAYS, cite: citation('WA TR32, table of implements', 'read in part') },
    [
      ['M', ['senior'], { shot: 7260, discus: 2000, hammer: 7260, javelin: 800 }],
      ['M', ['U20'], { shot: 6000, discus: 1750, hammer: 6000, javelin: 800 }],
      ['M', ['U18'], { shot: 5000, discus: 1500, hammer: 5000, javelin: 700 }],
      ['W', ['senior', 'U20'], { shot: 4000, discus: 1000, hammer: 4000, javelin: 600 }],
      ['W', ['U18'], { discus: 1000 }],
    ],
  ),
  ...implementRules(
    {
      rules: 'WA',
      valid: { from: '2012-01-01', until: null },
      cite: citation('WA TR32, table of implements', 'read in part', UNTIL_2011),
    },
    [['W', ['U18'], { shot: 3000, hammer: 3000, javelin: 500 }]],
  ),
  ...implementRules(
    {
      rules: 'WA',
      valid: { from: null, until: '2011-12-31' },
      cite: citation('IAAF, table of implements', 'read in part', UNTIL_2011),
    },
    [['W', ['U18'], { shot: 4000, hammer: 4000, javelin: 600 }]],
  ),
];

/** Which implement belongs to which category, as far as it was found. */
export const IMPLEMENT_RULES: readonly ImplementRule[] = [
  ...WA_IMPLEMENTS,
  ...US_IMPLEMENTS,
  ...MASTERS_IMPLEMENTS,
];
