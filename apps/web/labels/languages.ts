import { computed, signal } from '@preact/signals';
import { filled, type Values } from '#wording';
import { de } from './de.js';
import { en, type LabelKey, type Labels } from './en.js';
import { es } from './es.js';
import { fi } from './fi.js';
import { fr } from './fr.js';

export { filled, type Values };

export const CATALOGUES = { en, de, fr, es, fi } as const satisfies Record<string, Labels>;
export type Language = keyof typeof CATALOGUES;
export const LANGUAGES = Object.keys(CATALOGUES) as readonly Language[];

/** How each language calls itself. */
export const OWN_NAMES: Readonly<Record<Language, string>> = {
  en: 'English',
  de: 'Deutsch',
  fr: 'Français',
  es: 'Español',
  fi: 'Suomi',
};

/** Chosen by hand; null: as the device is set. */
export const chosenLanguage = signal<Language | null>(null);

const preferred = (globalThis.navigator as Navigator | undefined)?.languages ?? ['en'];

export const language = computed<Language>(() => chosenLanguage.value ?? firstKnown(preferred));

/** For numbers and times: the device's own region where it speaks the language. */
export const locale = computed(
  () => preferred.find((tag) => baseOf(tag) === language.value) ?? language.value,
);

/** The first of the wished languages that there is; English when there is none. */
export function firstKnown(wished: readonly string[]): Language {
  return wished.map(baseOf).find(isLanguage) ?? 'en';
}

export function isLanguage(text: string | null): text is Language {
  return (LANGUAGES as readonly (string | null)[]).includes(text);
}

function baseOf(tag: string): string {
  return tag.split('-')[0]!.toLowerCase();
}

/** The label in the language in force, with what belongs into it. */
export function t(key: LabelKey, values: Values = {}): string {
  return filled(CATALOGUES[language.value][key], values);
}

/** A label whose key is put together; the text itself when there is no such label (a code newer than this page). */
export function tCode(prefix: string, code: string): string {
  const key = `${prefix}.${code}`;
  return key in en ? t(key as LabelKey) : code;
}

/** The words of one page in the language in force. */
export interface Words<Key extends string> {
  readonly say: (key: Key, values?: Values) => string;
  /** A label whose key is put together; the text itself when there is no such label (a code newer than this page). */
  readonly sayCode: (prefix: string, code: string) => string;
}

/** Of a catalogue beside that of the desk. */
export function wordsOf<Key extends string>(
  catalogues: Readonly<Record<Language, Readonly<Record<Key, string>>>>,
): Words<Key> {
  const say: Words<Key>['say'] = (key, values = {}) => filled(catalogues[language.value][key], values);
  return {
    say,
    sayCode: (prefix, code) => {
      const key = `${prefix}.${code}`;
      return key in catalogues.en ? say(key as Key) : code;
    },
  };
}
