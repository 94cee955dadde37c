import { cited } from '../rule-sets/citing.js';
import type { Citation } from '../rule-sets/rule-set.js';
import type { DimensionLimit, Specification } from './specification.js';
import type { ThrowEventCode } from './throw-event.js';

const RULES: Readonly<Record<ThrowEventCode, string>> = {
  shot: 'WA TR33',
  discus: 'WA TR34',
  hammer: 'WA TR36',
  javelin: 'WA TR38',
  weight: 'USATF and WMA, weight throw',
};

/** The rule that describes what is thrown in an event; the numbers follow from the older ones of the IAAF. */
export function implementRule(event: ThrowEventCode): string {
  return RULES[event];
}

/**
 * The implements whose dimensions are known. The masses printed with an upper value (7.265 to 7.285 kg) say what
 * makers supply and limit nothing.
 */
export const SPECIFICATIONS: readonly Specification[] = [
  shot(7260, 110, 130, 'read in part'),
  shot(6000, 105, 125),
  shot(5000, 100, 120),
  shot(4000, 95, 110, 'read in part'),
  shot(3000, 85, 110),
  discus(2000, 219, 221),
  discus(1750, 210, 212),
  discus(1500, 200, 202),
  discus(1000, 180, 182),
  discus(750, 166, 182),
  hammer(7260, 110, 130, 1215),
  hammer(6000, 105, 125, 1215),
  hammer(5000, 100, 120, 1200),
  hammer(4000, 95, 110, 1195),
  hammer(3000, 85, 100, 1195),
  hammer(2000, 75, 100, 1195),
  javelin(800, [25, 30], [2600, 2700]),
  javelin(700, [23, 28], [2300, 2400]),
  javelin(600, [20, 25], [2200, 2300]),
  javelin(500, [20, 24], [2000, 2100]),
  javelin(400, [20, 23], [1850, 1950]),
  ...[15_880, 11_340, 9080, 7260, 5450, 4000].map(weight),
];

/** What is known of the dimensions of an implement; `null`: nothing. */
export function specificationOf(event: ThrowEventCode, grams: number): Specification | null {
  return SPECIFICATIONS.find((one) => one.event === event && one.grams === grams) ?? null;
}

type Basis = Citation['basis'];

function shot(grams: number, minMm: number, maxMm: number, basis: Basis = 'memory'): Specification {
  return specification('shot', grams, basis, { what: 'diameter', minMm, maxMm });
}

function discus(grams: number, minMm: number, maxMm: number): Specification {
  const plate: DimensionLimit = { what: 'centre plate', minMm: 50, maxMm: 57 };
  return specification('discus', grams, 'read in part', { what: 'diameter', minMm, maxMm }, plate);
}

function hammer(grams: number, minMm: number, maxMm: number, lengthMm: number): Specification {
  const length: DimensionLimit = { what: 'length', minMm: null, maxMm: lengthMm };
  return specification('hammer', grams, 'read in part', { what: 'head', minMm, maxMm }, length);
}

type Range = readonly [minMm: number, maxMm: number];

function javelin(grams: number, shaft: Range, length: Range): Specification {
  return specification(
    'javelin',
    grams,
    'read in part',
    { what: 'shaft', minMm: shaft[0], maxMm: shaft[1] },
    { what: 'length', minMm: length[0], maxMm: length[1] },
  );
}

/** At most 16 inches long. */
function weight(grams: number): Specification {
  return specification('weight', grams, 'memory', { what: 'length', minMm: null, maxMm: 406 });
}

function specification(
  event: ThrowEventCode,
  grams: number,
  basis: Basis,
  ...limits: DimensionLimit[]
): Specification {
  return { event, grams, limits: cited(limits, implementRule(event), basis) };
}
