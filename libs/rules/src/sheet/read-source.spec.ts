import { MAX_BYTES, readSource } from './read-source.js';

const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);

function codeOf(source: Uint8Array | string): string | null {
  const reading = readSource(source);
  return reading.ok ? null : reading.problem.code;
}

describe('a source', () => {
  it('is JSON in UTF-8, as bytes or as a text', () => {
    expect(readSource(bytes('["é","😀"]'))).toEqual({ ok: true, value: ['é', '😀'] });
    expect(readSource('["é","😀"]')).toEqual({ ok: true, value: ['é', '😀'] });
  });

  it('may have one byte order mark, at its start', () => {
    expect(codeOf(bytes('\ufeff1'))).toBeNull();
    expect(codeOf('\ufeff1')).toBeNull();
    expect(codeOf(bytes('\ufeff\ufeff1'))).toBe('NOT_JSON');
    expect(codeOf('\ufeff\ufeff1')).toBe('NOT_JSON');
    expect(codeOf('1\ufeff')).toBe('NOT_JSON');
  });

  // Ill-formed sequences of the Unicode Standard, chapter 3, table 3-7, and other encodings.
  it.each([
    ['a byte that begins nothing', [0x22, 0xff, 0x22]],
    ['a sequence that is cut short', [0x22, 0xc3, 0x22]],
    ['a slash written too long', [0x22, 0xc0, 0xaf, 0x22]],
    ['a surrogate', [0x22, 0xed, 0xa0, 0x80, 0x22]],
    ['a code point beyond the last', [0x22, 0xf4, 0x90, 0x80, 0x80, 0x22]],
    ['ISO 8859-1', [0x22, 0xe9, 0x22]],
    ['UTF-16', [0xff, 0xfe, 0x31, 0x00]],
  ])('is not JSON with %s', (_name, list) => {
    expect(codeOf(Uint8Array.from(list))).toBe('NOT_JSON');
  });

  it('is not JSON as a text that UTF-8 cannot hold, but may name half a character by an escape', () => {
    expect(codeOf('"\ud800"')).toBe('NOT_JSON');
    expect(codeOf('"\\ud800"')).toBeNull();
  });

  it('has at most 5,000,000 bytes', () => {
    expect(codeOf(`1${' '.repeat(MAX_BYTES - 1)}`)).toBeNull();
    expect(codeOf(`1${' '.repeat(MAX_BYTES)}`)).toBe('TOO_LARGE');
    expect(codeOf(bytes(`1${' '.repeat(MAX_BYTES)}`))).toBe('TOO_LARGE');
  });

  it('is as large as a text as its bytes are', () => {
    for (const character of ['a', 'é', '€', '😀']) {
      const { length } = bytes(character);
      const most = Math.floor((MAX_BYTES - 2) / length);
      expect(codeOf(`"${character.repeat(most)}"`)).toBeNull();
      expect(codeOf(`"${character.repeat(most + 1)}"`)).toBe('TOO_LARGE');
    }
  });

  it('says where it stops being JSON', () => {
    const reading = readSource('{"a":1,\n"b":}');
    expect(reading).toMatchObject({
      problem: { path: '', message: expect.stringContaining('Line 2, column 5') },
    });
  });
});
