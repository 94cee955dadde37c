import fc from 'fast-check';

const CELLS = [
  ...[
    'Discus women',
    'discus women',
    'Hammer',
    'Quill',
    'Maud',
    'W',
    'M',
    '1999-02-11',
    '1999-02-31',
    '41.20',
  ],
  ...['=cmd|"/c calc"!A1', '+1', '-0.4', '@SUM(A1)', "'=1+1", '47-06.25', '0', '-1', '1e309', 'yes', 'no'],
  ...[
    '"',
    '""',
    '"a""b"',
    'a"b',
    "O'Mälley",
    'Ångström',
    '张伟',
    '🏃',
    'a;b',
    'a,b',
    'a\tb',
    ' ',
    '',
    'NULL',
  ],
  ...['\u{feff}', '\u202e', '\u0000', '\u0007', '\ud800', '__proto__', 'constructor', '1'.repeat(400)],
  ...['x'.repeat(600), '\r\n', 'QXRobGV0ZTo'],
];

const COLUMNS = [
  ...['competition', 'family_name', 'given_name', 'sex', 'born', 'club', 'bib', 'seed_mark', 'listed_name'],
];

const cell = fc.oneof(
  { weight: 4, arbitrary: fc.constantFrom(...CELLS) },
  { weight: 1, arbitrary: fc.string({ unit: 'binary', maxLength: 20 }) },
);

/** Tables as no spreadsheet should write them: most are refused, and some are right after all. */
export const hostileTable: fc.Arbitrary<Buffer> = fc
  .record({
    names: fc.oneof(
      { weight: 3, arbitrary: fc.constant(COLUMNS) },
      { weight: 1, arbitrary: fc.subarray([...COLUMNS, 'competition', 'weight', '=1']) },
    ),
    rows: fc.array(fc.array(cell, { minLength: 9, maxLength: 9 }), { maxLength: 6 }),
    sound: fc.nat(3),
    delimiter: fc.constantFrom(',', ';', '\t', '|'),
    end: fc.constantFrom('\n', '\r\n', '\r'),
    isQuoted: fc.boolean(),
    encoding: fc.constantFrom('utf8', 'utf8', 'latin1', 'utf16le', 'mixed'),
    hasMark: fc.boolean(),
    seed: fc.nat(1_000_000),
  })
  .map(({ names, rows, sound, delimiter, end, isQuoted, encoding, hasMark, seed }) => {
    const good = Array.from({ length: sound }, (_, at) => {
      return ['Discus women', `Sound${seed}${'abc'[at]}`, 'Ada', 'W', '2001-05-14', '', '', '41.20', ''];
    });
    const lines = [names, ...(rows.length > 3 ? [] : good), ...(sound > 0 && seed % 2 === 0 ? [] : rows)];
    const written = lines.map((line) =>
      line.map((one) => (isQuoted ? `"${one.replaceAll('"', '""')}"` : one)).join(delimiter),
    );
    const text = `${hasMark ? '\u{feff}' : ''}${written.join(end)}`;
    if (encoding !== 'mixed') return Buffer.from(text, encoding as BufferEncoding);
    return Buffer.concat([Buffer.from(text, 'utf8'), Buffer.from('\r\nÅé;x', 'latin1')]);
  });

/** Entries that are right, with names as hostile as names may be. */
export const soundEntries: fc.Arbitrary<readonly (readonly string[])[]> = fc
  .array(
    fc.record({
      name: fc
        .string({ unit: fc.constantFrom(...'=+-@\'",;aåØ张.  '), minLength: 1, maxLength: 12 })
        .filter((name) => name.trim() !== ''),
      mark: fc.option(fc.integer({ min: 1, max: 9999 }), { nil: null }),
      isGuest: fc.boolean(),
      club: fc.constantFrom('', '=Heron "AC"', 'Mill; Field', '-'),
      flight: fc.constantFrom('', 'A', "'B"),
    }),
    { minLength: 1, maxLength: 30 },
  )
  .map((entries) =>
    entries.map(({ name, mark, isGuest, club, flight }) => [
      ...['Discus women', name.trim(), club, mark === null ? '' : (mark / 100).toFixed(2)],
      ...[isGuest ? 'yes' : '', flight],
    ]),
  );
