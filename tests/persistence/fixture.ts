import { createHash, randomUUID } from 'node:crypto';
import { populateCombined } from './combined-fixture.js';
import { addPlan } from './plan-fixture.js';
import { addProceedings } from './proceedings-fixture.js';
import {
  ageFactors,
  callingGroups,
  categoryDefinitions,
  checkIns,
  clubs,
  competitions,
  competitors,
  inTransaction,
  journal,
  meets,
  enteredResults,
  implementRegister,
  inspections,
  recordDecisions,
  startingMarks,
  meetScorings,
  athletes,
  officialResults,
  openDatabase,
  organisations,
  type AthleteRow,
  type CompetitorRow,
  type Database,
  type MeetRow,
  type Tx,
  type NewCompetition,
  type NewEntry,
} from '#persistence';
import { populateAccess } from './access-fixture.js';
import { drawOnce } from './draw-fixture.js';
import { populateEntries } from './entry-fixture.js';

/** One competition with two competitors and everything above it, all of it invented. */
export interface Scene {
  readonly organisationId: string;
  readonly clubId: string;
  readonly meetId: string;
  readonly competitionId: string;
  readonly athleteId: string;
  readonly competitorIds: readonly [string, string];
}

export async function makeScene(database: Database): Promise<Scene> {
  const scene: Scene = {
    organisationId: randomUUID(),
    clubId: randomUUID(),
    meetId: randomUUID(),
    competitionId: randomUUID(),
    athleteId: randomUUID(),
    competitorIds: [randomUUID(), randomUUID()],
  };
  const { organisationId, clubId } = scene;
  await inTransaction(database, async (tx) => {
    await organisations.insert(tx, { id: organisationId, name: 'Lindenau Throwers' });
    await clubs.insert(tx, { organisationId, id: clubId, name: 'Lindenau' });
    await athletes.insert(tx, athleteOf(scene));
    await meets.insert(tx, meetOf(scene));
    await competitions.insert(tx, competitionOf(scene));
    await competitors.insert(tx, [
      competitorOf(scene, 1, { athleteId: scene.athleteId, clubId }),
      competitorOf(scene, 2, { listedName: 'Mira Tolve', listedClub: 'Harbour School' }),
    ]);
  });
  return scene;
}

export function athleteOf(scene: Scene, changes: Partial<AthleteRow> = {}): AthleteRow {
  return {
    organisationId: scene.organisationId,
    id: scene.athleteId,
    givenName: 'Jonna',
    familyName: 'Averbeck',
    sex: 'W',
    birthDate: '2009-03-29',
    clubId: scene.clubId,
    display: null,
    handedness: null,
    erasedAt: null,
    ...changes,
  };
}

export function meetOf(scene: Scene, changes: Partial<MeetRow> = {}): MeetRow {
  return {
    organisationId: scene.organisationId,
    id: scene.meetId,
    name: 'Spring throws',
    venue: 'Mill Field',
    startsOn: '2026-05-09',
    endsOn: '2026-05-10',
    timeZone: 'Europe/Berlin',
    rules: 'WA',
    edition: '2024-01',
    minorsDisplay: 'initials',
    needsSecondPerson: false,
    publishedAt: null,
    ...changes,
  };
}

export function competitionOf(scene: Scene, changes: Partial<NewCompetition> = {}): NewCompetition {
  return {
    organisationId: scene.organisationId,
    id: scene.competitionId,
    meetId: scene.meetId,
    title: 'Discus women',
    event: 'discus',
    rules: 'WA',
    edition: '2024-01',
    indoor: false,
    stage: 'final',
    qualifying: null,
    plan: { rounds: 4, cuts: [] },
    vertical: null,
    unit: 'cm',
    categorySex: 'W',
    categoryAge: null,
    implementGrams: 1000,
    scoring: null,
    startsAt: '2026-05-09T08:30:00.000Z',
    ...changes,
  };
}

