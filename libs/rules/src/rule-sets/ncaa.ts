import { citation, cited } from './citing.js';
import { eachEvent } from './each-event.js';
import { followingWorldAthletics } from './following.js';
import type { RuleSet } from './rule-set.js';
import { NINE_GO_ON, NO_LONGER_TIME_SEEN } from './school-and-college.js';

const WINNER_CHOOSES = citation('NCAA 6-5-2', 'read in part');
const followed = followingWorldAthletics('NCAA');

/** US colleges. */
export const NCAA_2025: RuleSet = {
  ...followed,
  code: 'NCAA',
  edition: '2025',
  name: 'NCAA Track and Field Rules',
  plan: cited(
    NINE_GO_ON,
    'NCAA 6-2-5',
    'read in part',
    'At most one more than the scoring places and never more than nine; a committee may break ties if it says so before.',
  ),
  timeAllowed: cited(
    { trialS: 60, consecutiveS: 60 },
    'NCAA Rule 6, time limits',
    'memory',
    NO_LONGER_TIME_SEEN,
  ),
  vertical: {
    'high-jump': { ...followed.vertical['high-jump'], winnerChooses: WINNER_CHOOSES },
    'pole-vault': { ...followed.vertical['pole-vault'], winnerChooses: WINNER_CHOOSES },
  },
  // A throw that touched the cage and landed in the sector counts (NCAA 6-9-2(i), read in part).
  fouls: eachEvent((event) => followed.fouls[event].filter((foul) => foul.value !== 'CAGE')),
  orderChange: cited(
    'not in the last round',
    'NCAA 6-1-7',
    'constructed',
    'Read in part: who does not take a turn in order forfeits it. Whether an earlier round may be changed was not seen.',
  ),
  ties: citation('NCAA Rule 6, ties', 'memory'),
  verticalTies: citation('NCAA Rule 6, ties in vertical jumps', 'read in part'),
};
