import type { Validity } from '../categories/validity.js';
import { citation } from '../rule-sets/citing.js';
import { implementRules, type ImplementRule } from './implement-rule.js';

const UNTIL_APRIL_2026: Validity = { from: null, until: '2026-03-31' };

/**
 * English clubs, before their categories changed on 1 April 2026. For the categories since then no implements were
 * found: none are given. U20 and seniors throw as under World Athletics.
 */
export const ENGLAND_CLUB_IMPLEMENTS: readonly ImplementRule[] = implementRules(
  { rules: null, valid: UNTIL_APRIL_2026, cite: citation('UKA rules, implements by age group', 'memory') },
  [
    ['M', ['U13'], { shot: 3000, discus: 1000, javelin: 400 }],
    ['M', ['U15'], { shot: 4000, discus: 1250, javelin: 600 }],
    ['M', ['U17'], { shot: 5000, discus: 1500, javelin: 700 }],
    ['M', ['U20'], { shot: 6000, discus: 1750, hammer: 6000, javelin: 800 }],
    ['M', ['senior'], { shot: 7260, discus: 2000, hammer: 7260, javelin: 800 }],
    ['W', ['U13'], { shot: 2720, discus: 750, javelin: 400 }],
    ['W', ['U15', 'U17'], { shot: 3000, discus: 1000, javelin: 500 }],
    ['W', ['U20', 'senior'], { shot: 4000, discus: 1000, hammer: 4000, javelin: 600 }],
  ],
);

/** English schools, an older table. */
export const ENGLISH_SCHOOLS_IMPLEMENTS: readonly ImplementRule[] = implementRules(
  {
    rules: null,
    valid: UNTIL_APRIL_2026,
    cite: citation('English schools, rules for track and field', 'read in part', 'An older table.'),
  },
  [
    ['M', ['junior'], { shot: 4000, discus: 1250, hammer: 4000, javelin: 600 }],
    ['M', ['intermediate'], { shot: 5000, discus: 1500, hammer: 5000, javelin: 700 }],
    ['M', ['senior'], { shot: 6000, discus: 1750, hammer: 6000, javelin: 800 }],
    ['W', ['junior'], { shot: 3250, discus: 1000, javelin: 600 }],
    ['W', ['intermediate', 'senior'], { shot: 4000, discus: 1000, javelin: 600 }],
  ],
);
