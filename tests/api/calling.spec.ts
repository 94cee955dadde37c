import { randomUUID } from 'node:crypto';
import { startApi, type TestApi } from '../support/api.js';
import { Circle } from '../support/at-the-circle.js';
import { highJumpSheet } from '../support/at-the-bar.js';
import { groupCreate, groupOrderSet, groupRead, groupUpdate } from '../support/calling.js';
import { attemptOf, discusSheet, enterInJournal, staffedMeet, type StaffedMeet } from '../support/circle.js';

/** Boys and veterans throw in turn, each with their own implement. */
interface Together {
  readonly meet: StaffedMeet;
  readonly boys: Circle;
  readonly veterans: Circle;
  readonly group: any;
}

const THREE = { rounds: 3, cuts: [], reorderAfter: [] };
const FOUR = { rounds: 4, cuts: [], reorderAfter: [] };
const BOYS = discusSheet(2, { plan: THREE, category: { sex: 'M', age: 'U18' }, implementGrams: 1500 });
const VETERANS = discusSheet(2, { plan: FOUR, competitors: [{ bib: '11' }, { bib: '12' }] });

let api: TestApi;
beforeAll(async () => {
  api = await startApi();
});
afterAll(() => api.close());

async function together(input: object = {}, more: object = {}): Promise<Together> {
  const meet = await staffedMeet(api, more);
  const boys = await Circle.open(api, BOYS, meet);
  const veterans = await Circle.open(api, VETERANS, meet);
  const competitionIds = [boys, veterans].map(({ competition }) => competition.id);
  const { callingGroup, userErrors } = await groupCreate(api, meet.director, {
    ...{ meetId: meet.id, competitionIds, facility: 'Cage north', warmUpMinutes: 20, ...input },
  });
  if (!callingGroup) throw new Error(JSON.stringify(userErrors));
  return { meet, boys, veterans, group: callingGroup };
}

/** The ids of competitors by bib. */
function ids({ boys, veterans }: Together, ...bibs: readonly number[]): string[] {
  return bibs.map((bib) => (bib > 10 ? veterans : boys).competitorOf(bib));
}

function interleaved(held: Together): Promise<any> {
  const { version: expectedVersion, id: callingGroupId } = held.group;
  const competitorIds = ids(held, 12, 1, 11, 2);
  return groupOrderSet(api, held.meet.director, { callingGroupId, expectedVersion, competitorIds });
}

/** Records for whoever the group calls. */
async function callNext(held: Together, cell: string, token: string): Promise<any> {
  const { up } = (await groupRead(api, held.group.id, token)).progress;
  const { competition: competitionId, competitor: competitorId, round } = up;
  return enterInJournal(api, token, 'attemptRecord', {
    competitionId,
    competitorId,
    round,
    ...attemptOf(cell),
  });
}

async function highJumpInInches({ id: meetId, director }: StaffedMeet): Promise<string> {
  const input = { meetId, title: 'High jump', event: 'HIGH_JUMP', rules: 'NFHS', unit: 'QIN' };
  const { competitionCreate } = await api.data(
    `mutation ($input: CompetitionCreateInput!) {
       competitionCreate(input: $input) { competition { id } userErrors { message } }
     }`,
    { input: { ...input, vertical: { heights: ['4-02.00'] } } },
    director,
  );
  return competitionCreate.competition.id;
}

const bibsOf = (lines: readonly any[]): string =>
  lines.map(({ competitor, bib }) => bib ?? competitor.bib).join(' ');

