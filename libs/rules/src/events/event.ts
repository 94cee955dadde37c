import type { EventCode } from '../codes.js';
import { toImperial } from '../quantities/conversion.js';
import type { Unit } from '../quantities/mark.js';
import { discus } from './discus.js';
import type { EventRules } from './event-rules.js';
import { hammer } from './hammer.js';
import { highJump } from './high-jump.js';
import { javelin } from './javelin.js';
import { longJump } from './long-jump.js';
import { poleVault } from './pole-vault.js';
import { shot } from './shot.js';
import { tripleJump } from './triple-jump.js';
import { weight } from './weight.js';

const EVENTS: Readonly<Record<EventCode, EventRules>> = {
  discus,
  shot,
  hammer,
  javelin,
  weight,
  'long-jump': longJump,
  'triple-jump': tripleJump,
  'high-jump': highJump,
  'pole-vault': poleVault,
};

/** What an event is, whatever the rule set. */
export function eventOf(code: EventCode): EventRules {
  return EVENTS[code];
}

/** Quarter inches in which a metric mark of the event is listed; for display, never for places. */
export function imperialOf(code: EventCode, cm: number): number {
  return toImperial(cm, EVENTS[code].imperial);
}

/**
 * Whether a mark lies so far outside what the event knows that it should be read again. No reason to refuse it.
 */
export function isFarOutside(code: EventCode, value: number, unit: Unit): boolean {
  const { minCm, maxCm } = EVENTS[code].plausible;
  const thousandthsCm = value * (unit === 'cm' ? 1000 : 635);
  return thousandthsCm < minCm * 1000 || thousandthsCm > maxCm * 1000;
}
