import type { EventCode } from '../codes.js';
import { eventOf } from '../events/event.js';
import { foulsOf } from '../foul-rules.js';
import { citation, cited } from './citing.js';
import { eachEvent } from './each-event.js';
import type { Cited, RuleSet, VerticalTimeAllowed } from './rule-set.js';
import { WA_VERTICAL } from './wa-vertical.js';

const TIME_READ = 'The text read is of 2018; one minute in place of half a minute is from memory.';

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
