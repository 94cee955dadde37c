import { randomUUID } from 'node:crypto';
import { join } from 'node:path';
import { parse } from 'csv-parse/sync';
import { HtmlValidate } from 'html-validate';
import ICAL from 'ical.js';
import ts from 'typescript';
import { startApi, type TestApi } from '../support/api.js';
import { Bar, highJumpSheet } from '../support/at-the-bar.js';
import { Circle } from '../support/at-the-circle.js';
import { discusSheet, staffedMeet } from '../support/circle.js';
import { readPdf } from '../support/read-pdf.js';
import { crowdScene, PRIVATE, type CrowdScene } from '../support/crowd-scene.js';

/** As the validator is told of elements of our own: they hold what a section holds. */
const OWN_ELEMENTS = {
  'sectorline-results': { flow: true, permittedContent: ['@flow'] },
  'sectorline-announcer': { flow: true, permittedContent: ['@flow'] },
};

let api: TestApi;
let crowd: CrowdScene;
/** What the crowd finds of it, by address. */
let pages: Map<string, { type: string; text: string }>;
beforeAll(async () => {
  api = await startApi();
  crowd = await crowdScene(api);
  const { scene, discus } = crowd;
  const embedded = [
    ...[`competitions/${discus.id}`, `meets/${scene.meet.id}`, `clubs/${scene.clubId}`],
    `club-tables/${scene.meet.id}`,
  ];
  pages = await crawl(['/', `/clubs/${scene.clubId}`, ...embedded.map((path) => `/embed/${path}`)]);
});
afterAll(() => api.close());

const get = (path: string, headers: Record<string, string> = {}): Promise<Response> =>
  fetch(`${api.url}${path}`, { headers });
const read = async (path: string): Promise<any> => (await get(path)).json();
const table = (circle: Circle): Promise<any> => read(`/public/competitions/${circle.competition.id}.json`);

describe('what everybody may read of a competition', () => {
  it('is each trial, the places with their reasons, what is needed now and who is up', async () => {
    const circle = await Circle.open(api, discusSheet(3, { event: 'discus' }));
    await circle.recordCard(['58.10', '57.02'], ['58.10', '57.44'], ['X']);
    const shown = await table(circle);
    expect(shown).toMatchObject({
      format: 'sectorline-public-competition/1',
      event: 'discus',
      ...{ kind: 'rounds', unit: 'cm', state: 'running', round: 2, rounds: 6, isDisputed: false },
      meet: { name: 'Heron Field Open', timeZone: 'Europe/London' },
    });
    expect(shown.calls.map(({ bib, round }: any) => [bib, round])).toEqual([
      ['3', 2],
      ['1', 3],
      ['2', 3],
    ]);
    const [first, second, third] = shown.rows;
    expect(first).toMatchObject({
      ...{ bib: '2', name: '#2', place: 1, mark: '58.10' },
      trials: [
        { round: 1, cell: '58.10', isBest: true },
        { round: 2, cell: '57.44', isBest: false },
      ],
    });
    expect(second).toMatchObject({
      ...{ place: 2, reason: '2nd: equal best 58.10; second best 57.02 against 57.44', rule: 'WA TR25.22' },
      why: { by: 'mark', nth: 2, level: ['58.10'], own: '57.02', other: '57.44' },
      needs: { places: [{ place: 1, mark: '57.44', isShared: false }] },
    });
    expect(third).toMatchObject({ place: null, mark: null, why: null, trials: [{ cell: 'X' }] });
  });

  it('says where the cut lies among more than may go on', async () => {
    const circle = await Circle.open(api, discusSheet(9));
    const marks = Array.from({ length: 9 }, (_, at) => [`4${9 - at}.00`]);
    await circle.recordCard(...marks);
    const { cuts, rows } = await table(circle);
    expect(cuts).toMatchObject([{ afterRound: 3, line: '42.00' }]);
    // Level on 42.00, and 41.00 before against nothing.
    expect(rows[8].needs.cut).toEqual({ afterRound: 3, isIn: false, mark: '42.00', isEqualEnough: true });
    expect(rows[0].needs.cut).toMatchObject({ isIn: true });
  });

  it('at a bar is where it lies, and the tries at each height', async () => {
    const bar = await Bar.open(api, highJumpSheet(2, ['1.70', '1.75']));
    await bar.height('1.70', 'O', 'XO');
    const shown = await table(bar.circle);
    expect(shown).toMatchObject({
      kind: 'bar',
      bar: { height: '1.75' },
      heights: ['1.70', '1.75'],
      rounds: null,
    });
    expect(shown.rows.map(({ heights }: any) => heights.map(({ cell }: any) => cell))).toEqual([
      ['O', null],
      ['XO', null],
    ]);
    expect(shown.rows[1].why).toMatchObject({ by: 'height', decidedBy: 'failures at height' });
  });

  it('says plainly that it was stopped, and no closer why than the crowd has to know', async () => {
    const circle = await Circle.open(api);
    const seenAt = '2026-06-13T12:00:00Z';
    const stop = { cause: 'INJURY', note: 'a dog from the quarry', seenAt };
    await circle.enter('competitionInterrupt', stop);
    expect((await table(circle)).stop).toEqual({
      ...{ cause: 'safety', since: '2026-06-13T12:00:00.000Z', notBefore: null },
    });
    await circle.enter('competitionInterrupt', { ...stop, cause: 'LIGHTNING' });
    const shown = await table(circle);
    expect(shown.stop).toMatchObject({ cause: 'lightning', notBefore: '2026-06-13T12:30:00.000Z' });
    expect(shown.calls).toEqual([]);
  });

  it('says that a result is complete, under protest, posted, official', async () => {
    const circle = await Circle.open(api, discusSheet(2, { plan: { rounds: 1, cuts: [] } }));
    await circle.record(1, 1, '50.00');
    await circle.record(2, 1, 'X', { protestedMark: '51.00' });
    const shown = await table(circle);
    expect(shown).toMatchObject({ state: 'under protest', isDisputed: true });
    expect(shown.ifProtestsSucceed.map(({ place, mark }: any) => [place, mark])).toEqual([
      [1, '51.00'],
      [2, '50.00'],
    ]);
    const single = await Circle.open(api, discusSheet(1, { plan: { rounds: 1, cuts: [] } }));
    await single.recordCard(['50.00']);
    expect((await table(single)).state).toBe('unofficial');
    const version = async (): Promise<number> => (await single.read()).version;
    const post = {
      entryId: randomUUID(),
      competitionId: single.competition.id,
      expectedVersion: await version(),
    };
    await api.data(
      `mutation ($input: ResultPostInput!) { resultPost(input: $input) { userErrors { code } } }`,
      { input: { ...post, postedAt: '2026-06-13T12:00:00Z' } },
      single.referee,
    );
    expect((await table(single)).state).toBe('posted');
    await single.enter('competitionSignOff', { expectedVersion: await version() }, single.referee);
    expect((await table(single)).state).toBe('official');
  });
});

