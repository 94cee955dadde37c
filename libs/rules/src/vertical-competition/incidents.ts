import type { VerticalEventCode } from '../codes.js';
import type { Citation } from '../rule-sets/rule-set.js';

/** Something out of the ordinary that happened in a vertical jump, in our own neutral words. */
export const INCIDENT_CODES = [
  'WIND_AFTER_CLEARING',
  'WIND_BEFORE_CLEARING',
  'TOUCHED_WITHOUT_JUMPING',
  'NO_ADVANTAGE',
  'POLE_ON_MATS',
  'POLE_BROKEN',
] as const;
export type IncidentCode = (typeof INCIDENT_CODES)[number];

/** What an incident makes of a trial; `none`: it is judged as if it had not happened; `new trial`: it is taken again. */
export type IncidentOutcome = 'cleared' | 'failed' | 'new trial' | 'none';

export interface Incident {
  readonly sentence: string;
  readonly events: readonly VerticalEventCode[];
  readonly outcome: IncidentOutcome;
  readonly cite: Citation;
}

const BOTH = ['high-jump', 'pole-vault'] as const;

/**
 * How each incident is judged. The rule numbers are those of World Athletics' Technical Rules; all are from memory
 * but for the pole, and no other rule set was seen to differ. The referee decides.
 */
export const INCIDENTS: Readonly<Record<IncidentCode, Incident>> = {
  WIND_AFTER_CLEARING: {
    sentence:
      'A gust, or something else that was not the competitor, displaced the bar after it was cleared.',
    events: BOTH,
    outcome: 'cleared',
    cite: { rule: 'WA TR26.10', basis: 'memory' },
  },
  WIND_BEFORE_CLEARING: {
    sentence: 'Something that was not the competitor displaced the bar before it was cleared.',
    events: BOTH,
    outcome: 'new trial',
    cite: { rule: 'WA TR26.10', basis: 'memory' },
  },
  TOUCHED_WITHOUT_JUMPING: {
    sentence: 'The bar or an upright was touched in a run-up without a jump.',
    events: ['high-jump'],
    outcome: 'failed',
    cite: { rule: 'WA TR27.2.3', basis: 'memory' },
  },
  NO_ADVANTAGE: {
    sentence: 'A foot touched the landing area beyond the plane, and no advantage was gained.',
    events: ['high-jump'],
    outcome: 'none',
    cite: { rule: 'WA TR27.2.2', basis: 'memory' },
  },
  POLE_ON_MATS: {
    sentence: 'The pole touched the landing mats after it was properly planted.',
    events: ['pole-vault'],
    outcome: 'none',
    cite: { rule: 'WA TR28.2', basis: 'read in part' },
  },
  POLE_BROKEN: {
    sentence: 'The pole broke.',
    events: ['pole-vault'],
    outcome: 'new trial',
    cite: { rule: 'WA TR28, broken pole', basis: 'read in part' },
  },
};

/**
 * Whether a trial may be entered with this outcome after the incident. What has to be taken again is entered as the
 * failure that it looked like and then struck by a replacement.
 */
export function fitsIncident(code: IncidentCode, event: VerticalEventCode, outcome: string): boolean {
  const incident = INCIDENTS[code];
  if (!incident.events.includes(event)) return false;
  switch (incident.outcome) {
    case 'cleared':
      return outcome === 'cleared';
    case 'failed':
    case 'new trial':
      return outcome === 'failed';
    case 'none':
      return outcome === 'cleared' || outcome === 'failed';
  }
}
