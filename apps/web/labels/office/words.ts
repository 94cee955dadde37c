import { wordsOf } from '../languages.js';
import { de } from './de.js';
import { en, type OfficeKey } from './en.js';
import { es } from './es.js';
import { fi } from './fi.js';
import { fr } from './fr.js';

/** Beside those of the desk, which a device at the circle has to keep. */
export const OFFICE_CATALOGUES = { en, de, fr, es, fi };

export const { say: o, sayCode: oCode } = wordsOf<OfficeKey>(OFFICE_CATALOGUES);
