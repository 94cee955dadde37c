import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as delay } from 'node:timers/promises';
import { ErasureService } from '../../apps/api/src/entries/erasure.service.js';
import { ErasureLog } from '../../apps/api/src/platform/erasures/erasure-log.js';
import { startApi, type TestApi } from '../support/api.js';
import { Circle } from '../support/at-the-circle.js';
import { staffedMeet } from '../support/circle.js';
import { onConnection } from '../support/database.js';
import { listen, socketClient } from '../support/listening.js';
import { eventually } from '../support/live.js';

let api: TestApi;
let folder: string;
let file: string;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'erasures-'));
  file = join(folder, 'erasures.jsonl');
  api = await startApi({ erasures: new ErasureLog(file) });
});
afterAll(async () => {
  await api.close();
  await rm(folder, { recursive: true, force: true });
});

const COMPETITORS = [
  { bib: '1', name: 'Odalys Thornwick' },
  { bib: '2', name: 'Petra Lindqvist' },
];

async function ask(name: string, input: object, selection: string, token: string): Promise<any> {
  const type = `${name[0]!.toUpperCase()}${name.slice(1)}Input`;
  const query = `mutation ($input: ${type}!) { ${name}(input: $input) { ${selection} userErrors { code path } } }`;
  return (await api.data(query, { input }, token))[name];
}

/** A discus with an adult on record, shown by her whole name, who was also written on a list by hand elsewhere. */
async function scene() {
  const meet = await staffedMeet(api);
  const born = { birthDate: '1990-03-01', display: 'FULL', handedness: 'LEFT' };
  const named = { givenName: 'Odalys', familyName: 'Thornwick', sex: 'W', ...born };
  const { athlete } = await ask('athleteCreate', named, 'athlete { id }', meet.director);
  const circle = await Circle.open(
    api,
    {
      format: 'sectorline-sheet/1',
      rules: 'WA',
      event: 'discus',
      competitors: [{ bib: '2', name: 'Petra Lindqvist' }],
    },
    meet,
  );
  const entry = { competitionId: circle.competition.id, athleteId: athlete.id, bib: '1' };
  const { competitor } = await ask('competitorEnter', entry, 'competitor { id }', meet.director);
  Object.assign(circle.competition.competitors, { 1: competitor.id });
  await circle.recordCard(['44.10', '46.20'], ['45.00', '45.50']);
  const listed = await Circle.open(
    api,
    { format: 'sectorline-sheet/1', rules: 'WA', event: 'shot', competitors: COMPETITORS },
    meet,
  );
  await listed.recordCard(['10.10'], ['11.00']);
  return { meet, athleteId: athlete.id as string, circle, listed };
}

const erase = (athleteId: string, more: object = {}) =>
  ask(
    'athleteErase',
    { athleteId, ...more },
    'athlete { givenName familyName birthDate display isErased } listedLines isReplay',
    api.adminToken,
  );

/** Everything that anybody is answered about a competition, as text. */
async function everywhere({ competition, director, meet }: Circle): Promise<string> {
  const query = `query ($id: ID!) { competition(id: $id) { sheet result
    startList { bib displayName } table { rows { bib name club place mark } } progress { up { bib name } } claims { kind } } }`;
  const paths = [
    `/public/competitions/${competition.id}.json`,
    `/public/meets/${meet.id}.json`,
    `/public/graphql?documentId=competition-table&variables=${encodeURIComponent(JSON.stringify({ id: competition.id }))}`,
  ];
  const answers = await Promise.all([
    api.data(query, { id: competition.id }, director),
    api.data(query, { id: competition.id }),
    ...paths.map(async (path) => (await fetch(`${api.url}${path}`)).text()),
  ]);
  return JSON.stringify(answers);
}

