import { wordsOf } from '../languages.js';
import { de } from './de.js';
import { en, type NotebookKey } from './en.js';
import { es } from './es.js';
import { fi } from './fi.js';
import { fr } from './fr.js';

/** Of the coach’s notebook. */
export const NOTEBOOK_CATALOGUES = { en, de, fr, es, fi };

export const { say: n, sayCode: nCode } = wordsOf<NotebookKey>(NOTEBOOK_CATALOGUES);
