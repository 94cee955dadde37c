import { LANGUAGES, type InAllLanguages, type Language } from './in-all-languages.js';
import { REASONS } from './reasons.js';
import { STATES } from './states.js';
import { TABLE } from './table.js';

const WORDS = { ...TABLE, ...STATES, ...REASONS };
export type WordKey = keyof typeof WORDS;

/** The first of the wished languages that there is (`de-AT` is German); English when there is none. */
export function languageOf(wished: readonly string[]): Language {
  const bases = wished.map((tag) => tag.split('-')[0]!.toLowerCase());
  return (
    LANGUAGES.find(
      (known) => known === bases.find((base) => (LANGUAGES as readonly string[]).includes(base)),
    ) ?? 'en'
  );
}

/** How one language says things. Times are those of the place of the meet. */
export interface Wording {
  readonly language: Language;
  readonly say: (key: WordKey, values?: Readonly<Record<string, string | number>>) => string;
  /** A word by a key that is put together; the code itself when there is none, since codes may be newer than this. */
  readonly sayCode: (prefix: string, code: string) => string;
  /** Writes the decimal sign of a mark, a wind or points, and a true minus. */
  readonly decimal: (text: string) => string;
  /** `2nd`, `2.`, `2e`, `2.º`. */
  readonly place: (place: number) => string;
  readonly time: (instant: string) => string;
  readonly day: (date: string) => string;
}

/** @param timeZone IANA name; what is not known here is taken as UTC */
export function wordingOf(language: Language, timeZone: string): Wording {
  const at = LANGUAGES.indexOf(language);
  const sign = new Intl.NumberFormat(language).formatToParts(1.5).find(({ type }) => type === 'decimal');
  const clock = clockOf(language, timeZone);
  const days = new Intl.DateTimeFormat(language, { dateStyle: 'long', timeZone: 'UTC' });
  const say: Wording['say'] = (key, values = {}) =>
    (WORDS[key] as InAllLanguages)[at]!.replace(/\{(\w+)\}/g, (_, name: string) =>
      String(values[name] ?? ''),
    );
  return {
    language,
    say,
    sayCode: (prefix, code) => {
      const key = `${prefix}.${code}`;
      return key in WORDS ? say(key as WordKey) : code;
    },
    decimal: (text) => text.replace(/(\d)\.(\d)/g, `$1${sign?.value ?? '.'}$2`).replace(/^-(?=\d)/, '−'),
    place: (place) => placeText(language, place),
    time: (instant) => clock.format(new Date(instant)),
    day: (date) => days.format(new Date(`${date}T00:00:00Z`)),
  };
}

function clockOf(language: Language, timeZone: string): Intl.DateTimeFormat {
  const shape = { hour: 'numeric', minute: '2-digit' } as const;
  const locale = language === 'en' ? 'en-GB' : language;
  try {
    return new Intl.DateTimeFormat(locale, { ...shape, timeZone });
  } catch {
    return new Intl.DateTimeFormat(locale, { ...shape, timeZone: 'UTC' });
  }
}

function placeText(language: Language, place: number): string {
  switch (language) {
    case 'en':
      return `${place}${englishEnding(place)}`;
    case 'fr':
      return place === 1 ? '1re' : `${place}e`;
    case 'es':
      return `${place}.º`;
    default:
      return `${place}.`;
  }
}

function englishEnding(n: number): string {
  const isTeen = n % 100 >= 11 && n % 100 <= 13;
  return isTeen ? 'th' : (['th', 'st', 'nd', 'rd'][n % 10] ?? 'th');
}
