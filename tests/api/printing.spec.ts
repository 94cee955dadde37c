import { startApi, type TestApi } from '../support/api.js';
import { Bar, highJumpSheet } from '../support/at-the-bar.js';
import { Circle } from '../support/at-the-circle.js';
import { discusSheet } from '../support/circle.js';
import { readPdf, type ReadPdf } from '../support/read-pdf.js';
import { RecordScene } from '../support/record-scene.js';

let api: TestApi;
beforeAll(async () => {
  api = await startApi();
});
afterAll(() => api.close());

function fetchPaper(path: string, token: string | null): Promise<Response> {
  return fetch(`${api.url}/print/${path}`, {
    headers: token === null ? {} : { authorization: `Bearer ${token}` },
  });
}

async function read(path: string, token: string | null): Promise<ReadPdf> {
  const answer = await fetchPaper(path, token);
  expect([answer.status, answer.headers.get('content-type')]).toEqual([200, 'application/pdf']);
  return readPdf(await answer.arrayBuffer());
}

const NAMED = Array.from({ length: 60 }, (_, at) => ({
  bib: String(at + 1),
  name: `Thora Quill-Åström ${at + 1}`,
  club: 'Saltmarsh AC',
}));

describe('a paper', () => {
  it('has its title, its language and its structure for those who do not see it', async () => {
    const circle = await Circle.open(api);
    const paper = await read(`competitions/${circle.competition.id}/result.pdf?lang=de`, circle.official);
    expect(paper).toMatchObject({ title: 'Ergebnis: Test', language: 'de' });
    expect([...paper.roles]).toEqual(expect.arrayContaining(['H1', 'P', 'Table', 'TR', 'TH', 'TD']));
  });

  it('reads in order: title, head, table row by row, notes', async () => {
    const circle = await Circle.open(api);
    await circle.recordCard(['58.10'], ['X'], ['61.10']);
    const paper = await read(`competitions/${circle.competition.id}/result.pdf`, circle.official);
    const text = paper.pages.flat().join(' ');
    const parts = [
      'Result: Test',
      'Heron Field Open',
      'Place',
      'Bib',
      '1.',
      '61.10',
      '2.',
      '58.10',
      'No valid mark yet',
    ];
    const found = parts.map((part, at) => text.indexOf(part, at === 0 ? 0 : text.indexOf(parts[at - 1]!)));
    expect(found.every((place, at) => place >= 0 && (at === 0 || place > found[at - 1]!))).toBe(true);
    expect(text).toContain('Not official: as it stands');
  });

  it('writes decimals as the language does', async () => {
    const circle = await Circle.open(api);
    await circle.recordCard(['58.10']);
    const paper = await read(`competitions/${circle.competition.id}/result.pdf?lang=fi`, circle.official);
    expect(paper.pages.flat().join(' ')).toContain('58,10');
  });

  it('goes over as many pages as it takes, with everybody on it once', async () => {
    const circle = await Circle.open(api, discusSheet(0, { competitors: NAMED }));
    const path = `competitions/${circle.competition.id}/field-sheet.pdf?paper=Letter`;
    const { pages, size } = await read(path, circle.official);
    expect(size).toEqual([792, 612]);
    expect(pages.length).toBeGreaterThan(2);
    const names = pages.flat().filter((text) => text.startsWith('Thora Quill-Åström'));
    expect(names).toHaveLength(60);
    // Drawn on every page, read out on the first only.
    expect(pages.flat().filter((text) => text === 'Bib')).toHaveLength(1);
    expect(pages.flat().join(' ')).toContain('the venue’s rules and local law decide');
  });

  it('of a high jump has a column for each height, and what was jumped when it is filled', async () => {
    const bar = await Bar.open(api, highJumpSheet(2, ['1.75', '1.80', '1.85']));
    await bar.jump(1, '1.75', 1, 'X');
    await bar.jump(1, '1.75', 2, 'O');
    const of = (what: string): Promise<ReadPdf> =>
      read(`competitions/${bar.circle.competition.id}/${what}.pdf`, bar.circle.official);
    const blank = (await of('field-sheet')).pages.flat();
    const filled = (await of('filled-sheet')).pages.flat();
    expect(blank).toEqual(expect.arrayContaining(['1.75', '1.80', '1.85']));
    expect(blank).not.toContain('XO');
    expect(filled).toContain('XO');
  });

  it('shows whole names to the crew, and to others what the meet shows', async () => {
    const circle = await Circle.open(api);
    const { athleteCreate } = await api.data(
      `mutation { athleteCreate(input: { givenName: "Odalys", familyName: "Thornwick", sex: W, birthDate: "2014-02-03" }) { athlete { id } } }`,
      {},
      api.adminToken,
    );
    await api.data(
      `mutation ($input: CompetitorEnterInput!) { competitorEnter(input: $input) { userErrors { code } } }`,
      { input: { competitionId: circle.competition.id, athleteId: athleteCreate.athlete.id, bib: '77' } },
      circle.director,
    );
    const path = `competitions/${circle.competition.id}/start-list.pdf`;
    expect((await read(path, circle.official)).pages.flat()).toContain('Odalys Thornwick');
    const seen = (await read(path, null)).pages.flat();
    expect(seen.join(' ')).not.toContain('Thornwick');
    expect(seen).toContain('77');
  });
});

