import type { Cited } from '../rule-sets/rule-set.js';
import type { ThrowEventCode } from './throw-event.js';

/**
 * What is measured of an implement beside its mass: the diameter of a shot or over the rim of a discus; the metal
 * plate in the middle of a discus; the head of a hammer; a javelin where it is thickest; the length of a hammer with
 * its wire and grip, of a javelin, of a weight with its harness.
 */
export type Dimension = 'diameter' | 'centre plate' | 'head' | 'shaft' | 'length';

/** In millimetres, both included; `null`: no limit. */
export interface DimensionLimit {
  readonly what: Dimension;
  readonly minMm: number | null;
  readonly maxMm: number | null;
}

/** The limits of one implement, whoever throws it. */
export interface Specification {
  readonly event: ThrowEventCode;
  /** The least mass, in grams: the condition for competing and for records. There is no greatest. */
  readonly grams: number;
  readonly limits: Cited<readonly DimensionLimit[]>;
}
