import { randomUUID } from 'node:crypto';
import {
  briefs,
  competitions,
  competitors,
  inSnapshot,
  inTransaction,
  journal,
  openDatabase,
  type Brief,
  type Database,
  type JournalBody,
  type NewEntry,
} from '#persistence';
import { migratedDatabase, type TestDatabase } from '../support/database.js';
import { attemptOf, competitorOf, highJumpOf, jumpOf, makeScene, type Scene } from './fixture.js';

let test: TestDatabase;
let database: Database;
let scene: Scene;

beforeAll(async () => {
  test = await migratedDatabase();
  database = await openDatabase({ url: test.url });
  scene = await makeScene(database);
});

afterAll(async () => {
  await database.destroy();
  await test.drop();
});

async function append(entries: readonly NewEntry[]): Promise<void> {
  await inTransaction(database, async (tx) => {
    for (const entry of entries) await journal.append(tx, entry);
  });
}

function decision(competitionId: string, body: JournalBody, changes: Partial<NewEntry> = {}): NewEntry {
  return attemptOf(scene, { competitionId, kind: body.kind, body, authority: 'referee', ...changes });
}

const held = (code: string): Pick<NewEntry, 'standing' | 'verdict'> => ({
  standing: 'held',
  verdict: { standing: 'held', hold: { code } } as NewEntry['verdict'],
});

/** A journal as the fold takes it, without what an accepted trial leaves out when it is read for its place. */
async function folded(competitionId: string): Promise<unknown[]> {
  const rows = await inSnapshot(database, (at) => journal.read(at, scene.organisationId, competitionId, 0));
  return rows.map(({ entryId: id, authority: by, actor, body, verdict, standing, kind }) => {
    const hold = verdict.standing === 'held' ? verdict.hold.code : null;
    if (standing === 'held' || (kind !== 'attempt' && kind !== 'jump')) {
      return { entry: { ...body, id, by, actor }, hold };
    }
    const rest =
      kind === 'attempt' ? { foul: null, wind: null, implementGrams: null } : { foul: null, incident: null };
    return { entry: { ...body, ...rest, id, by: 'official', actor: '' }, hold };
  });
}

async function readBriefs(ids: readonly string[]): Promise<Brief[]> {
  return inSnapshot(database, (at) => briefs.read(at, scene.organisationId, ids));
}

describe('a competition that is read for its places', () => {
  it('has its whole journal in order, whatever the entries', async () => {
    const first = attemptOf(scene);
    const { body } = first;
    const trial = (changes: object, rest: Partial<NewEntry> = {}): NewEntry =>
      attemptOf(scene, { body: { ...body, ...changes }, ...rest });
    await append([
      first,
      trial({ outcome: 'foul', mark: null, foul: 'SECTOR', protested: 4711, round: 2 }),
      trial({ round: 3, wind: 'NWI', implementGrams: 998 }),
      trial({ outcome: 'pass', mark: null, round: 3 }),
      trial({ round: 9 }, held('EARLIER_ROUND_OPEN')),
      decision(scene.competitionId, {
        kind: 'reversal',
        entry: first.entryId,
        reason: 'a "quoted", one; of it',
      }),
      trial({ round: 4, mark: 99_999 }),
      decision(scene.competitionId, { kind: 'sign-off', incomplete: null }),
    ]);
    const [brief] = await readBriefs([scene.competitionId]);
    expect(brief?.journal).toHaveLength(8);
    expect(brief?.journal).toEqual(await folded(scene.competitionId));
  });

  it('has it at a bar too, beside others and in no particular order', async () => {
    const jump = highJumpOf(scene);
    const empty = highJumpOf(scene);
    await inTransaction(database, async (tx) => {
      await competitions.insert(tx, jump);
      await competitions.insert(tx, empty);
    });
    await append([
      decision(jump.id, { kind: 'bar', height: 160, leavesOut: [] }),
      jumpOf(scene, jump.id),
      jumpOf(scene, jump.id),
    ]);
    const read = await readBriefs([empty.id, scene.competitionId, jump.id, randomUUID()]);
    const byId = new Map(read.map((brief) => [brief.competitionId, brief]));
    expect(byId.get(jump.id)?.journal).toHaveLength(3);
    expect(byId.get(jump.id)?.journal).toEqual(await folded(jump.id));
    expect(byId.get(empty.id)).toEqual({ competitionId: empty.id, startList: [], journal: [] });
  });

  it('has the start list in its order, each with the club as it is called now', async () => {
    const { id: competitionId } = highJumpOf(scene);
    await inTransaction(database, async (tx) => {
      await competitions.insert(tx, highJumpOf(scene, { id: competitionId }));
      await competitors.insert(tx, [
        competitorOf(scene, 2, {
          id: randomUUID(),
          competitionId,
          listedClub: 'Otter, "Old" Town',
          guest: true,
        }),
        competitorOf(scene, 1, { id: randomUUID(), competitionId, clubId: scene.clubId }),
        competitorOf(scene, 3, { id: randomUUID(), competitionId }),
      ]);
    });
    const [brief] = await readBriefs([competitionId]);
    const lines = await inSnapshot(database, (at) =>
      competitors.ofCompetition(at, scene.organisationId, competitionId),
    );
    expect(brief?.startList.map(({ id }) => id)).toEqual(lines.map(({ id }) => id));
    expect(brief?.startList.map(({ bib, guest }) => [bib, guest])).toEqual([
      ['101', false],
      ['102', true],
      ['103', false],
    ]);
    expect(brief?.startList[1]?.club).toBe('Otter, "Old" Town');
    expect(brief?.startList[0]?.club).not.toBeNull();
    expect(brief?.startList[2]?.club).toBeNull();
  });
});
