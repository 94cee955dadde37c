import fc from 'fast-check';
import { plainObject, type JsonValue, type PlainJson } from './json.js';
import { readJson } from './read-json.js';

function plain(value: JsonValue): PlainJson {
  if (value instanceof Map) return plainObject([...value].map(([key, member]) => [key, plain(member)]));
  return Array.isArray(value) ? value.map(plain) : (value as PlainJson);
}

function read(text: string): JsonValue {
  const reading = readJson(text);
  if (!reading.ok) throw new Error(reading.fault.message);
  return reading.value;
}

function faultOf(text: string): string | null {
  const reading = readJson(text);
  return reading.ok ? null : reading.fault.message;
}

function parses(text: string): boolean {
  try {
    JSON.parse(text);
    return true;
  } catch {
    return false;
  }
}

/** Texts near JSON: a JSON text with one piece of it replaced. */
const nearJson = fc
  .tuple(
    fc.json(),
    fc.nat(),
    fc.nat(3),
    fc.constantFrom('', '"', ',', '}', ']', '\\', '-', '0', '\u0001', ' '),
  )
  .map(([text, at, length, piece]) => {
    const start = at % (text.length + 1);
    return text.slice(0, start) + piece + text.slice(start + length);
  });

describe('readJson', () => {
  it('reads what JSON.parse reads', () => {
    fc.assert(
      fc.property(fc.json({ noUnicodeString: false }), (text) => {
        expect(plain(read(text))).toEqual(plain(read(JSON.stringify(JSON.parse(text)))));
        expect(JSON.stringify(plain(read(text)))).toBe(JSON.stringify(JSON.parse(text)));
      }),
    );
  });

  it('refuses what JSON.parse refuses, and nothing else but a key that stands twice', () => {
    fc.assert(
      fc.property(nearJson, (text) => {
        const fault = faultOf(text);
        if (fault === null) expect(parses(text)).toBe(true);
        else if (!fault.includes('stands twice')) expect(parses(text)).toBe(false);
      }),
      { numRuns: 2000 },
    );
  });

  it.each([
    '',
    ' ',
    '{',
    '[1,]',
    '{"a":1,}',
    '{a:1}',
    "'a'",
    '01',
    '+1',
    '1.',
    '.5',
    '1e',
    'NaN',
    'Infinity',
    '-',
    'nul',
    'nulls',
    '"\t"',
    '"\\x"',
    '"\\u12"',
    '"abc',
    '1 2',
    '\u00a01',
    '[1}',
    '{"a"}',
    '{"a":}',
  ])('refuses %j like JSON.parse', (text) => {
    expect(faultOf(text)).not.toBeNull();
    expect(parses(text)).toBe(false);
  });

  it('refuses a key that stands twice in one object, however it is written', () => {
    expect(faultOf('{"a":1,"b":{"a":2}}')).toBeNull();
    expect(faultOf('{\n  "a": 1,\n  "\\u0061": 2 }')).toBe(
      'Line 3, column 3: the key "a" stands twice in one object; keep one of them.',
    );
    expect(faultOf('[{"x":{"__proto__":1,"__proto__":1}}]')).toContain('stands twice');
  });

  it('keeps the keys in the order of the text', () => {
    expect([...(read('{"b":1,"10":2,"2":3,"a":4}') as Map<string, JsonValue>).keys()]).toEqual([
      'b',
      '10',
      '2',
      'a',
    ]);
  });

  it('gives keys like __proto__ no power', () => {
    const value = read('{"__proto__":{"polluted":true},"constructor":{"prototype":{"polluted":true}}}');
    expect([...(value as Map<string, JsonValue>).keys()]).toEqual(['__proto__', 'constructor']);
    expect(({} as { polluted?: boolean }).polluted).toBeUndefined();
    expect(JSON.stringify(plain(value))).toContain('"__proto__":{"polluted":true}');
  });

  it('reads nesting of any depth', () => {
    const depth = 200_000;
    expect(faultOf('['.repeat(depth) + ']'.repeat(depth))).toBeNull();
    expect(faultOf('{"a":'.repeat(depth) + '1' + '}'.repeat(depth))).toBeNull();
    expect(faultOf('['.repeat(depth))).toContain('a value is missing');
  });

  it('reads numbers, blanks and strings of any length', () => {
    const long = 4_000_000;
    expect(read('1'.repeat(long))).toBe(Infinity);
    expect(read(`1e${'0'.repeat(long)}1`)).toBe(10);
    expect(read(`0.${'0'.repeat(long)}`)).toBe(0);
    expect(read(`${' '.repeat(long)}1${'\n'.repeat(long)}`)).toBe(1);
    expect(read(`"${'\\n'.repeat(long / 2)}"`)).toBe('\n'.repeat(long / 2));
  });

  it('reads a number beyond a double as infinite, and a lone surrogate as it is', () => {
    expect(read('1e400')).toBe(Infinity);
    expect(read('-1e400')).toBe(-Infinity);
    expect(read('"\\ud800"')).toBe('\ud800');
  });
});
