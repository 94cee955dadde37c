import { isEnumType, isInputObjectType, isListType, isNonNullType, type GraphQLInputType } from 'graphql';

/** Written into a request as the number that it says; no JavaScript number can be it. */
export const TEN_TO_THE_400TH = '@10^400@';

export interface HostileValue {
  readonly what: string;
  readonly value: unknown;
}

const named = (entries: Readonly<Record<string, unknown>>): HostileValue[] =>
  Object.entries(entries).map(([what, value]) => ({ what, value }));

const NO_TEXT = named({
  'a number': 7,
  'a fraction': 0.1,
  'ten to the 400th': TEN_TO_THE_400TH,
  true: true,
  'an object': { a: 1 },
  'a list': ['a', 'b'],
});

const BAD_TEXT = named({
  NUL: 'a\u0000b',
  'half a character': 'a\ud800b',
  'the other half': '\udc00',
  '20,000 letters': 'x'.repeat(20_000),
});

/** Names that every JavaScript object has. */
const PROTOTYPE_KEYS = ['__proto__', 'constructor', 'toString', 'hasOwnProperty'];
const PROTOTYPE_TEXT = PROTOTYPE_KEYS.map((value) => ({ what: `the word ${value}`, value }));

const EMPTY = named({ 'empty text': '' });

/** Values of each scalar that it must never take. */
const SCALARS: Readonly<Record<string, readonly HostileValue[]>> = {
  String: [
    ...NO_TEXT,
    ...BAD_TEXT,
    ...EMPTY,
    ...named({ blanks: '   ', 'a control character': 'a\u001bb', 'two lines': 'a\nb' }),
  ],
  ID: [
    ...NO_TEXT,
    ...BAD_TEXT,
    ...EMPTY,
    ...PROTOTYPE_TEXT,
    ...named({
      'an id of another kind': Buffer.from('Entry:00000000-0000-7000-8000-000000000001').toString(
        'base64url',
      ),
      'an id of no kind': Buffer.from('Nothing:00000000-0000-7000-8000-000000000001').toString('base64url'),
      'a bare UUID': '00000000-0000-7000-8000-000000000001',
    }),
  ],
  RaceTime: [
    ...NO_TEXT,
    ...BAD_TEXT,
    ...EMPTY,
    ...named({ nothing: '0.00', 'sixty seconds': '60.00', 'three decimals': '10.395', 'a comma': '10,39' }),
  ],
  PlacePoints: [
    ...NO_TEXT,
    ...BAD_TEXT,
    ...EMPTY,
    ...named({
      'less than nothing': '-1',
      'a third': '1/3',
      'an exponent': '1e3',
      'a ten thousandth': '0.0001',
    }),
  ],
  UUID: [
    ...NO_TEXT,
    ...BAD_TEXT,
    ...EMPTY,
    ...PROTOTYPE_TEXT,
    ...named({
      'the nil UUID': '00000000-0000-0000-0000-000000000000',
      'a UUID and more': '00000000-0000-7000-8000-000000000001 ',
      SQL: "00000000-0000-7000-8000-000000000001'; --",
    }),
  ],
  Date: [
    ...NO_TEXT,
    ...BAD_TEXT,
    ...EMPTY,
    ...named({
      'no such day': '2026-02-30',
      'the year 1': '0001-01-01',
      'year 10,000': '10000-01-01',
      'a time': '2026-05-30T12:00:00Z',
    }),
  ],
  DateTime: [
    ...NO_TEXT,
    ...BAD_TEXT,
    ...EMPTY,
    ...named({
      'a day': '2026-05-30',
      'no offset': '2026-05-30T12:00:00',
      'no such day': '2026-02-30T12:00:00Z',
      'a word': 'now',
      'a leap of hours': '2026-05-30T25:00:00Z',
    }),
  ],
  Mark: [
    ...NO_TEXT,
    ...BAD_TEXT,
    ...EMPTY,
    ...named({
      zero: '0.00',
      'less than zero': '-5.00',
      'an exponent': '1e400',
      'a comma': '58,10',
      'one decimal': '58.1',
      '400 digits': `${'9'.repeat(400)}.00`,
      'other digits': '٥٨.١٠',
    }),
  ],
  WindReading: [
    ...NO_TEXT,
    ...BAD_TEXT,
    ...EMPTY,
    ...named({
      'no sign': '1.3',
      'two decimals': '+1.30',
      'an exponent': '+1e4',
      '400 digits': `+${'9'.repeat(400)}.0`,
      'a word': 'calm',
    }),
  ],
  Int: named({
    text: '7',
    'empty text': '',
    'a fraction': 1.5,
    'two to the 31st': 2 ** 31,
    'ten to the 400th': TEN_TO_THE_400TH,
    'less than zero': -1,
    true: true,
    'an object': {},
    'a list': [1, 2],
    NUL: '\u0000',
  }),
  Boolean: named({
    text: 'true',
    'a number': 1,
    'ten to the 400th': TEN_TO_THE_400TH,
    'an object': {},
    'a list': [true, false],
  }),
};

