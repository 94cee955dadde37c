import type { Dimension } from './specification.js';
import type { ThrowEventCode } from './throw-event.js';

const DIMENSIONS: Readonly<Record<ThrowEventCode, readonly Dimension[]>> = {
  shot: ['diameter'],
  discus: ['diameter', 'centre plate'],
  hammer: ['head', 'length'],
  javelin: ['shaft', 'length'],
  weight: ['length'],
};

/** What can be measured of an implement of the event, beside its mass. */
export function dimensionsOf(event: ThrowEventCode): readonly Dimension[] {
  return DIMENSIONS[event];
}