describe('a calling group', () => {
  it('calls competitions one after the other until an order is set', async () => {
    const { group, meet } = await together();
    expect(group).toMatchObject({
      ...{ title: 'Circle 1', facility: 'Cage north', warmUpMinutes: 20, meet: { id: meet.id } },
      progress: { phase: 'not started', awaits: 'trial', up: { bib: '1' }, remaining: 14, finished: [] },
    });
    expect(bibsOf(group.startList)).toBe('1 2 11 12');
    expect(bibsOf(group.progress.calls)).toBe('1 2 11 12');
  });

  it('is called in the common order, which is that of each competition as well', async () => {
    const held = await together();
    const { callingGroup, userErrors } = await interleaved(held);
    expect(userErrors).toEqual([]);
    expect(bibsOf(callingGroup.startList)).toBe('12 1 11 2');
    expect(callingGroup.startList.map(({ competitor }: any) => competitor.position)).toEqual([1, 1, 2, 2]);
    const [first, second] = callingGroup.startList;
    expect([first.categoryAge, second.categoryAge]).toEqual([null, 'U18']);
    const token = await api.token('official', held.group.id);
    const called: string[] = [];
    for (let trial = 0; trial < 14; trial++) {
      const { entry } = await callNext(held, trial % 3 === 0 ? 'X' : '41.00', token);
      expect([entry.standing, entry.notices]).toEqual(['ACCEPTED', []]);
      const { progress } = await groupRead(api, held.group.id);
      called.push(progress.up === null ? 'nobody' : `${progress.up.bib}/${progress.up.round}`);
    }
    expect(called.slice(0, 5)).toEqual(['1/1', '11/1', '2/1', '12/2', '1/2']);
    expect(called.slice(-4)).toEqual(['2/3', '12/4', '11/4', 'nobody']);
    expect((await groupRead(api, held.group.id)).progress).toMatchObject({ phase: 'complete', awaits: null });
  });

  it('gives whoever is up the time of his own competition', async () => {
    const held = await together();
    expect((await groupRead(api, held.group.id)).progress.timeAllowed).toMatchObject({
      ...{ seconds: 60, because: 'each trial', left: null, startsWhen: 'called' },
    });
  });

  it('has a version that rises with every change of it and of what is in it', async () => {
    const held = await together();
    const { id: callingGroupId } = held.group;
    const versions = [held.group.version];
    const note = async () => versions.push((await groupRead(api, callingGroupId)).version);
    await held.boys.record(1, 1, '40.00');
    await note();
    const expectedVersion = versions.at(-1);
    await groupUpdate(api, held.meet.director, { callingGroupId, expectedVersion, facility: null });
    await note();
    await held.veterans.enter(
      'competitorStartSet',
      { competitorId: ids(held, 11)[0], status: 'DNS' },
      held.meet.referee,
    );
    await note();
    expect(versions).toEqual([...new Set(versions)].sort((a, b) => a - b));
    expect(versions).toHaveLength(4);
  });

  it('keeps its version when a competition with many versions leaves it', async () => {
    const held = await together();
    const { id: callingGroupId, version } = (await interleaved(held)).callingGroup;
    const competitionIds = [held.veterans.competition.id];
    const left = await groupUpdate(api, held.meet.director, {
      callingGroupId,
      expectedVersion: version,
      competitionIds,
    });
    expect(left.callingGroup.version).toBeGreaterThan(version);
    expect(bibsOf(left.callingGroup.startList)).toBe('12 11');
  });

  it('is shown with its meet and its competitions', async () => {
    const { meet, group, boys } = await together();
    const shown = await api.data(
      `query ($meet: ID!, $competition: ID!) {
         meet(id: $meet) { callingGroups { id } } competition(id: $competition) { callingGroup { id version } }
       }`,
      { meet: meet.id, competition: boys.competition.id },
    );
    expect(shown).toEqual({
      meet: { callingGroups: [{ id: group.id }] },
      competition: { callingGroup: { id: group.id, version: group.version } },
    });
  });

  it('calls nobody while one of its competitions is interrupted', async () => {
    const held = await together();
    const stop = { cause: 'PERSON_IN_SECTOR', seenAt: '2026-06-13T10:00:00Z' };
    const stopped = await held.boys.enter('competitionInterrupt', stop, held.meet.referee);
    expect(stopped.userErrors).toEqual([]);
    expect((await groupRead(api, held.group.id)).progress).toMatchObject({
      ...{ up: null, awaits: null, calls: [], interrupted: [held.boys.competition.id] },
    });
  });

  it('holds a trial while another of its competitions is interrupted, and takes it after the all-clear', async () => {
    const held = await together();
    const { boys, veterans } = held;
    await veterans.enter('competitionInterrupt', { cause: 'LIGHTNING', seenAt: '2026-06-13T14:00:00Z' });
    const { entry } = await boys.record(1, 1, '48.10');
    expect(entry).toMatchObject({ standing: 'HELD', hold: { code: 'DURING_INTERRUPTION' } });
    const confirmed = [
      'SECTOR_CLEAR',
      'SECTOR_CLOSED',
      'CAGE_WHOLE',
      'SURFACE',
      'WARM_UP',
      'RETRIEVAL',
      'WEATHER',
    ];
    const clearedAt = '2026-06-13T14:30:00Z';
    await veterans.enter('competitionClear', { confirmed, clearedAt });
    expect((await boys.record(2, 1, '47.00')).entry).toMatchObject({ standing: 'ACCEPTED' });
    expect((await boys.read(held.meet.referee)).questions).toMatchObject([{ entry: entry.id }]);
  });

  it('raises one bar for several competitions', async () => {
    const meet = await staffedMeet(api);
    const low = await Circle.open(api, highJumpSheet(1, ['1.20', '1.30']), meet);
    const high = await Circle.open(
      api,
      highJumpSheet(1, ['1.30', '1.35'], { competitors: [{ bib: '11' }] }),
      meet,
    );
    const competitionIds = [low.competition.id, high.competition.id];
    const { callingGroup } = await groupCreate(api, meet.director, { meetId: meet.id, competitionIds });
    expect(callingGroup.progress).toMatchObject({
      ...{ height: '1.20', nextHeight: '1.30', up: { bib: '1', round: 1 }, next: null },
      timeAllowed: { because: 'first trial', left: 1, seconds: 60 },
    });
    const jump = { height: '1.20', trial: 1, outcome: 'CLEARED', isProtested: false };
    const token = await api.token('official', callingGroup.id);
    await low.enter('jumpRecord', { ...jump, competitorId: low.competitorOf(1) }, token);
    const { progress } = await groupRead(api, callingGroup.id);
    expect([progress.height, bibsOf(progress.calls)]).toEqual(['1.30', '1 11']);
  });
});

