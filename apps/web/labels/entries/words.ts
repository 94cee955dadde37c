import { filled, language, type Language, type Values } from '../languages.js';
import { de } from './de.js';
import { en, type EntriesKey, type EntriesLabels } from './en.js';
import { es } from './es.js';
import { fi } from './fi.js';
import { fr } from './fr.js';

export type { EntriesKey };

/** Beside those of the office, which every screen of it needs. */
export const ENTRIES_CATALOGUES: Readonly<Record<Language, EntriesLabels>> = { en, de, fr, es, fi };

/** A label of the entries in the language in force. */
export function e(key: EntriesKey, values: Values = {}): string {
  return filled(ENTRIES_CATALOGUES[language.value][key], values);
}

/** A label whose key is put together; the code itself when it is newer than this page. */
export function eCode(prefix: string, code: string): string {
  const key = `${prefix}.${code}`;
  return key in en ? e(key as EntriesKey) : code;
}
