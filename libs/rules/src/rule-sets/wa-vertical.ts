import type { VerticalEventCode } from '../codes.js';
import { citation, cited } from './citing.js';
import type { VerticalTimeAllowed } from './rule-set.js';
import type { Step, VerticalRules } from './vertical-rules.js';

const NO_INCHES = 'Feet and inches are not in the book: the nearest whole inches, constructed.';

/** World Athletics, TR26 to TR28: high jump and pole vault. */
export const WA_VERTICAL: Readonly<Record<VerticalEventCode, VerticalRules>> = {
  'high-jump': verticalRules({
    step: { cm: 2, qin: 4 },
    combinedStep: { cm: 3, qin: 4 },
    combinedTime: { moreThanThreeS: 60, twoOrThreeS: 90, oneS: 120, consecutiveS: 120, firstTrialS: 60 },
  }),
  'pole-vault': verticalRules({
    step: { cm: 5, qin: 8 },
    combinedStep: { cm: 10, qin: 16 },
    combinedTime: { moreThanThreeS: 60, twoOrThreeS: 120, oneS: 180, consecutiveS: 180, firstTrialS: 60 },
  }),
};

interface Differences {
  readonly step: Step;
  readonly combinedStep: Step;
  readonly combinedTime: VerticalTimeAllowed;
}

function verticalRules({ step, combinedStep, combinedTime }: Differences): VerticalRules {
  return {
    trials: citation('WA TR26.2', 'read in part'),
    minimumStep: cited(step, 'WA TR26.4', 'read in part', NO_INCHES),
    combinedStep: cited(combinedStep, 'WA TR26.4', 'read in part', NO_INCHES),
    winnerChooses: citation('WA TR26.4', 'read in part'),
    jumpOffStep: cited(step, 'WA TR26.9', 'memory', NO_INCHES),
    jumpOffStart: cited('next height', 'WA TR26.9', 'memory'),
    consecutiveAcrossHeights: cited(false, 'WA TR25.17', 'memory'),
    combinedTime: cited(combinedTime, 'WA TR25.17', 'memory'),
    uprightsCm: cited({ min: 0, max: 80 }, 'WA TR28, uprights', 'memory'),
  };
}
