import type { Problem } from '../result/result-document.js';
import type { JsonValue } from './json.js';
import type { ProblemCode } from './problem-codes.js';
import { readJson } from './read-json.js';

/** The largest file, in bytes. */
export const MAX_BYTES = 5_000_000;

/** A web standard (the Encoding Standard) that browsers and Node have alike. */
declare const TextDecoder: new (
  label: string,
  options: { readonly fatal: boolean },
) => { readonly decode: (bytes: Uint8Array) => string };

export type SourceReading =
  | { readonly ok: true; readonly value: JsonValue }
  | { readonly ok: false; readonly problem: Problem };

/** Reads a file, or a text that stands for one, as JSON. A byte order mark at its start is accepted. */
export function readSource(source: Uint8Array | string): SourceReading {
  if (bytesOf(source) > MAX_BYTES) {
    return refusal('TOO_LARGE', `A file has at most ${MAX_BYTES} bytes; divide it.`);
  }
  const text = typeof source === 'string' ? wellFormed(source) : decode(source);
  if (text === null) return refusal('NOT_JSON', 'The file is not in UTF-8; save it in that encoding.');
  const reading = readJson(text);
  return reading.ok ? reading : refusal('NOT_JSON', `The file is not JSON. ${reading.fault.message}`);
}

function refusal(code: ProblemCode, message: string): SourceReading {
  return { ok: false, problem: { path: '', code, message, rule: null } };
}

function decode(bytes: Uint8Array): string | null {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return null;
  }
}

const BYTE_ORDER_MARK = '\ufeff';
const LONE_SURROGATE = /\p{Surrogate}/u;

/** A text that could not have come out of a file in UTF-8 is treated like bytes that are not UTF-8. */
function wellFormed(text: string): string | null {
  if (LONE_SURROGATE.test(text)) return null;
  return text.startsWith(BYTE_ORDER_MARK) ? text.slice(1) : text;
}

/** How many bytes a source has, or would have in UTF-8. */
function bytesOf(source: Uint8Array | string): number {
  if (typeof source !== 'string') return source.byteLength;
  if (source.length > MAX_BYTES) return source.length;
  let bytes = 0;
  for (let at = 0; at < source.length; at += 1) {
    const code = source.charCodeAt(at);
    const isHalfOfFourBytes = code >= 0xd800 && code <= 0xdfff;
    bytes += code < 0x80 ? 1 : code < 0x800 || isHalfOfFourBytes ? 2 : 3;
  }
  return bytes;
}
