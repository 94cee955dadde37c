import type { EventCode } from '#rules';

/** Events whose technique has a vocabulary here, by the codes of the rules library, each with the prefix of its faults. */
export const TECHNIQUE_EVENTS = {
  discus: 'DT',
  shot: 'SP',
  hammer: 'HT',
  javelin: 'JT',
  'long-jump': 'LJ',
  'triple-jump': 'TJ',
  'high-jump': 'HJ',
} as const satisfies Partial<Record<EventCode, string>>;

export type TechniqueEvent = keyof typeof TECHNIQUE_EVENTS;

export const TECHNIQUE_EVENT_CODES = Object.keys(TECHNIQUE_EVENTS) as readonly TechniqueEvent[];

export function isTechniqueEvent(event: string): event is TechniqueEvent {
  return event in TECHNIQUE_EVENTS;
}

/** How much of the event was done, or in which manner: it decides which phases there are. Neither is a fault. */
export const VARIANTS = {
  discus: ['standing', 'step-in', 'half-turn', 'full-turn'],
  shot: ['standing', 'glide', 'rotational'],
  hammer: ['standing', 'turns'],
  javelin: ['standing', 'short-approach', 'full-approach'],
  'long-jump': ['short-approach', 'full-approach'],
  'triple-jump': ['short-approach', 'full-approach'],
  'high-jump': ['short-approach', 'full-approach'],
} as const satisfies Record<TechniqueEvent, readonly string[]>;

export type Variant = (typeof VARIANTS)[TechniqueEvent][number];

/** Ways to do it that are the thrower's own. They are kept beside a throw and never noted as a fault. */
export const STYLES = {
  discus: ['reverse', 'fixed-feet', 'airborne-release'],
  shot: ['reverse', 'fixed-feet'],
  hammer: ['heel-toe-turns', 'toe-turn-first'],
  javelin: [],
  'long-jump': ['hang', 'hitch-kick', 'sail'],
  'triple-jump': ['single-arm', 'double-arm'],
  'high-jump': ['flop', 'scissors'],
} as const satisfies Record<TechniqueEvent, readonly string[]>;

export type Style = (typeof STYLES)[TechniqueEvent][number];
