import { randomUUID } from 'node:crypto';
import {
  athletes,
  clubs,
  competitions,
  competitors,
  inSnapshot,
  inTransaction,
  journal,
  meets,
  officialResults,
  openDatabase,
  organisations,
  PageError,
  reading,
  violationOf,
  type Database,
  type Page,
  type PageRequest,
} from '#persistence';
import { migratedDatabase, type TestDatabase } from '../support/database.js';
import {
  athleteOf,
  attemptOf,
  competitionOf,
  competitorOf,
  highJumpOf,
  makeScene,
  meetOf,
  type Scene,
} from './fixture.js';

let test: TestDatabase;
let database: Database;
let scene: Scene;

beforeAll(async () => {
  test = await migratedDatabase();
  database = await openDatabase({ url: test.url });
});

afterAll(async () => {
  await database.destroy();
  await test.drop();
});

beforeEach(async () => {
  scene = await makeScene(database);
});

/** What a competition has that nobody has said anything about. */
const BEGINNING = {
  ...{ status: 'draft', version: 0, lastSequence: 0 },
  ...{ callingGroupId: null, callingPosition: null, categoryScheme: null },
  ...{ isWithheld: false, withheldUntil: null },
};

describe('what is stored comes back as it was', () => {
  it('for an athlete, with the birthday as a day in every time zone', async () => {
    const [row] = await reading(database, (at) =>
      athletes.byIds(at, scene.organisationId, [scene.athleteId]),
    );
    expect({ ...row }).toEqual(athleteOf(scene));
  });

  it('for a meet, with instants as text in UTC', async () => {
    const publishedAt = '2026-05-01T10:00:00.123Z';
    await inTransaction(database, (tx) =>
      meets.update(tx, scene.organisationId, scene.meetId, { publishedAt }),
    );
    const row = await reading(database, (at) => meets.find(at, scene.organisationId, scene.meetId));
    expect({ ...row }).toEqual(meetOf(scene, { publishedAt }));
  });

  it('for a competition, which begins as an empty draft', async () => {
    const row = await reading(database, (at) =>
      competitions.find(at, scene.organisationId, scene.competitionId),
    );
    expect({ ...row }).toEqual({ ...competitionOf(scene), ...BEGINNING });
  });

  it('for a qualification with a scoring', async () => {
    const row = competitionOf(scene, {
      id: randomUUID(),
      stage: 'qualification',
      qualifying: { standard: 5800, fill: 12 },
      scoring: { places: [8, '7.5', 6], scorersPerClub: null, nonScorers: 'hold' },
    });
    await inTransaction(database, (tx) => competitions.insert(tx, row));
    expect(
      await reading(database, (at) => competitions.find(at, scene.organisationId, row.id)),
    ).toMatchObject(row);
  });

  it('for a high jump with its heights and terms, found and locked', async () => {
    const row = highJumpOf(scene);
    await inTransaction(database, (tx) => competitions.insert(tx, row));
    const whole = { ...row, ...BEGINNING };
    const found = await reading(database, (at) => competitions.find(at, scene.organisationId, row.id));
    expect({ ...found }).toEqual(whole);
    expect(
      await inTransaction(database, (tx) => competitions.lock(tx, scene.organisationId, row.id)),
    ).toEqual(whole);
  });

  it('for a start list, in its order', async () => {
    const rows = await reading(database, (at) =>
      competitors.ofCompetition(at, scene.organisationId, scene.competitionId),
    );
    expect(rows.map((row) => ({ ...row }))).toEqual([
      competitorOf(scene, 1, { athleteId: scene.athleteId, clubId: scene.clubId }),
      competitorOf(scene, 2, { listedName: 'Mira Tolve', listedClub: 'Harbour School' }),
    ]);
  });

  it('and is not found under another organisation', async () => {
    const elsewhere = randomUUID();
    expect(await reading(database, (at) => meets.find(at, elsewhere, scene.meetId))).toBeNull();
    expect(
      await inTransaction(database, (tx) =>
        meets.update(tx, elsewhere, scene.meetId, { name: 'Taken over' }),
      ),
    ).toBe(false);
    expect(
      await inTransaction(database, (tx) => competitions.lock(tx, elsewhere, scene.competitionId)),
    ).toBeNull();
  });
});