describe('beside the competitions', () => {
  it('a meet is seen at a glance, with what is delayed and why', async () => {
    const circle = await Circle.open(api);
    const slots = [
      {
        competitionIds: [circle.competition.id],
        facility: 'cage',
        startsAt: '2026-06-13T10:00:00Z',
        minutes: 60,
      },
    ];
    const plan = { meetId: circle.meet.id, expectedRevision: 0, slots };
    await api.data(
      `mutation ($input: TimetableSetInput!) { timetableSet(input: $input) { userErrors { code } } }`,
      { input: { ...plan, facilities: [{ key: 'cage', name: 'Cage, north' }], sharedGrounds: [] } },
      circle.director,
    );
    await api.data(
      `mutation ($input: TimetableDelayInput!) { timetableDelay(input: $input) { userErrors { code } } }`,
      {
        input: {
          ...{ competitionId: circle.competition.id, expectedRevision: 1, minutes: 20 },
          reason: 'the cage gate had to be mended',
        },
      },
      circle.director,
    );
    const meet = await read(`/public/meets/${circle.meet.id}.json`);
    const delay = {
      ...{ plannedAt: '2026-06-13T10:00:00.000Z', startsAt: '2026-06-13T10:20:00.000Z' },
      reason: 'the cage gate had to be mended',
    };
    expect(meet).toMatchObject({
      format: 'sectorline-public-meet/1',
      hasClubTable: false,
      competitions: [{ facility: 'Cage, north', state: 'scheduled', competitors: 3, delay, leaders: [] }],
    });
    expect(await table(circle)).toMatchObject({ delay, startsAt: delay.startsAt });
    await circle.recordCard(['50.00']);
    expect(await read(`/public/meets/${circle.meet.id}.json`)).toMatchObject({
      competitions: [{ state: 'running', round: 1, delay: null, leaders: [{ mark: '50.00' }] }],
    });
  });

  it('a club has its athletes, its points, and pages for those alone who are shown by their whole name', async () => {
    const { scene, discus } = crowd;
    const { meets, name } = await read(`/public/clubs/${scene.clubId}.json`);
    expect(name).toBe(scene.club);
    expect(meets).toHaveLength(1);
    const { lines } = meets[0].competitions[0];
    expect(lines.map((line: any) => [line.name, line.mark, line.athlete !== null])).toEqual([
      ['Maren Thistlewood', '36.22', true],
      ['W. O.', '31.05', false],
      ['#3', null, false],
    ]);
    expect(await read(`/public/athletes/${lines[0].athlete}.json`)).toMatchObject({
      name: 'Maren Thistlewood',
      meets: [{ competitions: [{ id: discus.id, lines: [{ mark: '36.22' }] }] }],
    });
    for (const athlete of scene.athletes.slice(1)) {
      expect((await get(`/public/athletes/${athlete}.json`)).status).toBe(404);
    }
    expect(await read(`/public/club-tables/${scene.meet.id}.json`)).toMatchObject({
      isProvisional: true,
      clubs: [{ place: 1, club: scene.club, points: '8' }],
      events: [{ points: [{ points: '5' }, { points: '3' }] }],
    });
  });
});