describe('setting a calling group up', () => {
  it('is answered alike when it is sent again, and refused for something else under the same id', async () => {
    const id = randomUUID();
    const held = await together({ id });
    const { meet, boys, veterans } = held;
    const input = { id, meetId: meet.id, facility: 'Cage north', warmUpMinutes: 20 };
    const competitionIds = [boys.competition.id, veterans.competition.id];
    const again = await groupCreate(api, meet.director, { ...input, competitionIds });
    expect([again.isReplay, again.callingGroup]).toEqual([true, held.group]);
    const other = await groupCreate(api, meet.director, { ...input, competitionIds: [boys.competition.id] });
    expect(other.userErrors).toMatchObject([{ code: 'ID_REUSED' }]);
  });

  it('takes competitions of the meet, of one event, once and in one group', async () => {
    const { meet, boys } = await together();
    const free = (sheet: object, where = meet) => Circle.open(api, sheet, where);
    const [discus, shot, bar, elsewhere] = [
      await free(discusSheet(1)),
      await free(discusSheet(1, { event: 'shot' })),
      await free(highJumpSheet(1, ['1.20'])),
      await free(discusSheet(1), await staffedMeet(api)),
    ].map(({ competition }) => competition.id);
    const inches = await highJumpInInches(meet);
    const codes = async (...competitionIds: readonly (string | undefined)[]) => {
      const { userErrors } = await groupCreate(api, meet.director, { meetId: meet.id, competitionIds });
      return userErrors.map(({ code, path }: any) => `${code} ${path.slice(1).join('.')}`);
    };
    expect(await codes(discus, discus)).toEqual(['NAMED_TWICE competitionIds.1']);
    expect(await codes(discus, shot)).toEqual(['EVENT_MIXED competitionIds.1']);
    expect(await codes(bar, discus)).toEqual(['EVENT_MIXED competitionIds.1']);
    expect(await codes(discus, boys.competition.id)).toEqual(['CALLED_ELSEWHERE competitionIds.1']);
    expect(await codes(bar, inches)).toEqual(['UNIT_MIXED competitionIds.1']);
    expect(await codes(discus, elsewhere)).toEqual(['NOT_FOUND competitionIds.1']);
  });

  it('is over with the first trial, but for its title, place and times', async () => {
    const held = await together();
    const { id: callingGroupId } = held.group;
    await held.veterans.record(11, 1, '33.00');
    const { version: expectedVersion } = await groupRead(api, callingGroupId);
    const change = (input: object) =>
      groupUpdate(api, held.meet.director, { callingGroupId, expectedVersion, ...input });
    const refused = await change({ competitionIds: [held.veterans.competition.id] });
    expect(refused.userErrors).toEqual([
      expect.objectContaining({
        code: 'COMPETITION_STARTED',
        rule: expect.stringContaining('TR25.5') as string,
        remedy: expect.stringContaining('referee') as string,
      }),
    ]);
    const order = { callingGroupId, expectedVersion, competitorIds: ids(held, 12, 1, 11, 2) };
    expect((await groupOrderSet(api, held.meet.director, order)).userErrors).toMatchObject([
      { code: 'COMPETITION_STARTED' },
    ]);
    expect((await change({ title: 'Cage south' })).callingGroup.title).toBe('Cage south');
    const late = await Circle.open(api, discusSheet(1), held.meet);
    const begun = await groupCreate(api, held.meet.director, {
      ...{ meetId: held.meet.id, competitionIds: [late.competition.id] },
    });
    await late.record(1, 1, 'X');
    const joined = [late.competition.id];
    const { version: now } = await groupRead(api, begun.callingGroup.id);
    const kept = { callingGroupId: begun.callingGroup.id, expectedVersion: now, competitionIds: joined };
    expect((await groupUpdate(api, held.meet.director, kept)).userErrors).toMatchObject([
      { code: 'COMPETITION_STARTED' },
    ]);
  });

  it('needs the version that it was decided on, and everybody in the order', async () => {
    const held = await together();
    const { id: callingGroupId, version } = held.group;
    const stale = await groupUpdate(api, held.meet.director, {
      ...{ callingGroupId, expectedVersion: version - 1, title: 'Elsewhere' },
    });
    expect(stale.userErrors).toMatchObject([
      {
        code: 'VERSION_CONFLICT',
        currentVersion: version,
        message: expect.stringContaining('group') as string,
      },
    ]);
    for (const bibs of [
      [12, 1, 11],
      [12, 1, 11, 11],
      [12, 1, 11, 2, 2],
    ]) {
      const order = { callingGroupId, expectedVersion: version, competitorIds: ids(held, ...bibs) };
      expect((await groupOrderSet(api, held.meet.director, order)).userErrors).toMatchObject([
        { code: 'ORDER_INCOMPLETE', path: ['input', 'competitorIds'] },
      ]);
    }
  });

  it('can take every competition out again', async () => {
    const held = await together();
    const { id: callingGroupId, version: expectedVersion } = held.group;
    const empty = await groupUpdate(api, held.meet.director, {
      callingGroupId,
      expectedVersion,
      competitionIds: [],
    });
    expect(empty.callingGroup).toMatchObject({
      ...{ competitions: [], startList: [], progress: { phase: 'not started', up: null, awaits: null } },
    });
  });
});