describe('a competition', () => {
  const bump = (): Promise<number> =>
    inTransaction(database, (tx) => competitions.bumpVersion(tx, scene.organisationId, scene.competitionId));
  const retitle = (expected: number): Promise<number | null> =>
    inTransaction(database, (tx) =>
      competitions.updateAt(tx, scene.organisationId, scene.competitionId, expected, {
        title: `At ${expected}`,
      }),
    );

  it('is changed by who knows its version, once', async () => {
    expect(await retitle(0)).toBe(1);
    expect(await retitle(0)).toBeNull();
    const answers = await Promise.all([retitle(1), retitle(1), retitle(1)]);
    expect(answers.filter((version) => version === 2)).toHaveLength(1);
    expect(answers.filter((version) => version === null)).toHaveLength(2);
  });

  it('has a version that only rises', async () => {
    expect([await bump(), await bump()]).toEqual([1, 2]);
    expect(
      await reading(database, (at) => competitions.versionOf(at, scene.organisationId, scene.competitionId)),
    ).toBe(2);
    expect(
      await reading(database, (at) => competitions.versionOf(at, scene.organisationId, randomUUID())),
    ).toBeNull();
  });

  it('takes a new order of competition, in which nobody needs a free position on the way', async () => {
    const [first, second] = scene.competitorIds;
    const moved = await inTransaction(database, (tx) =>
      competitors.reposition(tx, scene.organisationId, scene.competitionId, [second, first]),
    );
    expect(moved).toBe(2);
    const rows = await reading(database, (at) =>
      competitors.ofCompetition(at, scene.organisationId, scene.competitionId),
    );
    expect(rows.map(({ id, position }) => [id, position])).toEqual([
      [second, 1],
      [first, 2],
    ]);
  });

  it('refuses a bib that is taken when the transaction ends', async () => {
    const clash = inTransaction(database, (tx) =>
      competitors.update(tx, scene.organisationId, scene.competitorIds[0], { bib: '102' }),
    );
    const error: unknown = await clash.catch((reason: unknown) => reason);
    expect(violationOf(error)).toEqual({ kind: 'unique', constraint: 'competitor_bib_unique' });
  });

  it('is archived once for each signature, the latest of which counts', async () => {
    const { organisationId, competitionId } = scene;
    const sign = (sequence: number, signedBy: string): Promise<{ readonly revision: number }> =>
      inTransaction(database, (tx) =>
        officialResults.archive(tx, {
          organisationId,
          competitionId,
          sequence,
          sheet: { a: 1 },
          result: { b: [2] },
          signedBy,
          confirmedBy: null,
        }),
      );
    expect(await sign(0, 'referee')).toMatchObject({ revision: 1 });
    await inTransaction(database, (tx) => journal.append(tx, attemptOf(scene)));
    expect(await sign(1, 'jury')).toMatchObject({ revision: 2 });
    expect(
      await reading(database, (at) => officialResults.latest(at, organisationId, competitionId)),
    ).toMatchObject({
      revision: 2,
      sequence: 1,
      sheet: { a: 1 },
      result: { b: [2] },
      signedBy: 'jury',
      signedAt: expect.stringMatching(/^\d{4}-\d\d-\d\dT[\d:.]+Z$/),
    });
    const all = await reading(database, (at) =>
      officialResults.ofCompetition(at, organisationId, competitionId),
    );
    expect(all.map(({ revision }) => revision)).toEqual([2, 1]);
  });
});

