/** The part of the library that is about journals, for its front door. */
export type { AnyEntry, AnyEntryKind } from './any-entry.js';
export type * from './entry.js';
export { cardSignatureOf, type CardSignature } from './card-signature.js';
export * from './circle-entry.js';
export type { Away } from './decisions.js';
export * from './list-entry.js';
export { isTrial } from './targets.js';
export type { Fate, JournalItem, Question, Standing } from './journal-item.js';
export * from './verdict.js';
