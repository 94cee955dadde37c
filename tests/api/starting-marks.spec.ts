import { randomUUID } from 'node:crypto';
import { startApi, type TestApi } from '../support/api.js';
import { staffedMeet } from '../support/circle.js';
import { ADULT, inWords, RecordScene } from '../support/record-scene.js';

const IMPORT = `mutation ($input: StartingMarksImportInput!) { startingMarksImport(input: $input) {
  startingMarks { line event mark wind isIndoor implementGrams sex age onDate place clubId meetId athleteId }
  isReplay
  userErrors { code message path remedy ... on CsvFault { line column } }
} }`;

let api: TestApi;
let scene: RecordScene;
beforeAll(async () => {
  api = await startApi();
});
afterAll(() => api.close());
beforeEach(async () => {
  scene = await RecordScene.open(api);
});

async function imported(csv: object | string, input: object = {}, token?: string): Promise<any> {
  const source = typeof csv === 'string' ? { text: csv } : csv;
  const variables = { input: { clubId: scene.clubId, csv: source, ...input } };
  return (await api.data(IMPORT, variables, token ?? scene.meet.director)).startingMarksImport;
}

const faults = ({ userErrors }: any): string[] =>
  userErrors.map(({ code, line, column }: any) => `${line} ${column} ${code}`);

const TABLE = [
  'event;mark;wind;indoor;implement_g;sex;age;date;place',
  'discus;52.10;;;1000;W;;1998-06-06;Mill Field',
  'LONG JUMP;6.31;+1.9;;;W;U20;2004-07-11;',
  'high-jump;1.80;;yes;;W;senior;2011-02-20;"Hall; north"',
  'javelin;150-02.25;;no;600;W;;1987-05-05;',
].join('\r\n');

