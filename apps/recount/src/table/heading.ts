import type { CombinedSheet, Sheet } from '../sheet.js';

const SEX = { W: 'women', M: 'men', X: 'open' } as const;

function category({ category }: Sheet): string {
  const sex = category?.sex ? SEX[category.sex] : '';
  return [sex, category?.age ?? ''].filter((part) => part !== '').join(' ');
}

/** `weight` and `long-jump` as words. */
export function eventName(event: string): string {
  const words = event.replaceAll('-', ' ');
  return words.charAt(0).toUpperCase() + words.slice(1);
}

function stage({ stage, qualifying }: Sheet): string {
  if (stage !== 'qualification' || !qualifying) return 'final';
  const fill = qualifying.fill ? `, filled up to ${qualifying.fill}` : '';
  return `qualification, standard ${qualifying.standard}${fill}`;
}

/** What was contested: `Discus, women U18, 1000 g, final, WA 2024`. */
export function sheetHeading(sheet: Sheet, rules: string): string {
  const grams = sheet.implementGrams === undefined ? '' : `${sheet.implementGrams} g`;
  const parts = [eventName(sheet.event), category(sheet), grams, sheet.indoor ? 'indoor' : '', stage(sheet)];
  return [...parts, rules].filter((part) => part !== '').join(', ');
}

export function combinedHeading(sheet: CombinedSheet): string {
  const timing = sheet.timing === 'hand' ? ', timed by hand' : '';
  return `${eventName(sheet.table)}${timing}`;
}
