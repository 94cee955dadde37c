import type { Entry } from '../competition/entry.js';
import type { VerticalEntry } from '../vertical-competition/entry.js';

/** An entry of whatever journal: throws and horizontal jumps, or vertical jumps. Kinds mean the same in both. */
export type AnyEntry = Entry | VerticalEntry;
export type AnyEntryKind = AnyEntry['kind'];
