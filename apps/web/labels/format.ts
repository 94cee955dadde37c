import { computed } from '@preact/signals';
import { displayMark, formatWind, ordinal, type Unit, type Wind } from '#rules';
import { language, locale, t } from './languages.js';

const decimal = computed(
  () =>
    new Intl.NumberFormat(locale.value).formatToParts(1.5).find(({ type }) => type === 'decimal')?.value ??
    '.',
);
const clock = computed(() => new Intl.DateTimeFormat(locale.value, { hour: 'numeric', minute: '2-digit' }));

/** Puts the decimal sign of the place into a number that is written with a point. */
export function localDecimals(text: string): string {
  return text.replace(/(\d)\.(\d)/g, `$1${decimal.value}$2`);
}

/** `48.62`, `48,62` or `47-6 1/4`. */
export function markText(value: number, unit: Unit): string {
  const text = displayMark(value, unit);
  return unit === 'cm' ? localDecimals(text) : text;
}

export function windText(wind: Wind): string {
  if (wind === 'pending') return t('wind.later');
  return localDecimals(formatWind(wind)).replace('-', '−');
}

const calendar = computed(
  () =>
    new Intl.DateTimeFormat(locale.value, {
      day: 'numeric',
      month: 'short',
      year: 'numeric',
      timeZone: 'UTC',
    }),
);

/** A day, `YYYY-MM-DD`, as the place writes it. */
export function dayText(day: string): string {
  return calendar.value.format(Date.parse(day));
}

/** In 12 or 24 hours, as the place has it. */
export function timeText(ms: number): string {
  return clock.value.format(ms);
}

/** `1st`, `1.`, `1re`…: as short as a place is written in the language. */
export function placeText(place: number): string {
  switch (language.value) {
    case 'en':
      return ordinal(place);
    case 'fr':
      return place === 1 ? '1re place' : `${place}e place`;
    case 'es':
      return `${place}.º`;
    case 'de':
    case 'fi':
      return `${place}.`;
  }
}

/** `1:00`, `0:07`. */
export function secondsText(seconds: number): string {
  return `${Math.floor(seconds / 60)}:${String(seconds % 60).padStart(2, '0')}`;
}

export function ageText(ms: number): string {
  const minutes = Math.floor(ms / 60_000);
  if (minutes < 1) return t('age.now');
  return minutes < 60
    ? t('age.minutes', { count: minutes })
    : t('age.hours', { count: Math.floor(minutes / 60) });
}
