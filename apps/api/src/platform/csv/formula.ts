/*
 * A spreadsheet carries out what begins with one of these; their wide forms, too, in some. An apostrophe before it
 * makes it text. Text that has apostrophes there already gets one more, so that what is read back is what was written.
 */
const BEGINS_FORMULA = /^[=+\-@\t\r\uff1d\uff0b\uff0d\uff20]/;
const TO_BE_MARKED = /^'*[=+\-@\t\r\uff1d\uff0b\uff0d\uff20]/;
const MARKED = /^'+[=+\-@\t\r\uff1d\uff0b\uff0d\uff20]/;

export function beginsFormula(cell: string): boolean {
  return BEGINS_FORMULA.test(cell);
}

/** Text as it stands in a cell that is text and nothing else. */
export function asText(text: string): string {
  return TO_BE_MARKED.test(text) ? `'${text}` : text;
}

/** The inverse of {@link asText}. */
export function fromText(cell: string): string {
  return MARKED.test(cell) ? cell.slice(1) : cell;
}
