import fc from 'fast-check';
import { stringify } from 'csv-stringify/sync';
import { startApi, type TestApi } from '../support/api.js';
import { onConnection } from '../support/database.js';
import { hostileTable, soundEntries } from '../support/hostile-tables.js';
import { makeMeet, type MadeMeet } from '../support/made-meet.js';

const IS_LONG = process.env['LONG'] === '1';

let api: TestApi;
let meet: MadeMeet;
beforeAll(async () => {
  api = await startApi();
  meet = await makeMeet(api);
});
afterAll(() => api.close());

const IMPORT = `mutation ($input: EntriesImportInput!) { entriesImport(input: $input) {
  entryCount newAthleteCount newClubCount fingerprint isStored
  athleteQuestions { line candidates { line athlete { id } } } clubQuestions { name }
  userErrors { code message remedy }
} }`;

interface Answer {
  readonly status: number;
  readonly data?: any;
  readonly errors?: readonly { readonly extensions: { readonly code: string } }[];
}

async function send(input: object): Promise<Answer> {
  const response = await fetch(api.graphqlUrl, {
    method: 'POST',
    headers: { 'content-type': 'application/json', authorization: `Bearer ${meet.director}` },
    body: JSON.stringify({ query: IMPORT, variables: { input: { meetId: meet.meetId, ...input } } }),
  });
  return { status: response.status, ...((await response.json()) as Omit<Answer, 'status'>) };
}

/** Entries, athletes, clubs, and the changes of entries that are kept beside them. */
async function counts(): Promise<number[]> {
  return onConnection(api.databaseUrl, async (client) => {
    const { rows } = await client.query<Record<string, string>>(
      `SELECT (SELECT count(*) FROM competitor) AS a, (SELECT count(*) FROM athlete) AS b,
              (SELECT count(*) FROM club) AS c, (SELECT count(*) FROM entry_change) AS d`,
    );
    return Object.values(rows[0]!).map(Number);
  });
}

/** Whoever is asked about is new, and clubs are only written down. */
function decisionsOf({ athleteQuestions, clubQuestions }: any): object {
  return {
    athletes: athleteQuestions.map(({ line }: any) => ({ line, choice: 'NEW' })),
    clubs: clubQuestions.map(({ name }: any) => ({ name, choice: 'AS_WRITTEN' })),
  };
}

describe('hostile tables', () => {
  it('are answered without a fault of ours, and come in whole or not at all', async () => {
    let stored = 0;
    await fc.assert(
      fc.asyncProperty(hostileTable, async (bytes) => {
        const csv = { base64: bytes.toString('base64') };
        const before = await counts();
        const dry = await send({ csv, isDryRun: true });
        expect(dry.status).toBeLessThan(500);
        if (dry.errors) return;
        const { fingerprint, userErrors, ...looked } = dry.data.entriesImport;
        for (const { message, remedy } of userErrors) {
          expect([message, remedy].every((text: string) => text !== '')).toBe(true);
        }
        expect(await counts()).toEqual(before);
        const answer = await send({ csv, fingerprint, ...decisionsOf(looked) });
        expect(answer.status).toBeLessThan(500);
        const done = answer.data?.entriesImport;
        if (userErrors.length > 0) expect(done?.isStored ?? false).toBe(false);
        const added = done?.isStored
          ? [done.entryCount, done.newAthleteCount, done.newClubCount, done.entryCount]
          : [0, 0, 0, 0];
        if (done?.isStored) stored += 1;
        expect(await counts()).toEqual(before.map((count, at) => count + added[at]));
      }),
      { numRuns: IS_LONG ? 10_000 : 60 },
    );
    // Without any that is right nothing would have been tried.
    expect(stored).toBeGreaterThan(0);
  });
});

async function exported(meetId: string): Promise<string> {
  const response = await fetch(`${api.url}/tables/meets/${meetId}/entries.csv`, {
    headers: { authorization: `Bearer ${api.adminToken}` },
  });
  expect([response.status, response.headers.get('content-type')]).toEqual([200, 'text/csv; charset=utf-8']);
  return response.text();
}

describe('entries that are written out', () => {
  it('read in again at a copy of the meet as they were', async () => {
    await fc.assert(
      fc.asyncProperty(soundEntries, async (entries) => {
        const first = await makeMeet(api);
        const header = ['competition', 'listed_name', 'club', 'seed_mark', 'guest', 'flight'];
        const marked = entries.map((line) =>
          line.map((cell, at) =>
            (at === 1 || at === 2 || at === 5) && /^'*[=+\-@]/.test(cell) ? `'${cell}` : cell,
          ),
        );
        await bringIn(first.meetId, stringify([header, ...marked]));
        const text = await exported(first.meetId);
        const { meetCopy } = await api.data(
          `mutation ($input: MeetCopyInput!) { meetCopy(input: $input) { meet { id } userErrors { code } } }`,
          { input: { meetId: first.meetId, name: 'Once more', startsOn: '2027-05-29' } },
          api.adminToken,
        );
        await bringIn(meetCopy.meet.id, text);
        expect(await exported(meetCopy.meet.id)).toBe(text);
        expect(text.split('\r\n')).toHaveLength(entries.length + 2);
      }),
      { numRuns: IS_LONG ? 200 : 8 },
    );
  });

  it('are for directors; a start list is for everybody who may see it, with the names that are shown', async () => {
    const own = await makeMeet(api, { minorsDisplay: 'INITIALS' });
    await bringIn(own.meetId, 'competition,listed_name,seed_mark\nDiscus women,Bo Lindqvist,41.20');
    const list = (token: string | null): Promise<Response> =>
      fetch(`${api.url}/tables/competitions/${own.competitionId}/start-list.csv`, {
        headers: token === null ? {} : { authorization: `Bearer ${token}` },
      });
    expect((await list(null)).status).toBe(404);
    const publish = `mutation ($input: MeetPublishInput!) { meetPublish(input: $input) { userErrors { code } } }`;
    await api.data(publish, { input: { meetId: own.meetId } }, own.director);
    expect((await (await list(null)).text()).split('\r\n').slice(0, 2)).toEqual([
      'order,flight,bib,name,club,guest,implement_g',
      '1,,1,B. L.,,,',
    ]);
    expect((await (await list(own.director)).text()).split('\r\n')[1]).toBe('1,,1,Bo Lindqvist,,41.20,,');
    const entries = await fetch(`${api.url}/tables/meets/${own.meetId}/entries.csv`);
    expect([entries.status, (await fetch(`${api.url}/tables/meets/nothing/entries.csv`)).status]).toEqual([
      401, 404,
    ]);
  });
});

/** Looks at the table, decides and stores it. */
async function bringIn(meetId: string, text: string): Promise<void> {
  const ask = async (input: object): Promise<any> =>
    (await api.data(IMPORT, { input: { meetId, csv: { text }, ...input } }, api.adminToken)).entriesImport;
  const { fingerprint, ...looked } = await ask({ isDryRun: true });
  const done = await ask({ fingerprint, ...decisionsOf(looked) });
  expect([done.userErrors, done.isStored]).toEqual([[], true]);
}
