import { citation } from './citing.js';
import { followingWorldAthletics } from './following.js';
import type { RuleSet } from './rule-set.js';

/** US open and masters meets: World Athletics' pattern, with eight going on. */
export const USATF_2025: RuleSet = {
  ...followingWorldAthletics('USATF'),
  code: 'USATF',
  edition: '2025',
  name: 'USATF Competition Rules',
  verticalTies: citation('USATF 181, ties', 'read in part'),
};
