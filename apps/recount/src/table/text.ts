/** Control characters, and those that turn the direction of a line: a terminal would obey them. */
const OBEYED = /[\p{Cc}\u061C\u200E\u200F\u2028\u2029\u202A-\u202E\u2066-\u2069]|\p{Surrogate}/gu;

/** Text from a file, made safe to print: what a terminal would obey is shown as its code point. */
export function printable(text: string): string {
  return text.replace(OBEYED, (character) => {
    const point = character.codePointAt(0) ?? 0;
    return `<U+${point.toString(16).toUpperCase().padStart(4, '0')}>`;
  });
}

const GRAPHEMES = new Intl.Segmenter('en', { granularity: 'grapheme' });
const INVISIBLE = /^[\p{M}\p{Cf}]+$/u;
/** Drawn two columns wide: emoji, and East Asian writing but for its half-width forms (Unicode UAX #11). */
const WIDE =
  /^(?![\uFF61-\uFFDC\uFFE8-\uFFEE])(?:\p{Emoji_Presentation}|\p{Script=Han}|\p{Script=Hiragana}|\p{Script=Katakana}|\p{Script=Hangul}|\p{Script=Bopomofo}|[\u3001-\u303E\u3000\uFF01-\uFF60\uFFE0-\uFFE6])/u;

function graphemeWidth(grapheme: string): number {
  if (INVISIBLE.test(grapheme)) return 0;
  // A half-width sound mark belongs to its letter, but takes a column.
  if (/.[\uFF9E\uFF9F]$/u.test(grapheme)) return 2;
  return WIDE.test(grapheme) || grapheme.includes('\uFE0F') ? 2 : 1;
}

/** Columns that a printable text takes in a terminal. */
export function widthOf(text: string): number {
  if (/^[\x20-\x7E]*$/.test(text)) return text.length;
  let width = 0;
  for (const { segment } of GRAPHEMES.segment(text)) width += graphemeWidth(segment);
  return width;
}
