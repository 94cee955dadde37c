import { randomUUID } from 'node:crypto';
import pg from 'pg';
import { signedInPerson } from '../support/accounts.js';
import { startApi, type TestApi } from '../support/api.js';
import { Circle } from '../support/at-the-circle.js';
import { attemptOf } from '../support/circle.js';
import { enter, makeMeet, type MadeMeet } from '../support/made-meet.js';
import { RecordScene } from '../support/record-scene.js';

/** How many statements the server sends while `work` runs. */
async function statementsOf(work: () => Promise<unknown>): Promise<number> {
  const query = Reflect.get(pg.Client.prototype, 'query') as (...given: unknown[]) => unknown;
  let count = 0;
  const counting = function (this: pg.Client, ...given: unknown[]): unknown {
    count++;
    return Reflect.apply(query, this, given);
  };
  Reflect.set(pg.Client.prototype, 'query', counting);
  try {
    await work();
  } finally {
    Reflect.set(pg.Client.prototype, 'query', query);
  }
  return count;
}

describe('The number of statements', () => {
  let api: TestApi;
  let meets: MadeMeet[];

  beforeAll(async () => {
    api = await startApi();
    meets = [];
    for (let index = 0; index < 4; index++) {
      const meet = await makeMeet(api, { startsOn: `2026-06-0${index + 1}` });
      for (const bib of ['1', '2', '3'].slice(0, index)) await enter(api, meet, { bib });
      meets.push(meet);
    }
  });
  afterAll(() => api.close());

  it('does not grow with the meets, competitions and competitors that are asked for', async () => {
    const page = (first: number) =>
      api.data(
        `{ meets(first: ${first}) { edges { node { competitions { title meet { name } startList { displayName club } } } } } }`,
        {},
        api.adminToken,
      );
    await page(4);
    const [one, four] = [await statementsOf(() => page(1)), await statementsOf(() => page(4))];
    expect(one).toBeGreaterThan(0);
    expect(four).toBe(one);
    expect(four).toBeLessThanOrEqual(6);
  });

  it('of an attempt is the same with records as without, unless it asks what the mark would be', async () => {
    const scene = await RecordScene.open(api);
    const discus = await scene.competition();
    const record = (round: number, asked: string): Promise<number> =>
      statementsOf(() =>
        api.data(
          `mutation ($input: AttemptRecordInput!) { attemptRecord(input: $input) { entry { id } ${asked} } }`,
          {
            input: {
              ...{ competitionId: discus.id, entryId: randomUUID(), competitorId: discus.competitors[0] },
              ...{ round, ...attemptOf('49.10') },
            },
          },
          discus.official,
        ),
      );
    await record(1, 'wouldBe { kind }');
    const plain = await record(2, '');
    // Begin, lock, append, commit.
    expect(plain).toBe(4);
    const asking = await record(3, 'wouldBe { kind }');
    for (const mark of ['44.00', '45.00', '46.00']) await scene.starting({ mark });
    const others = await Promise.all(
      ['SHOT', 'DISCUS', 'DISCUS'].map((event) => scene.competition({ event })),
    );
    await others[1]!.record(1, 1, '30.00');
    await record(4, 'wouldBe { kind }');
    expect(await record(5, 'wouldBe { kind }')).toBe(asking);
  });

  it('of an attempt is the same for a person who signed in: who that is and may is in memory', async () => {
    const circle = await Circle.open(api);
    const person = await signedInPerson(api, [{ role: 'OFFICIAL', on: circle.competition.id }]);
    await circle.record(1, 1, '48.10', {}, person.accessToken);
    const count = await statementsOf(() => circle.record(2, 1, '49.10', {}, person.accessToken));
    // Begin, lock, append, commit.
    expect(count).toBe(4);
  });
});
