/** Reasons of places in five languages, for the desk, for paper and for whoever shows a result: the one front door. */
import { de } from './de.js';
import { en, type ReasonWords } from './en.js';
import { es } from './es.js';
import { fi } from './fi.js';
import { fr } from './fr.js';

export { filled, type Values } from './filled.js';
export { distanceReason, placeReason, verticalReason, type Writing } from './reasons.js';
export type { ReasonKey, ReasonWords } from './en.js';

/** By language. */
export const REASON_WORDS = { en, de, fr, es, fi } as const satisfies Record<string, ReasonWords>;