describe('the crowd', () => {
  it('may read from any site, keeps it a while, and is told when nothing has changed', async () => {
    const circle = await Circle.open(api);
    await circle.recordCard(['50.00']);
    const path = `/public/competitions/${circle.competition.id}.json`;
    const answer = await get(path, { origin: 'https://harriers.example' });
    expect(answer.headers.get('access-control-allow-origin')).toBe('*');
    expect(answer.headers.get('content-type')).toBe('application/json; charset=utf-8');
    expect(answer.headers.get('cache-control')).toBe('public, max-age=2');
    const etag = answer.headers.get('etag')!;
    const again = await get(path, { 'if-none-match': etag });
    expect([again.status, await again.text()]).toEqual([304, '']);
    await circle.record(2, 1, '51.00');
    const fresh = await get(path, { 'if-none-match': etag });
    expect([fresh.status, fresh.headers.get('etag') === etag]).toEqual([200, false]);
  });

  it('is told in a problem that something is not there, or not for the public', async () => {
    const { hidden } = crowd;
    const paths = [
      ...['competitions/nothing.json', `competitions/${crowd.discus.id}`, `meets/${crowd.discus.id}.json`],
      ...[`meets/${hidden.meetId}.json`, `competitions/${hidden.competitionId}.json`],
      `athletes/${Buffer.from(`Athlete:${randomUUID()}`).toString('base64url')}.json`,
    ];
    for (const path of paths) {
      const answer = await get(`/public/${path}`, { authorization: `Bearer ${api.adminToken}` });
      expect([path, answer.status, answer.headers.get('content-type')]).toEqual([
        path,
        404,
        'application/problem+json; charset=utf-8',
      ]);
    }
  });
});

/** Every address of this server that is linked on what lies at `from`, and on what they lead to. */
async function crawl(from: readonly string[]): Promise<Map<string, { type: string; text: string }>> {
  const seen = new Map<string, { type: string; text: string }>();
  const waiting = [...from];
  for (let path = waiting.pop(); path !== undefined; path = waiting.pop()) {
    if (seen.has(path)) continue;
    const answer = await get(path);
    expect([path, answer.status]).toEqual([path, 200]);
    const type = answer.headers.get('content-type')!.split(';')[0]!;
    const text = type === 'application/pdf' ? await pdfText(answer) : await answer.text();
    seen.set(path, { type, text });
    if (type !== 'text/html') continue;
    for (const [, found = ''] of text.matchAll(/(?:href|src)=(?:"|&quot;)([^"&]*)/g)) {
      const url = new URL(found.replaceAll('&amp;', '&'), `${api.url}${path}`);
      // Of the languages one beside English will do.
      const isOurs = url.origin === api.url && !/\.(css|js|svg)$|lang=(fr|es|fi)/.test(url.href);
      if (isOurs) waiting.push(url.pathname + url.search);
    }
  }
  return seen;
}

const pdfText = async (answer: Response): Promise<string> =>
  (await readPdf(await answer.arrayBuffer())).pages.flat().join('\n');

