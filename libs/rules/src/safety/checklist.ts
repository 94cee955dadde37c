import type { EventCode } from '../codes.js';
import { citation } from '../rule-sets/citing.js';
import type { Citation } from '../rule-sets/rule-set.js';

/** What the responsible official looks at before the first warm-up trial and after every interruption. */
export const SAFETY_CHECK_CODES = [
  'SECTOR_CLEAR',
  'SECTOR_CLOSED',
  'CAGE_WHOLE',
  'LANDING_AREA',
  'BAR_AND_UPRIGHTS',
  'BOX',
  'SURFACE',
  'WARM_UP',
  'RETRIEVAL',
  'WEATHER',
] as const;
export type SafetyCheckCode = (typeof SAFETY_CHECK_CODES)[number];

export interface SafetyCheck {
  readonly code: SafetyCheckCode;
  /** What is confirmed, as a plain sentence. */
  readonly sentence: string;
  readonly source: Citation;
}

/** Stands under every checklist. */
export const SAFETY_CAUTION =
  'A list does not make a field safe. The referee, the venue’s rules and local law decide; when in doubt, stop.';

const GUIDANCE = citation('USATF guidance on safety at throwing events', 'read in part');
const PRACTICE = citation('common practice, no published source', 'memory');

const WEATHER: SafetyCheck = {
  code: 'WEATHER',
  sentence: 'No lightning or thunder; somebody watches the weather and knows where the shelter is.',
  source: citation('NFHS guidelines on handling practices and contests during lightning', 'read in part'),
};

const SECTOR: readonly SafetyCheck[] = [
  {
    code: 'SECTOR_CLEAR',
    sentence: 'The landing area is free of people and objects, and its lines can be seen.',
    source: GUIDANCE,
  },
  {
    code: 'SECTOR_CLOSED',
    sentence: 'Barriers keep everybody out; those who measure face the circle.',
    source: GUIDANCE,
  },
];

const THROWS_WARM_UP: SafetyCheck = {
  code: 'WARM_UP',
  sentence:
    'Warm-up throws only when called, in order, under an official; only the thrower called holds an implement.',
  source: GUIDANCE,
};

const CARRIED_BACK: SafetyCheck = {
  code: 'RETRIEVAL',
  sentence:
    'Implements are fetched by the crew after the all-clear and carried back, never thrown or rolled.',
  source: GUIDANCE,
};

const CAGE: SafetyCheck = {
  code: 'CAGE_WHOLE',
  sentence: 'Cage, net and gates are whole and set for the thrower; nobody stands at the mesh.',
  source: GUIDANCE,
};

const CIRCLE: SafetyCheck = {
  code: 'SURFACE',
  sentence: 'The circle is clean, dry enough to turn on, and its rim is firm.',
  source: GUIDANCE,
};

const RUNWAY: SafetyCheck = {
  code: 'SURFACE',
  sentence: 'The runway is clean and dry enough, and nobody crosses it.',
  source: PRACTICE,
};

const JUMPS_WARM_UP: SafetyCheck = {
  code: 'WARM_UP',
  sentence: 'Run-ups and warm-up jumps only in order and when an official gives way.',
  source: PRACTICE,
};

const IN_CAGE = [...SECTOR, CAGE, CIRCLE, THROWS_WARM_UP, CARRIED_BACK, WEATHER];

const INTO_PIT: readonly SafetyCheck[] = [
  {
    code: 'LANDING_AREA',
    sentence: 'The pit is dug over, level and free of rakes and objects; no throwing sector lies over it.',
    source: PRACTICE,
  },
  RUNWAY,
  JUMPS_WARM_UP,
  WEATHER,
];

const MATS: SafetyCheck = {
  code: 'LANDING_AREA',
  sentence: 'The mats are whole, joined and in place; nothing hard lies beside them.',
  source: PRACTICE,
};

const BAR: SafetyCheck = {
  code: 'BAR_AND_UPRIGHTS',
  sentence: 'The uprights stand firm, and the bar and its ends are undamaged.',
  source: PRACTICE,
};

const CHECKLISTS: Readonly<Record<EventCode, readonly SafetyCheck[]>> = {
  discus: IN_CAGE,
  hammer: IN_CAGE,
  weight: IN_CAGE,
  shot: [...SECTOR, CIRCLE, THROWS_WARM_UP, CARRIED_BACK, WEATHER],
  javelin: [
    ...SECTOR,
    RUNWAY,
    THROWS_WARM_UP,
    {
      code: 'RETRIEVAL',
      sentence:
        'Javelins are drawn out upright with the tail covered and carried back upright, at a walk, by the crew.',
      source: GUIDANCE,
    },
    WEATHER,
  ],
  'long-jump': INTO_PIT,
  'triple-jump': INTO_PIT,
  'high-jump': [MATS, BAR, RUNWAY, JUMPS_WARM_UP, WEATHER],
  'pole-vault': [
    MATS,
    BAR,
    {
      code: 'BOX',
      sentence: 'The box is clean and padded, and the poles are whole and fit their vaulters.',
      source: PRACTICE,
    },
    RUNWAY,
    JUMPS_WARM_UP,
    WEATHER,
  ],
};

/** The short list for an event, in the order in which one looks. */
export function safetyChecklist(event: EventCode): readonly SafetyCheck[] {
  return CHECKLISTS[event];
}
