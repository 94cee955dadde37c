import { combinedOfficialResults } from '#persistence';
import { combinedPoints } from '#rules';
import { randomUUID } from 'node:crypto';
import { readGlobalId } from '../../apps/api/src/platform/inputs/global-id.js';
import { startApi, type TestApi } from '../support/api.js';
import { enterInJournal, staffedCompetition, staffedMeet, type StaffedMeet } from '../support/circle.js';
import { CombinedScene, held, refused, rowOf } from '../support/combined.js';
import { makeMeet } from '../support/made-meet.js';

let api: TestApi;
let meet: StaffedMeet;

beforeAll(async () => {
  api = await startApi();
  meet = await staffedMeet(api);
});
afterAll(() => api.close());

describe('the end', () => {
  /** A heptathlon of one, complete: the winner of the Olympic event of 1988 (Hand and others, 1994), winds invented. */
  async function complete(changes: object = {}): Promise<CombinedScene> {
    const scene = await CombinedScene.open(api, meet, ['1'], changes);
    await scene.time('1', 'HURDLES_100', '12.69 +1.4');
    await scene.mark('1', 'HIGH_JUMP', '1.86');
    await scene.mark('1', 'SHOT', '15.80');
    await scene.time('1', 'RUN_200', '22.56 +2.0');
    await scene.mark('1', 'LONG_JUMP', '7.27 +2.4');
    await scene.mark('1', 'JAVELIN', '45.66');
    return scene;
  }

  it('is signed and opened again by two persons where the meet says so', async () => {
    const own = await staffedMeet(api);
    const scene = await CombinedScene.open(api, own, ['1']);
    const another = {
      referee: await api.token('referee', own.id),
      director: await api.token('director', own.id),
    };
    const demand = `mutation ($input: MeetSecondPersonSetInput!) { meetSecondPersonSet(input: $input) { userErrors { code } } }`;
    await api.data(demand, { input: { meetId: own.id, needsSecondPerson: true } }, own.director);
    const say = async (name: string, token: string, entryId = randomUUID()): Promise<any> => {
      const version = await scene.version();
      const sign = { incomplete: 'darkness', expectedVersion: version };
      const more = name === 'combinedEventSignOff' ? sign : { reason: 'appeal' };
      const type = `${name[0]!.toUpperCase()}${name.slice(1)}Input`;
      const query = `mutation ($input: ${type}!) { ${name}(input: $input) {
        entry { id } isWaitingForSecondPerson combinedEvent { status } userErrors { code } } }`;
      return (await api.data(query, { input: { combinedEventId: scene.id, entryId, ...more } }, token))[name];
    };
    const waiting = { entry: null, isWaitingForSecondPerson: true, userErrors: [] };
    const id = randomUUID();
    expect(await say('combinedEventSignOff', own.referee, id)).toMatchObject(waiting);
    expect(await say('combinedEventSignOff', own.referee, id)).toMatchObject(waiting);
    expect((await say('combinedEventSignOff', own.referee)).userErrors).toEqual([{ code: 'SAME_PERSON' }]);
    expect(await say('combinedEventSignOff', another.referee)).toMatchObject({
      ...{ entry: { id: expect.any(String) }, isWaitingForSecondPerson: false },
      combinedEvent: { status: 'OFFICIAL' },
    });
    const { uuid } = readGlobalId(scene.id)!;
    const archived = await api.database.read((at) =>
      combinedOfficialResults.latest(at, api.organisationId, uuid),
    );
    expect(archived!.confirmedBy).not.toBe(archived!.signedBy);
    expect(archived!.confirmedBy).not.toBeNull();
    expect(await say('combinedEventReopen', own.director)).toMatchObject(waiting);
    expect((await say('combinedEventReopen', another.director)).combinedEvent.status).toBe('OPEN');
  });

  it('has the published total, and winds that count as their mean', async () => {
    const scene = await complete();
    expect((await scene.read()).standing.rows[0]).toMatchObject({ isWindValidForRecords: false });
    await scene.time('1', 'RUN_800', '2:08.51');
    const { standing } = await scene.read();
    expect(standing).toMatchObject({ isComplete: true, isProvisional: true });
    expect(standing.rows[0]).toMatchObject({ total: 7291, isWindValidForRecords: true });
    // +1.4, +2.0, +2.4 is a real case that counted.
    expect(standing.rows[0].wind).toEqual({
      ...{ mean: '+1.93', isLegal: true },
      ...{ reason: 'The mean wind of +1.93 m/s is within +2.0', rule: 'WA CR31, combined events' },
    });
    expect(standing.stages.map(({ rows }: any) => rows[0].total).at(-1)).toBe(7291);
  });

  it('a mean over +2.0, or a wind that is not known, is not valid for records, and the points stay', async () => {
    const scene = await complete();
    const { entry } = await scene.time('1', 'RUN_800', '2:08.51');
    expect(entry.standing).toBe('ACCEPTED');
    const journal = `query ($id: ID!) { combinedEvent(id: $id) { journal(first: 1) { edges { node { id } } } } }`;
    const { edges } = (await api.data(journal, { id: scene.id }, meet.referee)).combinedEvent.journal;
    const correct = async (wind: string): Promise<any> => {
      await scene.enter('combinedTimeCorrect', {
        ...{ targetEntryId: edges[0].node.id, outcome: 'FINISHED', time: '12.69', wind, reason: 'gauge' },
        expectedVersion: await scene.version(),
      });
      return (await scene.read()).standing.rows[0];
    };
    expect(await correct('+1.7')).toMatchObject({
      ...{ total: 7291, isWindValidForRecords: false },
      wind: { mean: '+2.03', isLegal: false },
    });
    expect(await correct('NWI')).toMatchObject({ total: 7291, wind: { mean: null, isLegal: null } });
  });

  it('is signed when all is there, archived without names, and opened again with a reason', async () => {
    const scene = await complete();
    const sign = async (more: object = {}, token = meet.referee): Promise<any> =>
      scene.enter('combinedEventSignOff', { expectedVersion: await scene.version(), ...more }, token);
    expect(await sign()).toEqual(refused('NOT_COMPLETE', 'incomplete'));
    await scene.time('1', 'RUN_800', '2:08.51');
    expect((await sign()).combinedEvent.status).toBe('OFFICIAL');
    const read = await scene.read();
    expect(read.standing).toMatchObject({ isOfficial: true, isProvisional: false, differsFromSigned: false });
    const rows = await api.database.read((at) =>
      combinedOfficialResults.latest(at, api.organisationId, readGlobalId(scene.id)!.uuid),
    );
    expect(rows?.sheet).toMatchObject({ format: 'sectorline-combined/1', rows: [{ bib: '1' }] });
    expect(JSON.stringify(rows)).not.toContain('Fieldmark');
    expect(rows?.result).toEqual(read.result);
    expect(await scene.time('1', 'RUN_800', '2:07.00')).toEqual(held('SIGNED_OFF'));
    const out = { entrantId: scene.entrants['1'], status: 'DNS' };
    expect(await scene.enter('combinedStartSet', out)).toEqual(refused('RESULT_OFFICIAL'));
    const reopen = await scene.enter('combinedEventReopen', { reason: 'photo of the 800 m' }, meet.director);
    expect(reopen.combinedEvent.status).toBe('OPEN');
  });

  it('says when a competition that it is counted from has changed after the signature', async () => {
    const scene = await CombinedScene.open(api, meet, ['1']);
    const shot = await staffedCompetition(api, meet, {
      ...{ format: 'sectorline-sheet/1', rules: 'WA', event: 'shot', plan: { rounds: 3, cuts: [] } },
      competitors: [{ bib: '1' }],
    });
    await scene.link('SHOT', shot.id);
    const put = { competitionId: shot.id, competitorId: shot.competitors['1'], round: 1, outcome: 'VALID' };
    await enterInJournal(api, shot.official, 'attemptRecord', { ...put, mark: '12.10' });
    const sign = { expectedVersion: await scene.version(), incomplete: 'storm' };
    expect((await scene.enter('combinedEventSignOff', sign)).userErrors).toEqual([]);
    expect((await scene.read()).standing.differsFromSigned).toBe(false);
    await enterInJournal(api, shot.official, 'attemptRecord', { ...put, round: 2, mark: '12.50' });
    expect((await scene.read()).standing.differsFromSigned).toBe(true);
  });

  it('equal totals share the place, or are parted where the rules part them', async () => {
    const placesUnder = async (ties: string): Promise<unknown[]> => {
      const scene = await CombinedScene.open(api, meet, ['1', '2'], { programme: 'DECATHLON', ties });
      await scene.mark('1', 'SHOT', '12.00');
      await scene.mark('2', 'SHOT', '12.00');
      await scene.mark('2', 'DISCUS', '20.00');
      await scene.mark('1', 'JAVELIN', EQUAL_JAVELIN);
      return (await scene.read()).standing.rows.map(({ bib, place, isEqual, decidedBy }: any) => [
        ...[bib, place, isEqual, decidedBy],
      ]);
    };
    expect(await placesUnder('STAY')).toEqual([
      ['1', 1, true, 'first'],
      ['2', 1, true, 'equal'],
    ]);
    // One event each, and the best of them are worth the same: nothing parts them.
    expect((await placesUnder('MORE_EVENTS')).map(([, place]: any) => place)).toEqual([1, 1]);
  });

  it('a throws pentathlon is scored by the tables asked for, and has no sheet', async () => {
    const changes = { programme: 'THROWS_PENTATHLON', scoringSex: 'M', title: 'Throws pentathlon' };
    const scene = await CombinedScene.open(api, meet, ['1', 'G'], changes);
    await scene.mark('1', 'HAMMER', '45.12');
    await scene.mark('G', 'HAMMER', '50.00');
    const read = await scene.read();
    expect(read.sheet).toBeNull();
    expect(read.standing.rows).toMatchObject([
      { bib: '1', place: 1, total: combinedPoints('M', 'hammer', 4512) },
      { bib: 'G', place: null, status: 'GUEST' },
    ]);
    expect(read.result.results).toHaveLength(1);
  });
});