describe('pages for people', () => {
  const html = (): [string, string][] =>
    [...pages].flatMap(([path, { type, text }]) => (type === 'text/html' ? [[path, text]] : []));

  it('lead from the list of meets to everything that is public, and nothing private is on the way', () => {
    const { scene, discus } = crowd;
    const paths = [...pages.keys()];
    for (const path of [
      ...[`/meets/${scene.meet.id}`, `/meets/${scene.meet.id}/clubs`, `/meets/${scene.meet.id}/screen`],
      ...[`/competitions/${discus.id}`, `/competitions/${discus.id}/announcer`, '/athletes/'],
      ...[`/public/meets/${scene.meet.id}.ics`, `/public/competitions/${discus.id}.sheet.json`],
      ...[`/public/competitions/${discus.id}.csv`, `/print/competitions/${discus.id}/result.pdf`],
    ]) {
      expect([path, paths.some((one) => one.startsWith(path))]).toEqual([path, true]);
    }
    for (const [path, { text }] of pages) {
      for (const [what, words] of Object.entries(PRIVATE)) {
        expect([path, what, words.filter((word) => text.includes(word))]).toEqual([path, what, []]);
      }
    }
    const named = [...pages].filter(([, { text }]) => text.includes('Maren Thistlewood'));
    expect(named.length).toBeGreaterThan(10);
  });

  it('are valid HTML with the table in them, in five languages', async () => {
    const validator = new HtmlValidate({
      extends: ['html-validate:recommended'],
      // Rows are laid out otherwise on narrow screens, so tables say their roles. The rest is how a renderer writes.
      rules: {
        'no-redundant-role': 'off',
        'void-style': 'off',
        'attribute-boolean-style': 'off',
        'long-title': 'off',
      },
      elements: ['html5', OWN_ELEMENTS],
    });
    expect((await validator.validateString('<p><table><b></p>')).valid).toBe(false);
    const findings: string[] = [];
    for (const [path, text] of html()) {
      const { results } = await validator.validateString(text);
      findings.push(
        ...results.flatMap(({ messages }) => messages.map((m) => `${path} ${m.ruleId} ${m.message}`)),
      );
    }
    expect(findings).toEqual([]);
    const { id } = crowd.discus;
    expect(await (await get(`/competitions/${id}?lang=de`)).text()).toMatch(/36,22.*Läuft|Läuft.*36,22/s);
    const finnish = await get(`/competitions/${id}`, { 'accept-language': 'sv, fi;q=0.9, en;q=0.1' });
    expect(finnish.headers.get('vary')).toMatch(/accept-language/i);
    expect(await finnish.text()).toMatch(/<html lang="fi">.*36,22/s);
  });

  it('run nothing foreign, and show in frames only where they are made for it', async () => {
    for (const [path] of html()) {
      const answer = await get(path);
      const policy = answer.headers.get('content-security-policy')!;
      expect(policy).toMatch(/^default-src 'none'; script-src 'self'; style-src 'self';/);
      const mayFrame = path.startsWith('/embed/');
      expect([path, policy.includes('frame-ancestors *')]).toEqual([path, mayFrame]);
      expect([path, policy.includes("frame-ancestors 'none'")]).toEqual([path, !mayFrame]);
      expect(await answer.text()).not.toMatch(/<style| style=| on\w+=|<script(?![^>]*( src=|ld\+json))/);
    }
    const nothing = await get(`/meets/${crowd.hidden.meetId}?lang=fr`);
    expect([nothing.status, await nothing.text()]).toEqual([
      404,
      expect.stringContaining('Il n’y a rien ici'),
    ]);
  });

  it('write what people wrote as text', async () => {
    const name = `<img src=x onerror=alert(1)> & "Söhne" ${randomUUID()}`;
    const meet = await staffedMeet(api, { name });
    const page = await (await get(`/meets/${meet.id}`)).text();
    expect(page).toContain('&lt;img src=x onerror=alert(1)');
    expect(page).not.toContain('<img');
    expect(dataOf(page).name).toBe(name);
  });

  /* Types of the vocabulary, as schema-dts has them from schema.org: a property that is not there does not compile. */
  it('tell search engines in words of schema.org what and whom they are about', () => {
    const blocks = html().flatMap(([, text]) => (text.includes('ld+json') ? [dataOf(text)] : []));
    expect(blocks.length).toBeGreaterThan(2);
    expect(vocabularyFaults(blocks)).toEqual([]);
    const { competitor } = dataOf(pages.get(`/competitions/${crowd.discus.id}`)!.text);
    expect(competitor.map(({ name }: any) => name)).toEqual(['Maren Thistlewood']);
  });
});