describe('an official of a calling group', () => {
  const issue = `mutation ($input: TokenIssueInput!) {
    tokenIssue(input: $input) { token grant { role on } userErrors { code } }
  }`;

  it('gets a token from a director of its meet, and may record in each of its competitions', async () => {
    const held = await together();
    const input = { role: 'OFFICIAL', on: held.group.id, label: 'Circle 1 tablet' };
    const { tokenIssue } = await api.data(issue, { input }, held.meet.director);
    expect(tokenIssue.grant).toEqual({ role: 'OFFICIAL', on: held.group.id });
    const { token } = tokenIssue;
    const { viewer } = await api.data('{ viewer { grants { role on } } }', {}, token);
    expect(viewer.grants).toEqual([{ role: 'OFFICIAL', on: held.group.id }]);
    for (const [circle, bib] of [
      [held.boys, 1],
      [held.veterans, 11],
    ] as const) {
      expect((await circle.record(bib, 1, '40.00', {}, token)).userErrors).toEqual([]);
    }
    const stranger = await api.send(issue, { input }, (await staffedMeet(api)).director);
    expect(stranger.errors?.[0]?.extensions.code).toBe('FORBIDDEN');
  });

  it('has no right elsewhere, nor on a competition that has left', async () => {
    const held = await together();
    const token = await api.token('official', held.group.id);
    const other = await Circle.open(api, discusSheet(1), held.meet);
    const attempt = async (circle: Circle, bib: number, by: string): Promise<string | undefined> => {
      const answer = await api.send(
        `mutation ($input: AttemptRecordInput!) { attemptRecord(input: $input) { userErrors { code } } }`,
        {
          input: {
            ...{ entryId: randomUUID(), competitionId: circle.competition.id, round: 1 },
            ...{ competitorId: circle.competitorOf(bib), ...attemptOf('40.00') },
          },
        },
        by,
      );
      return answer.errors?.[0]?.extensions.code;
    };
    expect(await attempt(other, 1, token)).toBe('FORBIDDEN');
    expect(await attempt(held.veterans, 11, held.boys.official)).toBe('FORBIDDEN');
    const { id: callingGroupId, version: expectedVersion } = held.group;
    const competitionIds = [held.veterans.competition.id];
    await groupUpdate(api, held.meet.director, { callingGroupId, expectedVersion, competitionIds });
    expect(await attempt(held.boys, 1, token)).toBe('FORBIDDEN');
    expect(await attempt(held.veterans, 11, token)).toBeUndefined();
  });

  it('has none on a competition whose id somebody has taken for a group', async () => {
    const { boys } = await together();
    const foreign = await together();
    const uuid = Buffer.from(boys.competition.id, 'base64url').toString().split(':')[1]!;
    const later = await Circle.open(api, discusSheet(1), foreign.meet);
    const { callingGroup } = await groupCreate(api, foreign.meet.director, {
      ...{ id: uuid, meetId: foreign.meet.id, competitionIds: [later.competition.id] },
    });
    const token = await api.token('official', callingGroup.id);
    await expect(boys.record(1, 1, '40.00', {}, token)).rejects.toThrow('FORBIDDEN');
  });

  it('sees whole names, and the group before its meet is published; others see neither', async () => {
    const { meetCreate } = await api.data(
      `mutation { meetCreate(input: { name: "Club evening", startsOn: "2026-06-20", timeZone: "Europe/Lisbon", rules: WA }) { meet { id } } }`,
      {},
      api.adminToken,
    );
    const id = meetCreate.meet.id as string;
    const director = await api.token('director', id);
    const meet = { id, director, referee: director };
    const named = discusSheet(1, { competitors: [{ bib: '1', name: 'Perpetua Quillon' }] });
    const circle = await Circle.open(api, named, meet);
    const { callingGroup } = await groupCreate(api, director, {
      ...{ meetId: id, competitionIds: [circle.competition.id] },
    });
    const token = await api.token('official', callingGroup.id);
    const seen = await groupRead(api, callingGroup.id, token);
    expect([seen.startList[0].name, seen.progress.up.name]).toEqual(['Perpetua Quillon', 'Perpetua Quillon']);
    expect(await groupRead(api, callingGroup.id)).toBeNull();
    expect(await groupRead(api, callingGroup.id, await api.token('official', randomUUID()))).toBeNull();
    await api.data(
      `mutation ($id: ID!) { meetPublish(input: { meetId: $id }) { userErrors { code } } }`,
      { id },
      director,
    );
    const published = await groupRead(api, callingGroup.id);
    expect([published.startList[0].name, published.progress.up.name]).toEqual(['P. Q.', 'P. Q.']);
  });

  it('cannot set groups up, as little as directors of other meets', async () => {
    const held = await together();
    const { id: callingGroupId, version: expectedVersion } = held.group;
    const stranger = (await staffedMeet(api)).director;
    for (const token of [await api.token('official', callingGroupId), held.meet.referee, stranger]) {
      await expect(groupUpdate(api, token, { callingGroupId, expectedVersion, title: 'X' })).rejects.toThrow(
        'FORBIDDEN',
      );
      await expect(
        groupCreate(api, token, { meetId: held.meet.id, competitionIds: [held.boys.competition.id] }),
      ).rejects.toThrow('FORBIDDEN');
      await expect(
        groupOrderSet(api, token, {
          callingGroupId,
          expectedVersion,
          competitorIds: ids(held, 1, 2, 11, 12),
        }),
      ).rejects.toThrow('FORBIDDEN');
    }
  });
});