export function competitorOf(
  scene: Scene,
  position: number,
  changes: Partial<CompetitorRow> = {},
): CompetitorRow {
  return {
    organisationId: scene.organisationId,
    id: scene.competitorIds[position - 1] ?? randomUUID(),
    competitionId: scene.competitionId,
    athleteId: null,
    listedName: null,
    listedClub: null,
    clubId: null,
    bib: String(100 + position),
    position,
    flight: 'A',
    guest: false,
    implementGrams: 1000,
    seedMark: null,
    written: null,
    isUnmatched: false,
    ...changes,
  };
}

export function attemptOf(scene: Scene, changes: Partial<NewEntry> = {}): NewEntry {
  const entryId = changes.entryId ?? randomUUID();
  return {
    organisationId: scene.organisationId,
    competitionId: scene.competitionId,
    entryId,
    kind: 'attempt',
    body: {
      kind: 'attempt',
      competitor: scene.competitorIds[0],
      round: 1,
      outcome: 'valid',
      mark: 4812,
      wind: null,
      foul: null,
      protested: null,
      implementGrams: null,
    },
    standing: 'accepted',
    verdict: { standing: 'accepted', notices: [] },
    authority: 'official',
    actor: 'official of the discus',
    device: 'tablet 3',
    deviceAt: '2026-05-09T08:31:12.345Z',
    fingerprint: createHash('sha256').update(entryId).digest('hex'),
    ...changes,
  };
}

/** A high jump in the same meet, under an id of its own, without competitors. */
export function highJumpOf(scene: Scene, changes: Partial<NewCompetition> = {}): NewCompetition {
  return competitionOf(scene, {
    id: randomUUID(),
    title: 'High jump women',
    event: 'high-jump',
    plan: {},
    vertical: {
      heights: [160, 165, 170, 173],
      combined: false,
      passGivesUp: 'height',
      tieForFirst: 'jump-off',
    },
    implementGrams: null,
    ...changes,
  });
}

export function jumpOf(scene: Scene, competitionId: string): NewEntry {
  const body = {
    kind: 'jump',
    competitor: scene.competitorIds[0],
    height: 160,
    trial: 1,
    outcome: 'failed',
    foul: 'BAR',
    incident: null,
    protested: true,
  } as const;
  return attemptOf(scene, { competitionId, kind: 'jump', body });
}

/** A discus of the club that was weighed, and a competitor who reported. */
async function addInspection(
  tx: Tx,
  { organisationId, meetId, clubId, competitorIds }: Scene,
): Promise<void> {
  const by = { authority: 'official', device: null, deviceAt: null } as const;
  const implementId = randomUUID();
  await implementRegister.insert(tx, {
    ...{ organisationId, id: implementId, meetId, event: 'discus', grams: 1000, label: 'LT 1' },
    ...{ clubId, athleteId: null, authority: 'official', registeredBy: 'official' },
  });
  await inspections.lockLog(tx, organisationId, meetId);
  await inspections.append(tx, {
    ...{ organisationId, id: randomUUID(), meetId, implementId, kind: 'inspection', cause: null },
    ...{ competitionId: null, attemptId: null, grams: 1003, mm: { diameter: 181 } },
    ...{ outcome: 'passed', findings: [], keptBack: false, note: null, replacesId: null, reason: null },
    ...{ ...by, inspectedBy: 'official' },
  });
  const [competitorId] = competitorIds;
  const reported = { isPresent: true, isLate: false, note: null };
  await checkIns.append(tx, {
    ...{ organisationId, competitorId, id: randomUUID(), ...reported, ...by, enteredBy: 'official' },
  });
}