describe('a table of starting marks', () => {
  it('brings all of its lines, once looked at without storing', async () => {
    const looked = await imported(TABLE, { isDryRun: true });
    expect(looked.startingMarks).toHaveLength(4);
    expect(await scene.clubLists()).toEqual([]);
    const stored = await imported(TABLE);
    expect(stored.startingMarks).toEqual(looked.startingMarks);
    expect(stored.startingMarks[2]).toEqual({
      ...{ line: 4, event: 'HIGH_JUMP', mark: '1.80', wind: null, isIndoor: true, implementGrams: null },
      ...{ sex: 'W', age: 'senior', onDate: '2011-02-20', place: 'Hall; north' },
      ...{ clubId: scene.clubId, meetId: null, athleteId: null },
    });
    expect(inWords(await scene.clubLists())).toEqual([
      'DISCUS 1000 W senior: 52.10',
      'HIGH_JUMP W senior: 1.80',
      'JAVELIN 600 W senior: 150-02.25',
      'LONG_JUMP W U20: 6.31',
    ]);
  });

  it('names its holders by what is on record, and keeps no other names', async () => {
    const familyName = `Thistlewood ${randomUUID()}`;
    scene = await RecordScene.open(api, [{ ...ADULT, familyName }]);
    const [adult] = scene.athletes;
    const table = (line: string): string =>
      `event,mark,sex,date,athlete,family_name,given_name,born\n${line}`;
    const one = await imported(table(`high-jump,1.70,W,2015-06-06,${adult},,,`));
    const two = await imported(table(`high-jump,1.71,W,2016-06-06,,${familyName},Maren,1994-03-17`));
    expect([one, two].map(({ startingMarks }) => startingMarks[0]?.athleteId)).toEqual([adult, adult]);
    expect(faults(await imported(table('high-jump,1.72,W,2016-06-06,,Nobody,Nemo,')))).toEqual([
      '2 family_name ATHLETE_UNKNOWN',
    ]);
    expect(faults(await imported(table('high-jump,1.72,W,2016-06-06,,,Maren,')))).toEqual([
      '2 family_name NAME_INCOMPLETE',
    ]);
    await api.data(
      `mutation ($familyName: String!) {
         athleteCreate(input: { givenName: "Maren", familyName: $familyName, sex: W }) { isReplay } }`,
      { familyName },
      api.adminToken,
    );
    expect(faults(await imported(table(`high-jump,1.72,W,2016-06-06,,${familyName},Maren,`)))).toEqual([
      '2 family_name ATHLETE_AMBIGUOUS',
    ]);
    expect(inWords(await scene.bests(0))[0]).toBe('HIGH_JUMP: 1.71');
  });

  it('tells everything that is wrong, by line and column, and stores nothing of it', async () => {
    const wrong = [
      'event,mark,wind,indoor,implement_g,sex,age,date,club',
      'discus,52.10,,,,W,,1998-06-06,',
      'long-jump,6.31,,,,W,,1998-06-06,',
      'long-jump,6.31,+1.0,yes,,W,,1998-06-06,',
      'shot,14.1,,,4000,F,,1998-02-30,',
      'high-jump,1.80,,,500,W,,2090-01-01,Nowhere AC',
      'high-jump,1.80,,,,W,,1998-06-06,',
    ].join('\n');
    const answer = await imported(wrong);
    // Cells that cannot be read are told first: what they mean together is looked at when all can be.
    expect(faults(answer)).toEqual(['5 mark CELL', '5 sex CELL', '5 date CELL']);
    expect(
      faults(
        await imported(wrong.replace('shot,14.1,,,4000,F,,1998-02-30', 'shot,14.10,,,4000,W,,1998-02-28')),
      ),
    ).toEqual([
      '2 implement_g IMPLEMENT_MISSING',
      '3 wind WIND_MISSING',
      '4 wind WIND_NOT_EXPECTED',
      '6 club CLUB_UNKNOWN',
      '6 implement_g IMPLEMENT_NOT_EXPECTED',
      '6 date NOT_YET',
    ]);
    for (const { remedy, path } of answer.userErrors) {
      expect([remedy === '', path]).toEqual([false, ['input', 'csv']]);
    }
    expect(await scene.clubLists()).toEqual([]);
  });

  it.each([
    ['a formula', 'place', '=HYPERLINK("x")', 'CELL'],
    ['a command', 'place', '@SUM(A1)', 'CELL'],
    ['a formula for a mark', 'mark', '=1+1', 'CELL'],
    ['an endless cell', 'place', 'x'.repeat(600), 'CELL'],
    ['a line break', 'place', 'a\nb', 'CELL'],
    ['an escape', 'place', '\u{1b}[31m', 'CELL'],
    ['half a letter', 'place', 'J\u{fffd}rgen', 'WRONG_ENCODING'],
    ['an id of another kind', 'athlete', 'Q2x1YjowMDAw', 'CELL'],
    ['SQL', 'age', "-- '; DROP TABLE starting_mark", 'CELL'],
  ])('with %s in a cell is refused', async (_what, column, cell, code) => {
    const values: Record<string, string> = { event: 'high-jump', mark: '1.80', sex: 'W', date: '1998-06-06' };
    values[column] = cell;
    const quoted = Object.values(values).map((value) => `"${value.replaceAll('"', '""')}"`);
    const { userErrors, startingMarks } = await imported(
      [Object.keys(values).join(','), quoted.join(',')].join('\n'),
    );
    expect(userErrors.map((error: any) => error.code)).toEqual([code]);
    expect(startingMarks).toEqual([]);
  });

  it('may come as bytes, in UTF-8 or Windows-1252, and in no mixture of them', async () => {
    const line = 'high-jump,1.80,W,1998-06-06,Åsgård\n';
    const bytes = (...parts: Buffer[]): object => ({ base64: Buffer.concat(parts).toString('base64') });
    const head = Buffer.from('event,mark,sex,date,place\n');
    const latin = await imported(bytes(head, Buffer.from(line, 'latin1')), { isDryRun: true });
    const utf8 = await imported(bytes(Buffer.from('\u{feff}'), head, Buffer.from(line)), { isDryRun: true });
    expect([latin, utf8].map(({ startingMarks }) => startingMarks[0].place)).toEqual(['Åsgård', 'Åsgård']);
    const mixed = await imported(bytes(head, Buffer.from(line), Buffer.from(line, 'latin1')));
    expect(faults(mixed)).toEqual(['3 null MIXED_ENCODINGS']);
    expect(faults(await imported(bytes(Buffer.from(`${head.toString()}${line}`, 'utf16le'))))).toEqual([
      '1 null NUL',
    ]);
    const both = await imported({ text: 'event', base64: 'ZXZlbnQ=' });
    expect(both.userErrors.map(({ code }: any) => code)).toEqual(['CSV_MISSING']);
  });

  it('may be sent again, also at once, and brings nothing twice', async () => {
    const id = randomUUID();
    const answers = await Promise.all(Array.from({ length: 4 }, () => imported(TABLE, { id })));
    expect(answers.map(({ isReplay }) => isReplay).sort()).toEqual([false, true, true, true]);
    expect(answers.flatMap(({ userErrors }) => userErrors)).toEqual([]);
    expect(faults(await imported(TABLE))).toEqual([2, 3, 4, 5].map((line) => `${line} null KNOWN_ALREADY`));
    const other = TABLE.replace('52.10', '52.11');
    expect((await imported(other, { id })).userErrors[0].code).toBe('ID_REUSED');
    const twice = `${TABLE}\r\nhigh-jump;1.90;;;;W;;1998-06-06;\r\nhigh-jump;1.90;;;;W;;1998-06-06;Elsewhere`;
    expect(faults(await imported(twice))).toContain('7 null KNOWN_ALREADY');
    expect(inWords(await scene.clubLists())).toHaveLength(4);
  });

  it('is for directors and administrators; of a meet, for its own', async () => {
    const other = await staffedMeet(api);
    const input = { meetId: other.id };
    for (const token of [scene.meet.referee, await api.token('official', randomUUID())]) {
      const { errors } = await api.send(IMPORT, { input: { ...input, csv: { text: TABLE } } }, token);
      expect(errors?.[0]?.extensions.code).toBe('FORBIDDEN');
    }
    const { errors } = await api.send(
      IMPORT,
      { input: { ...input, csv: { text: TABLE } } },
      scene.meet.director,
    );
    expect(errors?.[0]?.extensions.code).toBe('FORBIDDEN');
    expect((await imported(TABLE, { ...input, clubId: null }, other.director)).startingMarks).toHaveLength(4);
    expect(inWords(await scene.meetLists(null, other))).toHaveLength(4);
  });
});

