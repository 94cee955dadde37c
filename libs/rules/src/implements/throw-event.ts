import type { EventCode } from '../codes.js';

export const THROW_EVENT_CODES = ['discus', 'shot', 'hammer', 'javelin', 'weight'] as const;

/** An event in which something of a set mass is thrown. */
export type ThrowEventCode = (typeof THROW_EVENT_CODES)[number];

export function isThrowEvent(event: EventCode): event is ThrowEventCode {
  return (THROW_EVENT_CODES as readonly EventCode[]).includes(event);
}
