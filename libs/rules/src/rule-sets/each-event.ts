import { DISTANCE_EVENT_CODES, type EventCode, VERTICAL_EVENT_CODES } from '../codes.js';

const EVENTS: readonly EventCode[] = [...DISTANCE_EVENT_CODES, ...VERTICAL_EVENT_CODES];

/** One value for every event. */
export function eachEvent<T>(value: (event: EventCode) => T): Readonly<Record<EventCode, T>> {
  return Object.fromEntries(EVENTS.map((event) => [event, value(event)])) as Record<EventCode, T>;
}