/** The javelin throw that is worth what 20.00 m of discus is. */
const EQUAL_JAVELIN = ((): string => {
  const wanted = combinedPoints('M', 'discus', 2000)!;
  let cm = 700;
  while (combinedPoints('M', 'javelin', cm)! < wanted) cm += 1;
  return `${Math.floor(cm / 100)}.${String(cm % 100).padStart(2, '0')}`;
})();

describe('rights', () => {
  it('belong to the meet’s referee and director and to officials of a linked competition', async () => {
    const scene = await CombinedScene.open(api, meet, ['1']);
    const other = await staffedMeet(api);
    const shot = await staffedCompetition(api, meet, {
      ...{ format: 'sectorline-sheet/1', rules: 'WA', event: 'shot', competitors: [{ bib: '1' }] },
    });
    const input = {
      ...{ combinedEventId: scene.id, entryId: randomUUID(), entrantId: scene.entrants['1'] },
      ...{ event: 'RUN_200', outcome: 'DNF' },
    };
    const record = `mutation ($input: CombinedTimeRecordInput!) { combinedTimeRecord(input: $input) { entry { id } } }`;
    const codeFor = async (token: string | null): Promise<unknown> =>
      (await api.send(record, { input }, token)).errors?.[0]?.extensions.code;
    expect(await codeFor(null)).toBe('UNAUTHENTICATED');
    for (const token of [other.director, other.referee, api.adminToken, shot.official])
      expect(await codeFor(token)).toBe('FORBIDDEN');
    await scene.link('SHOT', shot.id);
    expect(await codeFor(shot.official)).toBeUndefined();
    const rule = `mutation ($input: CombinedEntryRuleInput!) { combinedEntryRule(input: $input) { isReplay } }`;
    const ruling = { ...{ combinedEventId: scene.id, entryId: randomUUID() }, targetEntryId: input.entryId };
    const answer = await api.send(
      rule,
      { input: { ...ruling, decision: 'DISMISS', reason: 'x' } },
      shot.official,
    );
    expect(answer.errors?.[0]?.extensions.code).toBe('FORBIDDEN');
    await expect(scene.link('SHOT', null, other.director)).rejects.toThrow('FORBIDDEN');
  });

  it('an unpublished combined event and its journal are for those who work at it, names as the meet shows them', async () => {
    const scene = await CombinedScene.open(api, meet, ['1']);
    expect(rowOf(await scene.read(), '1').name).toBe('R. 1.');
    expect(rowOf(await scene.read(meet.referee), '1').name).toBe('Runa Fieldmark 1');
    expect((await scene.read()).sheet.rows[0].name).toBe('R. 1.');
    const journal = `query ($id: ID!) { combinedEvent(id: $id) { journal(first: 1) { edges { node { id } } } } }`;
    expect((await api.send(journal, { id: scene.id })).errors?.[0]?.extensions.code).toBe('UNAUTHENTICATED');
    const hidden = await makeMeet(api);
    const staff = { id: hidden.meetId, director: hidden.director, referee: hidden.director };
    const own = await CombinedScene.open(api, staff, ['1']);
    expect(await own.read()).toBeNull();
    expect(await own.read(hidden.director)).not.toBeNull();
  });
});

