/** Rule sets by the federation that publishes them. */
export const RULE_SET_CODES = ['WA', 'NFHS', 'NCAA', 'USATF', 'WMA'] as const;
export type RuleSetCode = (typeof RULE_SET_CODES)[number];

/** Throws and horizontal jumps: one trial a round, ranked by the best mark. */
export const DISTANCE_EVENT_CODES = [
  'discus',
  'shot',
  'hammer',
  'javelin',
  'weight',
  'long-jump',
  'triple-jump',
] as const;
export type DistanceEventCode = (typeof DISTANCE_EVENT_CODES)[number];

export function isDistanceEvent(event: EventCode): event is DistanceEventCode {
  return (DISTANCE_EVENT_CODES as readonly EventCode[]).includes(event);
}

export const VERTICAL_EVENT_CODES = ['high-jump', 'pole-vault'] as const;
export type VerticalEventCode = (typeof VERTICAL_EVENT_CODES)[number];

export type EventCode = DistanceEventCode | VerticalEventCode;

/** A final ranks for the result; a qualification chooses who goes on to one. */
export type Stage = 'final' | 'qualification';

/** Who let a competitor through a cut that the marks did not: referee, jury or draw. */
export type AdmittedBy = 'R' | 'J' | 'D';
