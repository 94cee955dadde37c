import type { EventCode } from '../codes.js';
import { eventOf } from '../events/event.js';
import { foulsOf } from '../foul-rules.js';
import { citation, cited } from './citing.js';
import { eachEvent } from './each-event.js';
import type { ProtestRules } from './protest-rules.js';
import type { Cited, RuleSet, VerticalTimeAllowed } from './rule-set.js';
import { WA_VERTICAL } from './wa-vertical.js';

const TIME_READ = 'The text read is of 2018; one minute in place of half a minute is from memory.';

/** The texts were not seen: numbers and times are from memory. */
const PROTESTS: ProtestRules = {
  windows: {
    rules: cited(30, 'WA TR8.2', 'memory'),
    clerical: cited(30, 'WA TR8.2', 'memory'),
    judgement: cited(30, 'WA TR8.2', 'memory', 'A failure at once and by word of mouth: TR8.5.'),
    eligibility: cited(
      'any time',
      'WA TR8.1',
      'memory',
      'Before the meet to its delegate; what comes later goes to the federation, and the result stands until then.',
    ),
  },
  appealMinutes: cited(30, 'WA TR8.7', 'memory', 'From when the referee’s decision was told.'),
  measuredUnderProtest: citation('WA TR8.5', 'memory'),
  deposit: citation('WA TR8.7', 'memory', 'With an appeal, in writing; what it is the meet says.'),
};

/**
 * World Athletics, Technical Rules (TR) and Competition Rules (CR) in the numbering since 2020. The other rule sets
 * state only where they differ from it.
 */
export const WA_2024: RuleSet = {
  code: 'WA',
  edition: '2024-01',
  name: 'World Athletics Technical Rules',
  plan: cited(
    {
      rounds: 6,
      cuts: [{ after: 3, through: 8 }],
      cutTies: 'next-best',
      reorderAfter: [3],
      reorder: 'reverse',
    },
    'WA TR25.6',
    'read in part',
    'That all who are still level go on is from memory.',
  ),
  qualificationPlan: cited(
    { rounds: 3, cuts: [], cutTies: 'next-best', reorderAfter: [], reorder: 'reverse' },
    'WA TR25.9-25.16',
    'memory',
  ),
  precision: eachEvent((event) =>
    cited(
      { cm: 1, qin: 1 },
      `WA ${measuringRule(event)}`,
      'read in part',
      'Feet and inches are not in the book.',
    ),
  ),
  windLimit: cited(20, 'WA CR31, wind for records', 'read in part'),
  timeAllowed: cited({ trialS: 60, consecutiveS: 120 }, 'WA TR25.17', 'memory', TIME_READ),
  verticalTimeAllowed: {
    'high-jump': verticalTime({ twoOrThreeS: 90, oneS: 180, consecutiveS: 120 }),
    'pole-vault': verticalTime({ twoOrThreeS: 120, oneS: 300, consecutiveS: 180 }),
  },
  vertical: WA_VERTICAL,
  fouls: eachEvent((event) =>
    foulsOf(event).map(({ code, rule, basis }) => cited(code, `WA ${rule}`, basis)),
  ),
  ties: citation('WA TR25.22', 'read in part', 'That a tie for first place stays is from memory.'),
  verticalTies: citation('WA TR26.8', 'read in part'),
  jumpOff: citation('WA TR26.9', 'memory'),
  draw: citation('WA TR25.5', 'read in part'),
  flightSize: cited(null, 'WA TR25.10', 'memory', 'Groups as nearly equal as possible; no size is named.'),
  orderChange: cited('not in the last round', 'WA TR4.3', 'read in part'),
  combinedOrderChange: cited('any round', 'WA TR4.3', 'read in part'),
  protests: PROTESTS,
  disqualifications: [
    cited('CONDUCT', 'WA TR7.1, CR18.5', 'memory', 'After a warning, or at once when it is grave.'),
    cited('ASSISTANCE', 'WA TR6.2', 'memory', 'After a warning.'),
    cited('FAILED_TO_TAKE_PART', 'WA TR4.4', 'memory', 'Out of every event that follows, unless excused.'),
    cited('INELIGIBLE', 'WA TR22, TR8.1', 'memory'),
    cited('IMPLEMENT', 'WA TR32.2', 'memory'),
    cited('CLOTHING', 'WA TR5', 'memory', 'Clothing, shoes and bibs.'),
  ],
};

function measuringRule(event: EventCode): string {
  switch (eventOf(event).kind) {
    case 'vertical-jump':
      return 'TR26, measurement';
    case 'horizontal-jump':
      return 'TR30, measurement';
    case 'throw':
      return 'TR32, measurement';
  }
}

function verticalTime(
  seconds: Pick<VerticalTimeAllowed, 'twoOrThreeS' | 'oneS' | 'consecutiveS'>,
): Cited<VerticalTimeAllowed> {
  return cited({ moreThanThreeS: 60, firstTrialS: 60, ...seconds }, 'WA TR25.17', 'memory', TIME_READ);
}
