import { filled, language, type Language, type Values } from '../languages.js';
import { de } from './de.js';
import { en, type OfficeKey, type OfficeLabels } from './en.js';
import { es } from './es.js';
import { fi } from './fi.js';
import { fr } from './fr.js';

/** Beside those of the desk, which a device at the circle has to keep. */
export const OFFICE_CATALOGUES: Readonly<Record<Language, OfficeLabels>> = { en, de, fr, es, fi };

/** A label of the office in the language in force. */
export function o(key: OfficeKey, values: Values = {}): string {
  return filled(OFFICE_CATALOGUES[language.value][key], values);
}

/** A label whose key is put together; the text itself when there is no such label (a code newer than this page). */
export function oCode(prefix: string, code: string): string {
  const key = `${prefix}.${code}`;
  return key in en ? o(key as OfficeKey) : code;
}