describe('the reasons of the places', () => {
  it.each([
    ['en', 'best 61.10', 'level on 58.10; then 57.44 against 57.50', 'No valid mark yet'],
    ['de', 'Bestweite 61,10', '57,44', 'Noch kein gültiger Versuch'],
  ])('are in the language of the paper: %s', async (language, first, second, third) => {
    const circle = await Circle.open(api, discusSheet(4));
    await circle.recordCard(['58.10', '57.44'], ['61.10'], ['58.10', '57.50'], ['X']);
    const path = `competitions/${circle.competition.id}/result.pdf?lang=${language}`;
    const text = (await read(path, circle.official)).pages.flat().join(' ');
    for (const part of [first, second, third]) expect(text).toContain(part);
  });
});

describe('the form of a record', () => {
  it('says what is known, leaves room for the rest, and is for the crew alone', async () => {
    const scene = await RecordScene.open(api);
    await scene.starting({ mark: '45.00' });
    const discus = await scene.competition();
    const path = `competitions/${discus.id}/record-form.pdf`;
    expect((await fetchPaper(path, discus.official)).status).toBe(404);
    await discus.record(1, 1, '46.10');
    const text = (await read(`${path}?lang=de`, discus.official)).pages.flat().join(' ');
    for (const part of ['Vereinsrekord', '46,10', '45,00', 'Nachgemessen', 'Maren Thistlewood'])
      expect(text).toContain(part);
    expect((await fetchPaper(path, null)).status).toBe(404);
  });
});

describe('papers of a meet', () => {
  it('list the first three of each final', async () => {
    const circle = await Circle.open(api);
    await circle.recordCard(['58.10'], ['60.00'], ['61.10']);
    const text = (await read(`meets/${circle.meet.id}/first-three.pdf`, null)).pages.flat();
    expect(text.filter((one) => /^\d\d\.\d\d$/.test(one))).toEqual(['61.10', '60.00', '58.10']);
  });

  it('show the clubs once it is said how they are scored', async () => {
    const circle = await Circle.open(api, discusSheet(0, { competitors: NAMED.slice(0, 2) }));
    const path = `meets/${circle.meet.id}/club-table.pdf`;
    expect((await fetchPaper(path, circle.director)).status).toBe(404);
    await api.data(
      `mutation ($input: MeetScoringSetInput!) { meetScoringSet(input: $input) { userErrors { code } } }`,
      { input: { meetId: circle.meet.id, preset: 'DUAL' } },
      circle.director,
    );
    await circle.recordCard(['58.10']);
    const text = (await read(path, circle.director)).pages.flat();
    expect(text).toEqual(expect.arrayContaining(['Saltmarsh AC', '5']));
  });
});

describe('a request for a paper', () => {
  it.each([
    ['?paper=A0', 400],
    ['?lang=tlh', 400],
  ])('with %s is answered %d as a problem', async (query, status) => {
    const circle = await Circle.open(api);
    const answer = await fetchPaper(`competitions/${circle.competition.id}/result.pdf${query}`, null);
    expect(answer.status).toBe(status);
    expect(answer.headers.get('content-type')).toMatch(/^application\/problem\+json/);
  });

  it.each(['competitions/nothing/result.pdf', 'meets/nothing/first-three.pdf'])(
    'for %s is answered 404',
    async (path) => {
      expect((await fetchPaper(path, null)).status).toBe(404);
    },
  );

  it('for something that is not printed is answered 404, and with a bad token 401', async () => {
    const circle = await Circle.open(api);
    const path = `competitions/${circle.competition.id}`;
    expect((await fetchPaper(`${path}/poem.pdf`, circle.official)).status).toBe(404);
    expect((await fetchPaper(`${path}/result.pdf`, 'nonsense')).status).toBe(401);
  });
});