describe('a starting mark', () => {
  it('is corrected by another one, once, and taken back by one that counts no more', async () => {
    const { startingMark: first } = await scene.starting({ mark: '52.10' });
    const again = { replacesId: first.id, reason: 'read from the programme of 1998' };
    const { startingMark: second } = await scene.starting({ mark: '51.20', ...again });
    expect(inWords(await scene.clubLists())).toEqual(['DISCUS 1000 W senior: 51.20']);
    expect((await scene.starting({ mark: '51.00', ...again })).userErrors[0].code).toBe('REPLACED_ALREADY');
    const withdraw = (replacesId: string): Promise<any> =>
      api.data(
        `mutation ($input: StartingMarkWithdrawInput!) { startingMarkWithdraw(input: $input) {
           startingMark { mark counts replacesId reason } userErrors { code } } }`,
        { input: { replacesId, reason: 'made with another implement' } },
        scene.meet.director,
      );
    expect((await withdraw(second.id)).startingMarkWithdraw.startingMark).toEqual({
      ...{ mark: '51.20', counts: false, replacesId: second.id, reason: 'made with another implement' },
    });
    expect(await scene.clubLists()).toEqual([]);
    expect((await withdraw(second.id)).startingMarkWithdraw.userErrors).toEqual([
      { code: 'REPLACED_ALREADY' },
    ]);
    const query = `query ($id: ID!) { club(id: $id) { startingMarks { mark } } }`;
    const kept = await api.data(query, { id: scene.clubId }, scene.meet.director);
    expect(kept.club.startingMarks).toEqual([]);
    expect((await api.send(query, { id: scene.clubId })).errors?.[0]?.extensions.code).toBe(
      'UNAUTHENTICATED',
    );
  });

  it.each([
    ['in no list', { clubId: null }, 'IN_NO_LIST', 'clubId'],
    ['of a throw without its implement', { implementGrams: null }, 'IMPLEMENT_MISSING', 'implementGrams'],
    ['of a jump with one', { event: 'HIGH_JUMP' }, 'IMPLEMENT_NOT_EXPECTED', 'implementGrams'],
    ['of a long jump without its wind', { event: 'LONG_JUMP', implementGrams: null }, 'WIND_MISSING', 'wind'],
    ['of a throw with wind', { wind: '+1.0' }, 'WIND_NOT_EXPECTED', 'wind'],
    ['of days to come', { onDate: '2190-01-01' }, 'NOT_YET', 'onDate'],
    ['that replaces without a reason', { replacesId: randomUUID() }, 'REASON_MISSING', 'reason'],
    ['with a reason for nothing', { reason: 'why not' }, 'REASON_NOT_EXPECTED', 'reason'],
    ['that replaces nothing', { replacesId: randomUUID(), reason: 'x' }, 'NOT_FOUND', 'replacesId'],
  ])('%s is refused', async (_what, input, code, field) => {
    const { startingMark, userErrors } = await scene.starting(input);
    expect(startingMark).toBeNull();
    expect(userErrors).toEqual([{ code, path: ['input', field] }]);
  });

  it('without a wind reading is shown and does not count', async () => {
    await scene.starting({ event: 'LONG_JUMP', implementGrams: null, mark: '6.50', wind: 'NWI' });
    await scene.starting({ event: 'LONG_JUMP', implementGrams: null, mark: '6.40', wind: '+2.0' });
    expect(inWords(await scene.clubLists())).toEqual(['LONG_JUMP W senior: 6.40 | wind 6.50']);
  });
});
