import { cited } from './citing.js';
import { followingWorldAthletics } from './following.js';
import type { RuleSet } from './rule-set.js';

const followed = followingWorldAthletics('WMA');

/** Masters: World Athletics' pattern, eight going on in each age group. */
export const WMA_2024: RuleSet = {
  ...followed,
  code: 'WMA',
  edition: '2024',
  name: 'World Masters Athletics Rules of Competition',
  plan: cited(
    followed.plan.value,
    'WMA, as WA TR25.6',
    'read in part',
    'Seen in the notes of an event of 2009.',
  ),
};