/** Two competitions, each with a journal of two entries, one of them signed, on a database with all migrations. */
export async function populate(url: string): Promise<void> {
  const database = await openDatabase({ url });
  const scene = await makeScene(database);
  await inTransaction(database, async (tx) => {
    const { organisationId, competitionId } = scene;
    await competitions.lock(tx, organisationId, competitionId);
    const attempt = attemptOf(scene);
    await journal.append(tx, attempt);
    await journal.append(tx, attemptOf(scene));
    const signed = { sequence: 2, sheet: {}, result: {}, signedBy: 'referee', confirmedBy: 'director' };
    await officialResults.archive(tx, { organisationId, competitionId, ...signed });
    await addPlan(tx, scene);
    await addProceedings(tx, scene);
    await meetScorings.add(tx, {
      organisationId,
      meetId: scene.meetId,
      preset: 'dual',
      places: null,
      teams: null,
      scorersPerClub: 3,
      relaysPerClub: null,
      nonScorers: 'out',
      clubTies: 'places',
      divisions: [{ name: 'women', sex: 'W', ages: [] }],
      setBy: 'director',
    });
    const line = {
      bib: '7',
      club: 'Lindenau',
      status: null,
      time: { hundredths: 1239, timing: 'electronic' },
    } as const;
    const race = { title: '100 m women', isRelay: false, categorySex: 'W', categoryAge: null } as const;
    await enteredResults.insert(tx, {
      ...{ organisationId, id: randomUUID(), meetId: scene.meetId, ...race },
      lines: [{ ...line, place: 1, wind: 12 }],
      ...{ replacesId: null, reason: null, authority: 'director', enteredBy: 'director' },
    });
    const callingGroupId = randomUUID();
    await callingGroups.insert(tx, {
      ...{ organisationId, id: callingGroupId, meetId: scene.meetId, title: 'Discus, first circle' },
      ...{ facility: 'Circle 1', startsAt: null, warmUpMinutes: 20 },
    });
    await ageFactors.add(tx, {
      ...{ organisationId, meetId: scene.meetId, event: 'discus', source: 'made up', setBy: 'director' },
      factors: [{ sex: 'W', age: '35', factor: '1.1' }],
    });
    await categoryDefinitions.insert(tx, {
      ...{ organisationId, id: randomUUID(), scheme: 'Club juniors', rules: null, source: 'club statutes' },
      ...{ validFrom: '2026-01-01', validUntil: null, ageOn: { kind: 'end of year' }, definedBy: 'admin' },
      bands: [{ code: 'U14', minAge: null, maxAge: 13 }],
    });
    const inGroup = { callingGroupId, callingPosition: 1 };
    await competitions.updateAt(tx, organisationId, competitionId, 2, inGroup);
    await addInspection(tx, scene);
    await addRecords(tx, scene, attempt.entryId);
    const group = { id: randomUUID(), title: 'Discus women, group A' };
    await drawOnce(tx, scene, competitionOf(scene, group));
    const highJump = highJumpOf(scene);
    await competitions.insert(tx, highJump);
    await journal.append(tx, jumpOf(scene, highJump.id));
    await journal.append(tx, jumpOf(scene, highJump.id));
    await populateCombined(tx, scene, highJump.id);
    await populateAccess(tx, scene);
    await populateEntries(tx, scene);
  });
  await database.destroy();
}

async function addRecords(tx: Tx, scene: Scene, attemptId: string): Promise<void> {
  const { organisationId, clubId, competitionId, competitorIds } = scene;
  const mark = { event: 'discus', unit: 'cm', mark: 4700, wind: null, indoor: false } as const;
  await startingMarks.insert(tx, [
    {
      ...{ organisationId, id: randomUUID(), clubId, meetId: null, athleteId: null },
      ...{
        ...mark,
        implementGrams: 1000,
        sex: 'W',
        age: 'senior',
        onDate: '1998-06-06',
        place: 'Mill Field',
      },
      ...{ counts: true, replacesId: null, reason: null, importId: null, importLine: null },
      enteredBy: 'director',
    },
  ]);
  await recordDecisions.add(tx, {
    ...{ organisationId, id: randomUUID(), competitionId, attemptId, competitorId: competitorIds[0] },
    ...{ kind: 'club record', decision: 'ratified', mark: 4812, wind: null, implementGrams: 1000 },
    ...{ recheck: 'passed', measuring: 'steel-tape', despite: [], reason: 'measured and weighed' },
    ...{ authority: 'referee', decidedBy: 'referee' },
  });
}
