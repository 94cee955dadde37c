import { wordsOf } from '../languages.js';
import { de } from './de.js';
import { en, type AccountKey } from './en.js';
import { es } from './es.js';
import { fi } from './fi.js';
import { fr } from './fr.js';

/** What pages with a sign-in by name share. */
export const ACCOUNT_CATALOGUES = { en, de, fr, es, fi };

export const a = wordsOf<AccountKey>(ACCOUNT_CATALOGUES).say;
