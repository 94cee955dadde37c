import type { VerticalEventCode } from '../codes.js';
import { citation, cited } from './citing.js';
import { eachEvent } from './each-event.js';
import { followingWorldAthletics } from './following.js';
import type { Precision, RuleSet } from './rule-set.js';
import type { Step, VerticalRules } from './vertical-rules.js';
import { NINE_GO_ON, NO_LONGER_TIME_SEEN } from './school-and-college.js';

const LONG_THROWS: readonly string[] = ['discus', 'hammer', 'javelin'];
const followed = followingWorldAthletics('NFHS');

/** US high schools. Article numbers move from edition to edition and are text only. */
export const NFHS_2025: RuleSet = {
  ...followed,
  code: 'NFHS',
  edition: '2025',
  name: 'NFHS Track and Field Rules',
  plan: cited(
    NINE_GO_ON,
    'NFHS 6-2-17',
    'read in part',
    'One more than the scoring places; nine where eight score.',
  ),
  precision: eachEvent((event) =>
    cited(precision(event), 'NFHS 6-2-20 and Rule 6, measurement', 'read in part'),
  ),
  timeAllowed: cited({ trialS: 60, consecutiveS: 60 }, 'NFHS 6-2-2', 'read in part', NO_LONGER_TIME_SEEN),
  verticalTimeAllowed: {
    'high-jump': cited(
      { moreThanThreeS: 60, twoOrThreeS: 90, oneS: 180, consecutiveS: 120, firstTrialS: 60 },
      'NFHS 6-2-2',
      'memory',
    ),
    'pole-vault': cited(
      { moreThanThreeS: 60, twoOrThreeS: 180, oneS: 300, consecutiveS: 180, firstTrialS: 60 },
      'NFHS 6-2-2',
      'read in part',
    ),
  },
  vertical: {
    'high-jump': vertical('high-jump', { cm: 3, qin: 4 }),
    'pole-vault': vertical('pole-vault', { cm: 8, qin: 12 }),
  },
  fouls: {
    ...followed.fouls,
    discus: followed.fouls.discus.map((foul) =>
      foul.value === 'CAGE' ? cited(foul.value, 'NFHS 6-6-9(e)', 'read in part') : foul,
    ),
  },
  protests: {
    ...followed.protests,
    windows: {
      rules: cited(30, 'NFHS 3-5-3', 'read in part', 'A rule that was misapplied.'),
      clerical: cited(48 * 60, 'NFHS 3-5-3', 'read in part', 'Clerical and scoring errors.'),
      eligibility: cited('any time', 'NFHS 3-5-3', 'read in part'),
      judgement: cited('never', 'NFHS 3-5-3', 'read in part', 'What an official judged is not protested.'),
    },
    appealMinutes: cited(null, 'NFHS 3-5-3', 'memory', 'The games committee or its jury says until when.'),
  },
  disqualifications: [
    ...followed.disqualifications,
    cited('WARM_UP', 'NFHS Rule 6, practice', 'read in part', 'Throwing unsupervised: a warning first.'),
  ],
  ties: citation('NFHS Rule 6, ties', 'read in part'),
  verticalTies: citation('NFHS Rule 7, ties', 'read in part'),
  jumpOff: citation('NFHS 6-3-2b4', 'read in part', 'At which height it starts is from memory.'),
  flightSize: cited({ min: 4, max: 12 }, 'NFHS Rule 6, flights', 'read in part'),
  orderChange: cited(
    'any round',
    'NFHS 6-2-3',
    'read in part',
    'In the preliminary rounds and in the final, for competitors in two events.',
  ),
};

function precision(event: string): Precision {
  return { cm: 1, qin: LONG_THROWS.includes(event) ? 4 : 1 };
}

function vertical(event: VerticalEventCode, step: Step): VerticalRules {
  return {
    ...followed.vertical[event],
    minimumStep: cited(
      step,
      'NFHS Rule 6, raising of the bar',
      'constructed',
      'No smallest step was seen: the step of the jump-off.',
    ),
    winnerChooses: citation('NFHS 6-4-9', 'read in part'),
    jumpOffStep: cited(step, 'NFHS 6-3-2b4', 'memory', 'Centimetres: the inches rounded up, constructed.'),
    jumpOffStart: cited('height failed', 'NFHS 6-3-2b4', 'memory'),
  };
}