describe('the clubs of a meet', () => {
  it('score a combined event as one event, and not the competitions that are its parts', async () => {
    const own = await staffedMeet(api);
    const scoring = `mutation ($id: ID!) { meetScoringSet(input: { meetId: $id, preset: DUAL }) { userErrors { code } } }`;
    await api.data(scoring, { id: own.id }, own.director);
    const scene = await CombinedScene.open(api, own, ['1', '2', 'G']);
    const shotOf = (bibs: readonly string[]): Promise<any> =>
      staffedCompetition(api, own, {
        ...{ format: 'sectorline-sheet/1', rules: 'WA', event: 'shot', plan: { rounds: 3, cuts: [] } },
        competitors: bibs.map((bib) => ({
          bib,
          club: `Club ${bib}`,
          series: [`1${bib === '1' ? 1 : 2}.00`],
        })),
      });
    await scene.link('SHOT', (await shotOf(['1', '2'])).id);
    await scene.time('1', 'HURDLES_100', '13.40 +0.3');
    const read = `query ($id: ID!) { meet(id: $id) { clubTable {
      isProvisional combined { place club points } competitions { competition { title } }
      combinedEvents { isProvisional combinedEvent { id } lines { bib club place points } }
    } } }`;
    const table = async (): Promise<any> => (await api.data(read, { id: own.id })).meet.clubTable;
    // 5-3-1: the heptathlon alone counts.
    expect(await table()).toEqual({
      isProvisional: true,
      combined: [
        { place: 1, club: 'Club 1', points: '5' },
        { place: 2, club: 'Club 2', points: '3' },
      ],
      competitions: [],
      combinedEvents: [
        {
          ...{ isProvisional: true, combinedEvent: { id: scene.id } },
          lines: [
            { bib: '1', club: 'Club 1', place: 1, points: '5' },
            { bib: '2', club: 'Club 2', place: 2, points: '3' },
            { bib: 'G', club: null, place: null, points: '0' },
          ],
        },
      ],
    });
    // Where somebody else puts as well it is an event of its own.
    await scene.link('SHOT', (await shotOf(['1', '2', '9'])).id);
    expect((await table()).competitions).toHaveLength(2);
  });
});