const dataOf = (page: string): any => JSON.parse(/ld\+json">(.*?)<\/script>/s.exec(page)![1]!);

/** What the compiler says of data as `SportsEvent`. */
function vocabularyFaults(blocks: readonly object[]): string[] {
  const lines = blocks.map(
    (block, at) => `export const b${at}: WithContext<SportsEvent> = ${JSON.stringify(block)};`,
  );
  // Data with a word of our own would not pass.
  const wrong = JSON.stringify({ ...blocks[0], winningThrow: '36.22' });
  lines.push(`// @ts-expect-error\nexport const wrong: WithContext<SportsEvent> = ${wrong};`);
  const source = `import type { SportsEvent, WithContext } from 'schema-dts';\n${lines.join('\n')}\n`;
  const name = join(import.meta.dirname, 'schema-org-data.ts');
  const options = {
    strict: true,
    noEmit: true,
    skipLibCheck: true,
    types: [],
    module: ts.ModuleKind.NodeNext,
  };
  const disk = ts.createCompilerHost(options);
  const host: ts.CompilerHost = {
    ...disk,
    fileExists: (path) => path === name || disk.fileExists(path),
    getSourceFile: (path, version) =>
      path === name ? ts.createSourceFile(path, source, version) : disk.getSourceFile(path, version),
  };
  const program = ts.createProgram([name], options, host);
  return ts
    .getPreEmitDiagnostics(program)
    .map(({ messageText }) => ts.flattenDiagnosticMessageText(messageText, ' '));
}

describe('what can be taken away', () => {
  it('has the same numbers in every form', async () => {
    const circle = await Circle.open(api, discusSheet(3, { event: 'long-jump' }));
    await circle.recordCard(['7.41 +1.3', '7.52 -0.4'], ['7.41 +0.2', 'X'], ['-', 'r']);
    const path = `competitions/${circle.competition.id}`;
    const { rows } = await read(`/public/${path}.json`);
    const csv: any[] = parse(await (await get(`/public/${path}.csv`)).text(), { bom: true, columns: true });
    const { competitors } = await read(`/public/${path}.sheet.json`);
    const paper = (await readPdf(await (await get(`/print/${path}/result.pdf`)).arrayBuffer())).pages.flat();
    const page = await (await get(`/competitions/${circle.competition.id}`)).text();
    const marks = rows.map(({ bib, mark, trials }: any) => [bib, mark, trials.map(({ cell }: any) => cell)]);
    expect(marks).toEqual([
      ['1', '7.52', ['7.41', '7.52']],
      ['2', '7.41', ['7.41', 'X']],
      ['3', null, ['-', 'r']],
    ]);
    expect(csv.map((row) => [row.bib, row.mark, row.trial_1, row.wind_1, row.trial_2, row.wind_2])).toEqual([
      ['1', '7.52', '7.41', '1.3', '7.52', '-0.4'],
      ['2', '7.41', '7.41', '0.2', 'X', ''],
      ['3', '', "'-", '', 'r', ''],
    ]);
    const cells = competitors.map(({ bib, series }: any) => [
      bib,
      series.map((cell: any) => cell.mark ?? cell),
    ]);
    expect(cells.map(([, own]: any) => own.length)).toEqual([2, 2, 2]);
    for (const text of ['7.52', '7.41']) {
      expect(paper.some((part) => part.includes(text))).toBe(true);
      expect(page).toContain(`>${text}<`);
      expect(JSON.stringify(competitors)).toContain(text);
    }
  });

  it('as a calendar is read by another program, and says when something begins later', async () => {
    const circle = await Circle.open(api);
    const slots = [
      {
        ...{ competitionIds: [circle.competition.id], facility: 'cage', minutes: 60 },
        startsAt: '2026-06-13T10:00:00Z',
      },
    ];
    const plan = { meetId: circle.meet.id, expectedRevision: 0, slots, sharedGrounds: [] };
    await api.data(
      `mutation ($input: TimetableSetInput!) { timetableSet(input: $input) { userErrors { code } } }`,
      { input: { ...plan, facilities: [{ key: 'cage', name: 'Cage; north, "new"' }] } },
      circle.director,
    );
    const answer = await get(`/public/meets/${circle.meet.id}.ics`);
    expect(answer.headers.get('content-type')).toBe('text/calendar; charset=utf-8');
    const text = await answer.text();
    expect(text.split('\r\n').every((line) => Buffer.byteLength(line) <= 75)).toBe(true);
    const events = new ICAL.Component(ICAL.parse(text)).getAllSubcomponents('vevent');
    const [event] = events.map((one) => new ICAL.Event(one));
    expect([events.length, event!.summary, event!.location]).toEqual([
      1,
      'Test',
      'Cage; north, "new", Heron Field',
    ]);
    expect([event!.startDate, event!.endDate].map((at) => at.toJSDate().toISOString())).toEqual([
      '2026-06-13T10:00:00.000Z',
      '2026-06-13T11:00:00.000Z',
    ]);
  });
});