/** Sheets that are none. Unlike elsewhere any JSON may come in, and what is wrong is said in `userErrors`. */
const JSON_VALUES: readonly HostileValue[] = named({
  'a number': 7,
  'ten to the 400th': TEN_TO_THE_400TH,
  true: true,
  'a list': [],
  'an empty object': {},
  'empty text': '',
  'text that is no JSON': '{"format":',
  'text with ten to the 400th': '{"format":1e400}',
  NUL: { format: '\u0000' },
  'half a character': { format: '\ud800' },
  'prototype keys': JSON.parse(
    '{"__proto__":{"format":"sectorline-sheet/1"},"constructor":{"prototype":{}}}',
  ),
  '40 lists in one another': JSON.parse(`${'['.repeat(40)}${']'.repeat(40)}`),
});

const ENUM: readonly HostileValue[] = [
  ...NO_TEXT,
  ...BAD_TEXT,
  ...EMPTY,
  ...PROTOTYPE_TEXT,
  ...named({ 'another word': 'SOMETHING_ELSE', 'a word in lower case': 'valid-thing' }),
];

/** Objects with a key too many, given the one that would do. */
function objects(example: unknown): HostileValue[] {
  const extra = (key: string): object => ({ ...(example as object), [key]: { polluted: true } });
  return [
    ...named({
      text: 'x',
      'a number': 7,
      'ten to the 400th': TEN_TO_THE_400TH,
      true: true,
      NUL: '\u0000',
      'a list': [1, 2],
    }),
    ...[...PROTOTYPE_KEYS, 'a\u0000b', 'unknown'].map((key) => ({
      what: `with the key ${JSON.stringify(key)}`,
      value: extra(key),
    })),
  ];
}

/** Values that the type must never take; `example` is one that it takes. */
export function hostileValues(type: GraphQLInputType, example: unknown): HostileValue[] {
  if (isNonNullType(type)) return [{ what: 'null', value: null }, ...ofNullable(type.ofType, example)];
  return ofNullable(type, example);
}

function ofNullable(type: GraphQLInputType, example: unknown): HostileValue[] {
  if (isListType(type)) {
    const item = (example as unknown[])[0];
    return named({
      '3,000 elements': Array.from({ length: 3_000 }, () => item),
      'an empty place': [item, null],
      text: 'x',
      true: true,
      'lists in lists': [[[item]]],
    });
  }
  if (isEnumType(type)) return [...ENUM];
  if (isInputObjectType(type)) return objects(example);
  const name = String(type);
  if (name === 'JSON') return [...JSON_VALUES];
  const values = SCALARS[name];
  if (!values) throw new Error(`Say in hostile-values.ts what no ${name} can be.`);
  return [...values];
}
