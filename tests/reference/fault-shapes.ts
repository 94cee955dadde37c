import type { Draw } from './draw.js';
import type { Sheet } from './shapes.js';

/** What is wrong with a sheet. The problem lies at `path`, or below it where the format leaves it open. */
export interface Expected {
  code: string;
  path: string;
  below?: boolean;
}

/** A way to spoil a valid sheet of one competition: null when this sheet does not lend itself to it. */
export type Fault = (draw: Draw, sheet: Sheet) => Expected | null;

/** A faulty source as it comes in, with the problem that has to be reported. */
export interface Faulty {
  source: string | Uint8Array;
  expected: Expected;
}
