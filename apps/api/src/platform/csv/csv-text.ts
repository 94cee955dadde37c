import type { CsvProblem } from './csv-problem.js';

/** What a spreadsheet wrote: its text, or the bytes of the file. */
export type CsvSource = string | Uint8Array;

export type CsvText = { readonly text: string } | { readonly problem: CsvProblem };

const UTF_8 = new TextDecoder('utf-8', { fatal: true });
const [LINE_FEED, CARRIAGE_RETURN, LAST_OF_ASCII] = [0x0a, 0x0d, 0x7f];

/**
 * The text of a file in UTF-8 or Windows-1252, without a byte order mark. Bytes that are no UTF-8 are Windows-1252,
 * unless a line of the same file is UTF-8 beyond ASCII: then two files were put together, and either reading would
 * spoil names.
 */
export function csvText(source: CsvSource): CsvText {
  if (typeof source === 'string') return checked(source);
  if (source.includes(0)) return { problem: NUL };
  const whole = asUtf8(source);
  if (whole !== null) return checked(whole);
  const mixedAt = mixedLine(source);
  if (mixedAt !== null) return { problem: { ...MIXED_ENCODINGS, line: mixedAt } };
  return checked(asWindows1252(source));
}

function checked(text: string): CsvText {
  const without = text.startsWith('\u{feff}') ? text.slice(1) : text;
  if (without.includes('\0')) return { problem: NUL };
  const spoilt = without.indexOf('\u{fffd}');
  if (spoilt >= 0) return { problem: { ...WRONG_ENCODING, line: lineAt(without, spoilt) } };
  return { text: without };
}

function asUtf8(bytes: Uint8Array): string | null {
  try {
    return UTF_8.decode(bytes);
  } catch {
    return null;
  }
}

/** What Windows-1252 has at 0x80 to 0x9F; five of them are controls (WHATWG Encoding, index windows-1252). */
const FROM_0X80 = '€\x81‚ƒ„…†‡ˆ‰Š‹Œ\x8dŽ\x8f\x90‘’“”•–—˜™š›œ\x9džŸ';

/** By hand: Node 20's TextDecoder takes windows-1252 for ISO 8859-1. */
function asWindows1252(bytes: Uint8Array): string {
  const latin = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength).toString('latin1');
  return latin.replace(/[\x80-\x9f]/g, (one) => FROM_0X80[one.charCodeAt(0) - 0x80]!);
}

/** The first line that is not in the encoding of the first one beyond ASCII; `null`: all are in Windows-1252. */
function mixedLine(bytes: Uint8Array): number | null {
  let first: 'utf-8' | 'windows-1252' | null = null;
  let line = 1;
  for (let from = 0; from < bytes.length; line += 1) {
    const to = endOfLine(bytes, from);
    const part = bytes.subarray(from, to);
    if (part.some((byte) => byte > LAST_OF_ASCII)) {
      const encoding = asUtf8(part) === null ? 'windows-1252' : 'utf-8';
      first ??= encoding;
      if (encoding !== first) return line;
    }
    from = bytes[to] === CARRIAGE_RETURN && bytes[to + 1] === LINE_FEED ? to + 2 : to + 1;
  }
  return null;
}

function endOfLine(bytes: Uint8Array, from: number): number {
  let at = from;
  while (at < bytes.length && bytes[at] !== LINE_FEED && bytes[at] !== CARRIAGE_RETURN) at += 1;
  return at;
}

function lineAt(text: string, index: number): number {
  return text.slice(0, index).split(/\r\n|\n|\r/).length;
}

const NUL: CsvProblem = {
  code: 'NUL',
  line: 1,
  column: null,
  message: 'The text holds the character NUL (U+0000), as UTF-16 and spreadsheet files do.',
  remedy: 'Save the table as CSV in UTF-8.',
};

const MIXED_ENCODINGS: CsvProblem = {
  code: 'MIXED_ENCODINGS',
  line: 1,
  column: null,
  message: 'Lines above are in another encoding than this one.',
  remedy: 'Save the whole table as CSV in UTF-8.',
};

const WRONG_ENCODING: CsvProblem = {
  code: 'WRONG_ENCODING',
  line: 1,
  column: null,
  message: 'The text was read in another encoding than it was written in: letters are lost (U+FFFD).',
  remedy: 'Save the table as CSV in UTF-8, or send the bytes of the file.',
};