describe('an athlete who is erased', () => {
  it('is nobody everywhere and at once, and what she did stays to the byte', async () => {
    const { athleteId, circle, listed } = await scene();
    const result = async (): Promise<string> =>
      JSON.stringify(
        (
          await api.data(
            `query ($id: ID!) { competition(id: $id) { result } }`,
            { id: circle.competition.id },
            circle.director,
          )
        ).competition.result,
      );
    const ranking = async () => (await circle.read()).table.rows;
    const [resultBefore, rankingBefore] = [await result(), await ranking()];
    expect(await everywhere(circle)).toContain('Odalys Thornwick');
    const client = socketClient(api.url);
    const listener = listen(client, { id: circle.competition.id, since: null });
    await eventually(
      () => listener.seen.length,
      (count) => count > 0,
    );

    const erased = await erase(athleteId, { alsoListedAs: ['odalys thornwick'] });
    expect(erased).toMatchObject({ listedLines: 1, isReplay: false, userErrors: [] });
    expect(erased.athlete).toMatchObject({
      givenName: 'Athlete',
      birthDate: null,
      display: 'BIB',
      isErased: true,
    });
    for (const at of [circle, listed]) expect(await everywhere(at)).not.toMatch(/Odalys|Thornwick/i);
    expect(await result()).toBe(resultBefore);
    expect(await ranking()).toEqual(rankingBefore);
    const told = await eventually(
      () => listener.seen.at(-1),
      ({ table }) => table.rows.some(({ name }: any) => name === '#1'),
    );
    expect(JSON.stringify(told)).not.toMatch(/Odalys/);
    await client.dispose();
    // Nothing that is stored anywhere has the name.
    const stored = await onConnection(api.databaseUrl, async (database) => {
      const { rows: tables } = await database.query<{ name: string }>(
        `SELECT table_name AS name FROM information_schema.tables WHERE table_schema = 'public' AND table_type = 'BASE TABLE'`,
      );
      const found: string[] = [];
      for (const { name } of tables) {
        const { rowCount } = await database.query(
          `SELECT FROM ${name} AS one WHERE one::text ~* 'thornwick'`,
        );
        if (rowCount! > 0) found.push(name);
      }
      return found;
    });
    expect(stored).toEqual([]);
    expect(await readFile(file, 'utf8')).not.toMatch(/thornwick/i);
  });

  it('keeps her pseudonym when it is asked for again, and cannot be given a name', async () => {
    const { athleteId } = await scene();
    const { athlete } = await erase(athleteId);
    expect(await erase(athleteId)).toMatchObject({ athlete, isReplay: true });
    const input = { athleteId, givenName: 'Odalys' };
    const refused = await ask('athleteUpdate', input, 'athlete { id }', api.adminToken);
    expect(refused.userErrors).toEqual([{ code: 'ERASED', path: ['input', 'athleteId'] }]);
  });

  it('is erased again in a backup from before, line by line', async () => {
    const { athleteId, circle, listed } = await scene();
    const { athlete } = await erase(athleteId, { alsoListedAs: ['Odalys Thornwick'] });
    const uuid = Buffer.from(athleteId, 'base64url').toString().split(':')[1];
    const shot = Buffer.from(listed.competition.competitors['1']!, 'base64url').toString().split(':')[1];
    // As a backup of the day before knows it.
    await onConnection(api.databaseUrl, async (database) => {
      await database.query(
        `UPDATE athlete SET given_name = 'Odalys', family_name = 'Thornwick', birth_date = '1990-03-01', display = 'full', erased_at = NULL WHERE id = $1`,
        [uuid],
      );
      await database.query(`UPDATE competitor SET listed_name = 'Odalys Thornwick' WHERE id = $1`, [shot]);
    });
    const service = api.app.get(ErasureService, { strict: false });
    expect(await service.replay()).toBe(1);
    for (const at of [circle, listed]) expect(await everywhere(at)).not.toMatch(/Odalys|Thornwick/i);
    const { athlete: again } = await api.data(
      `query ($id: ID!) { athlete(id: $id) { givenName familyName } }`,
      { id: athleteId },
      api.adminToken,
    );
    expect(again).toEqual({ givenName: 'Athlete', familyName: athlete.familyName });
    expect(await service.replay()).toBe(0);
  });

  it('is not lost by a line that was not written to its end, and no other fault is passed over', async () => {
    const path = join(folder, 'torn.jsonl');
    const log = new ErasureLog(path);
    expect(await log.read()).toEqual([]);
    const text = await readFile(file, 'utf8');
    await writeFile(path, `${text}${text.slice(0, 40)}`);
    expect(await log.read()).toHaveLength(text.split('\n').length - 1);
    await writeFile(path, `{"athleteId":"x"}\n${text}`);
    await expect(log.read()).rejects.toThrow('line 1, is not an erasure');
  });
});

