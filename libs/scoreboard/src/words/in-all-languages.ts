/** The languages, in the order in which every line of the catalogue has them. */
export const LANGUAGES = ['en', 'de', 'fr', 'es', 'fi'] as const;
export type Language = (typeof LANGUAGES)[number];

/** One thing to say, side by side in all languages. */
export type InAllLanguages = readonly [en: string, de: string, fr: string, es: string, fi: string];