describe('a page', () => {
  async function walk<T>(ask: (request: PageRequest) => Promise<Page<T>>): Promise<T[]> {
    const rows: T[] = [];
    let after: string | null = null;
    for (;;) {
      const page: Page<T> = await ask({ first: 3, after });
      rows.push(...page.edges.map(({ row }) => row));
      if (!page.hasNextPage) return rows;
      after = page.edges.at(-1)!.cursor;
    }
  }

  it('of athletes follows another by name, also through namesakes', async () => {
    const names = ['Berg', 'Berg', 'Berg', 'Berg', 'Ähren', 'Zoll', "D'Arcy", 'Ĳssel'];
    await inTransaction(database, async (tx) => {
      for (const familyName of names)
        await athletes.insert(tx, athleteOf(scene, { id: randomUUID(), familyName }));
    });
    const rows = await walk((request) =>
      reading(database, (at) => athletes.page(at, scene.organisationId, request)),
    );
    expect(rows).toHaveLength(names.length + 1);
    expect(new Set(rows.map(({ id }) => id)).size).toBe(rows.length);
    expect(rows.filter(({ familyName }) => familyName === 'Berg')).toHaveLength(4);
  });

  it('of clubs follows another by name', async () => {
    await inTransaction(database, async (tx) => {
      for (const name of ['A', 'B', 'C', 'D', 'E'])
        await clubs.insert(tx, { organisationId: scene.organisationId, id: randomUUID(), name });
    });
    const rows = await walk((request) =>
      reading(database, (at) => clubs.page(at, scene.organisationId, request)),
    );
    expect(rows.map(({ name }) => name)).toEqual(['A', 'B', 'C', 'D', 'E', 'Lindenau']);
  });

  it('of meets begins with the latest, and can leave out what is not public', async () => {
    await inTransaction(database, async (tx) => {
      for (let day = 1; day <= 7; day += 1) {
        const startsOn = `2026-06-0${day}`;
        const publishedAt = day % 2 === 0 ? '2026-01-01T00:00:00.000Z' : null;
        await meets.insert(tx, meetOf(scene, { id: randomUUID(), startsOn, endsOn: startsOn, publishedAt }));
      }
    });
    const all = await walk((request) =>
      reading(database, (at) => meets.page(at, scene.organisationId, request)),
    );
    expect(all.map(({ startsOn }) => startsOn.slice(5))).toEqual([
      '06-07',
      '06-06',
      '06-05',
      '06-04',
      '06-03',
      '06-02',
      '06-01',
      '05-09',
    ]);
    const published = await reading(database, (at) =>
      meets.page(at, scene.organisationId, { first: 100, published: true }),
    );
    expect(published.edges.map(({ row }) => row.startsOn.slice(8))).toEqual(['06', '04', '02']);
  });

  it('of a journal follows another in the order of recording', async () => {
    await inTransaction(database, async (tx) => {
      for (let entry = 0; entry < 7; entry += 1) await journal.append(tx, attemptOf(scene));
    });
    const rows = await walk((request) =>
      reading(database, (at) => journal.page(at, scene.organisationId, scene.competitionId, request)),
    );
    expect(rows.map(({ sequence }) => sequence)).toEqual([1, 2, 3, 4, 5, 6, 7]);
  });

  it.each([0, -1, 101, 1.5, Number.NaN])('of %p rows is refused', async (first) => {
    const asking = reading(database, (at) => athletes.page(at, scene.organisationId, { first }));
    await expect(asking).rejects.toMatchObject({ name: 'PageError', field: 'first' });
  });

  it.each([
    'nonsense',
    '',
    Buffer.from('[]').toString('base64url'),
    Buffer.from('{"length":2}').toString('base64url'),
    Buffer.from('["2026-01-01","1; DROP TABLE meet"]').toString('base64url'),
    Buffer.from('["2026-02-31","00000000-0000-0000-0000-000000000000"]').toString('base64url'),
    Buffer.from('[{"a":1},null]').toString('base64url'),
  ])('after %p is refused', async (after) => {
    const asking = reading(database, (at) => meets.page(at, scene.organisationId, { first: 1, after }));
    await expect(asking).rejects.toBeInstanceOf(PageError);
  });
});

describe('a transaction', () => {
  it('leaves nothing behind when its work fails', async () => {
    const id = randomUUID();
    const failing = inTransaction(database, async (tx) => {
      await organisations.insert(tx, { id, name: 'Half done' });
      throw new Error('no further');
    });
    await expect(failing).rejects.toThrow('no further');
    expect(await reading(database, (at) => organisations.find(at, id))).toBeNull();
  });

  it('is READ COMMITTED', async () => {
    const level = await database.transaction((manager) =>
      manager.query<{ level: string }[]>(`SELECT current_setting('transaction_isolation') AS level`),
    );
    expect(level).toEqual([{ level: 'read committed' }]);
  });

  it('that only reads sees one moment, and can’t write', async () => {
    await inSnapshot(database, async (at) => {
      const before = await competitions.versionOf(at, scene.organisationId, scene.competitionId);
      await inTransaction(database, (tx) =>
        competitions.bumpVersion(tx, scene.organisationId, scene.competitionId),
      );
      expect(await competitions.versionOf(at, scene.organisationId, scene.competitionId)).toBe(before);
    });
    const writing = inSnapshot(database, (at) =>
      organisations.insert(at as never, { id: randomUUID(), name: 'Written' }),
    );
    await expect(writing).rejects.toMatchObject({ code: '25006' });
  });

  it('is of no use once it is over', async () => {
    const kept = await inTransaction(database, (tx) => Promise.resolve(tx));
    await expect(organisations.find(kept, scene.organisationId)).rejects.toThrow();
  });
});

describe('what the database can’t hold', () => {
  it.each([
    ['text with NUL', { name: 'a\u0000b' }],
    ['an id that is none', { id: 'seven' }],
  ])('%s is told as such', async (_, change) => {
    const storing = inTransaction(database, (tx) =>
      organisations.insert(tx, { id: randomUUID(), name: 'Sound', ...change }),
    );
    const error: unknown = await storing.catch((reason: unknown) => reason);
    expect(violationOf(error)).toMatchObject({ kind: 'data' });
  });

  it('is not confused with what went wrong otherwise', () => {
    expect(violationOf(new Error('connection lost'))).toBeNull();
    expect(violationOf(null)).toBeNull();
  });
});