describe('a name in public', () => {
  it.each([
    ['FULL', 'Odalys Thornwick'],
    ['INITIALS', 'O. T.'],
    ['BIB', '#1'],
  ])('is what the athlete chose: %s', async (display, shown) => {
    const { athleteId, circle, meet } = await scene();
    await ask('athleteUpdate', { athleteId, display }, 'athlete { id }', meet.director);
    const { rows } = await (
      await fetch(`${api.url}/public/competitions/${circle.competition.id}.json`)
    ).json();
    expect(rows.find(({ bib }: any) => bib === '1').name).toBe(shown);
  });
});

describe('a competition that is withheld', () => {
  const withhold = (circle: Circle, input: object) =>
    ask(
      'competitionWithhold',
      { competitionId: circle.competition.id, ...input },
      'competition { isWithheld }',
      circle.director,
    );

  it('shows nothing to those who do not work at it, by any door, and all of it to those who do', async () => {
    const { circle, meet } = await scene();
    const { id } = circle.competition;
    const client = socketClient(api.url);
    const listener = listen(client, { id, since: null });
    await eventually(
      () => listener.seen.length,
      (count) => count > 0,
    );
    await withhold(circle, { isWithheld: true });
    // Whoever listens hears no more of it.
    expect(await listener.ended).toBeUndefined();
    await client.dispose();
    const doors = `query ($id: ID!, $meet: ID!) {
      competition(id: $id) { table { rows { mark } } }
      meet(id: $meet) { competitions { id title } clubTable { competitions { __typename } } recordLists { event best { mark } } }
    }`;
    const ofPublic = await api.send(doors, { id, meet: meet.id });
    expect(ofPublic.errors).toBeUndefined();
    expect(ofPublic.data.competition).toBeNull();
    expect(ofPublic.data.meet.competitions).toHaveLength(1);
    expect(JSON.stringify(ofPublic.data)).not.toContain('46.20');
    const official = await api.data(doors, { id, meet: meet.id }, circle.official);
    expect(official.competition.table.rows[0].mark).toBe('46.20');
    for (const path of [`/public/competitions/${id}.json`, `/public/competitions/${id}/events`])
      expect((await fetch(`${api.url}${path}`)).status).toBe(404);
    const overview = await (await fetch(`${api.url}/public/meets/${meet.id}.json`)).text();
    expect(overview).not.toContain(id);
    expect((await fetch(`${api.url}/print/competitions/${id}/result.pdf`)).status).toBe(404);
    await withhold(circle, { isWithheld: false });
    expect((await circle.read(null).catch(() => null)) ?? 'journal is for the crew').toBeTruthy();
    expect((await fetch(`${api.url}/public/competitions/${id}.json`)).status).toBe(200);
  });

  it('is let go by itself at the moment that was said', async () => {
    const { circle } = await scene();
    const until = new Date(Date.now() + 1_500).toISOString();
    await withhold(circle, { isWithheld: true, until });
    const TABLE = `query ($id: ID!) { competition(id: $id) { table { rows { mark } } } }`;
    const mark = async () =>
      (await api.data(TABLE, { id: circle.competition.id })).competition?.table.rows[0].mark ?? null;
    expect([await mark(), await mark()]).toEqual([null, null]);
    await delay(1_600);
    expect(await mark()).toBe('46.20');
  });
});
