import { REASON_WORDS, type ReasonWords } from '#wording';
import { DE } from './de.js';
import { EN } from './en.js';
import { ES } from './es.js';
import { FI } from './fi.js';
import { FR } from './fr.js';

/** Every word that is printed. One file for each language; a missing key does not compile. */
export type Labels = Readonly<Record<keyof typeof EN, string>>;

const CATALOGUES = { en: EN, de: DE, fr: FR, es: ES, fi: FI } as const satisfies Record<string, Labels>;

export type PrintLanguage = keyof typeof CATALOGUES;

export const PRINT_LANGUAGES = Object.keys(CATALOGUES) as readonly PrintLanguage[];

/** The words of a language and how it writes a decimal and an instant. */
export interface Wording {
  readonly language: PrintLanguage;
  readonly labels: Labels;
  /** Writes the decimal point of a mark, a wind or points as the language does. */
  readonly decimal: (text: string) => string;
  /** Date and time of day at the place of the meet. */
  readonly moment: (at: Date) => string;
  readonly day: (date: string) => string;
  /** Why places are what they are. */
  readonly reasons: ReasonWords;
}

export function wordingOf(language: PrintLanguage, timeZone: string): Wording {
  const point = new Intl.NumberFormat(language).formatToParts(1.5).find(({ type }) => type === 'decimal');
  const moments = new Intl.DateTimeFormat(language, { dateStyle: 'medium', timeStyle: 'short', timeZone });
  const days = new Intl.DateTimeFormat(language, { dateStyle: 'long', timeZone: 'UTC' });
  return {
    language,
    labels: CATALOGUES[language],
    decimal: (text) => text.replaceAll(/(?<=\d)\.(?=\d)/g, point?.value ?? '.'),
    moment: (at) => moments.format(at),
    day: (date) => days.format(new Date(`${date}T00:00:00Z`)),
    reasons: REASON_WORDS[language],
  };
}
