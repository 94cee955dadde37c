/**
 * What a register knows of the implement that an entry names, when the entry comes in. `passed`: it may be used.
 * `unknown`: no register has it. `other event`: it is one of another event; `other mass`: the entry itself gives a
 * mass that is not the registered one.
 */
export const IMPLEMENT_STANDINGS = [
  'passed',
  'not inspected',
  'incomplete',
  'failed',
  'kept back',
  'unknown',
  'other event',
  'other mass',
] as const;
export type ImplementStanding = (typeof IMPLEMENT_STANDINGS)[number];

/** The implement that an entry names, in plain values: what decides about entries knows no register. */
export interface NamedImplement {
  readonly implementId?: string;
  /** Exactly with `implementId`. */
  readonly implementStanding?: ImplementStanding;
}
