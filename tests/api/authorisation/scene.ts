import { randomUUID } from 'node:crypto';
import { accountScene, isOfAccounts } from '../../support/account-scene.js';
import { call, giveRole, newPerson } from '../../support/accounts.js';
import type { ApiClient } from '../../support/client.js';
import { discusSheet } from '../../support/circle.js';
import { groupSheet } from '../../support/groups.js';
import { notebookInput, notebookScene, type NotebookScene } from '../../support/notebook.js';
import type { Asker, Place } from './rows.js';

/** A meet with one discus competition, an athlete in it, and what hangs on them. */
export interface Scene {
  readonly meetId: string;
  readonly competitionId: string;
  readonly athleteId: string;
  readonly personId: string;
  readonly notebook: NotebookScene;
  /**
   * What is there, by the name of the input field or argument that takes it. An input or an argument that names
   * something else of this scene needs a line in `makeScene`.
   */
  readonly things: Readonly<Record<string, unknown>>;
}

/** Arguments and fields that are called like others and meant otherwise, by element. */
const MEANT: Readonly<Record<string, (things: Scene['things']) => object>> = {
  'Query.ageCategories': () => ({ on: null, rules: null }),
  'Query.athlete': ({ athleteId }) => ({ id: athleteId }),
  'Query.callingGroup': ({ callingGroupId }) => ({ id: callingGroupId }),
  'Query.club': ({ clubId }) => ({ id: clubId }),
  'Query.combinedEvent': ({ combinedEventId }) => ({ id: combinedEventId }),
  'Query.competition': ({ competitionId }) => ({ id: competitionId }),
  'Subscription.competitionTable': ({ competitionId }) => ({ id: competitionId, sinceVersion: null }),
  'Query.implement': ({ implementId }) => ({ id: implementId }),
  'Query.meet': ({ meetId }) => ({ id: meetId }),
  'Query.person': ({ personId }) => ({ id: personId }),
  'Query.practiceSession': ({ sessionId }) => ({ id: sessionId }),
  'NotebookAthlete.outlook': () => ({ on: '2026-06-13' }),
  'Query.squadOverview': () => ({ on: null }),
  'Query.throwFlight': () => ({ implementGrams: 1000, angleTenths: 350, heightCm: 160 }),
  'Athlete.categories': () => ({ on: '2026-06-13' }),
  'Mutation.ageFactorsSet': () => ({ factors: [{ sex: 'M', age: '50', factor: '1.2' }] }),
  'Mutation.crewSet': () => ({ members: [] }),
  'Mutation.timetableSet': () => ({ facilities: [], sharedGrounds: [], slots: [], reason: null }),
  'Mutation.competitionCreate': () => ({ rules: null, edition: null, vertical: null, qualifying: null }),
  'Mutation.enteredResultSet': () => ({ lines: [], ...FIRST }),
  'Mutation.enteredResultsImport': () => ({ csv: { text: 'title,bib,place\n100 m,7,1' } }),
  'Mutation.entriesImport': () => ({ ...UNDECIDED, csv: { text: 'competition' } }),
  'Mutation.implementInspect': () => ({ dimensions: [], ...FIRST }),
  'Mutation.implementRecheck': () => ({ dimensions: [], ...FIRST }),
  'Mutation.jumpsMove': ({ moves }) => ({
    moves: (moves as readonly object[]).map((move) => ({
      ...move,
      round: undefined,
      height: '3.20',
      trial: 1,
    })),
  }),
  'Mutation.meetEntryTermsSet': () => ({ competitionLimits: [] }),
  'Mutation.meetScoringSet': () => ({ preset: null }),
  'Mutation.protestAppeal': () => ({ at: null }),
  'Mutation.protestDecide': () => ({ at: null }),
  'Mutation.protestLodge': () => ({ lodgedAt: null }),
  'Mutation.protestWithdraw': () => ({ at: null }),
  'Mutation.pastResultsImport': () => ({ ...UNDECIDED, csv: { text: 'event' } }),
  'Mutation.qualificationCreate': ({ groupId }) => ({ competitionIds: [groupId] }),
  'Mutation.recordRatify': () => ({ despite: [] }),
  'Mutation.resultPost': () => ({ postedAt: null }),
  'Mutation.startingMarkAdd': () => ({ ...FIRST, clubId: null }),
  'Mutation.startingMarkWithdraw': ({ startingMarkId }) => ({ replacesId: startingMarkId }),
  'Mutation.startingMarksImport': () => ({
    clubId: null,
    csv: { base64: Buffer.from('event;mark').toString('base64') },
  }),
  'Mutation.tokenIssue': () => ({ role: 'OFFICIAL', from: null, until: null }),
};

/** Of what is replaced by nothing. */
const FIRST = { replacesId: null, reason: null };

/** Of a table that is only looked at. */
const UNDECIDED = { athletes: [], clubs: [], isDryRun: true };

/** Where a field lies: the query that leads to its object, with the field in the place of `#`. */
export const WAYS: Readonly<Record<string, string>> = {
  Athlete: 'athlete(id: $athleteId) { # }',
  CallingGroup: 'callingGroup(id: $callingGroupId) { # }',
  Club: 'club(id: $clubId) { # }',
  CombinedEvent: 'combinedEvent(id: $combinedEventId) { # }',
  Competition: 'competition(id: $competitionId) { # }',
  DeviceLink: 'meet(id: $meetId) { deviceLinks { # } }',
  LiveCompetition: 'competitionTable(id: $competitionId) { # }',
  Meet: 'meet(id: $meetId) { # }',
  NotebookAthlete: 'notebookAthlete(athleteId: $athleteId) { # }',
  Person: 'person(id: $personId) { # }',
  Qualification: 'meet(id: $meetId) { qualifications { # } }',
  RoleGrant: 'person(id: $personId) { grants { # } }',
  TableRow: 'competition(id: $competitionId) { table { rows { # } } }',
};

export function isAtHome(place: Place): boolean {
  return place === 'own' || place === 'draft';
}

export async function makeScene(api: ApiClient, place: Place): Promise<Scene> {
  const ask: Ask = async (name, input, selection, token = api.adminToken) => {
    const done = await call(api, name, input, `${selection} userErrors { code path message }`, token);
    if (done.userErrors.length > 0) throw new Error(`${name}: ${JSON.stringify(done.userErrors)}`);
    return done;
  };
  const { club } = await ask('clubCreate', { name: `Harriers ${randomUUID()}` }, 'club { id }');
  const named = { givenName: 'Odalys', familyName: 'Thornwick', sex: 'W', clubId: club.id };
  const { athlete } = await ask('athleteCreate', named, 'athlete { id }');
  const day = { startsOn: '2026-06-13', timeZone: 'Europe/London', rules: 'WA' };
  const { meet } = await ask('meetCreate', { name: `Heron Field ${randomUUID()}`, ...day }, 'meet { id }');
  const meetId: string = meet.id;
  const discus = { meetId, title: 'Discus', sheet: discusSheet(3), unit: 'CM' };
  const selection = 'competition { id version startList { id } }';
  const { competition } = await ask('sheetImport', discus, selection);
  const competitionId: string = competition.id;
  const competitors: readonly string[] = competition.startList.map(({ id }: { id: string }) => id);
  const [competitorId] = competitors;
  const hung = await whatHangsOn(ask, meetId, competitionId, await api.token('director', meetId));
  const entry = { competitionId, athleteId: athlete.id, bib: '9' };
  await ask('competitorEnter', entry, 'competitor { id }');
  if (place === 'own' || place === 'other') await ask('meetPublish', { meetId }, 'meet { id }');
  const official = await api.token('official', competitionId);
  const trial = { competitionId, entryId: randomUUID(), competitorId, round: 1, outcome: 'FOUL' };
  await ask('attemptRecord', trial, 'entry { id }', official);
  const protest = {
    ...{ competitionId, entryId: randomUUID(), form: 'ORAL', ground: 'RULES' },
    ...PROTESTED,
  };
  await ask('protestLodge', protest, 'protest { id }', official);
  const { id: personId } = await newPerson(api);
  const grantId = await giveRole(api, personId, { role: 'OFFICIAL', on: competitionId });
  const notebook = await notebookScene(api, athlete.id);
  const { sessionId, throwId, focusId } = notebook;
  const things = {
    ...{ sessionId, throwId, focusId },
    ...{ meetId, personId, grantId, competitorId, clubId: club.id, athleteId: athlete.id, ...hung },
    ...{ competitionId, competitionIds: [competitionId], on: competitionId, finalId: null, after: null },
    ...{
      competitorIds: [competitorId],
      expectedVersion: 0,
      attemptId: trial.entryId,
      ...{ trialId: trial.entryId, protestId: protest.entryId },
      sheet: discusSheet(2),
    },
    moves: [{ attemptId: trial.entryId, competitorId, round: 1 }],
    bibs: [{ competitorId, bib: '77' }],
    lines: competitors.map((one) => ({ competitorId: one, flight: 'A' })),
  };
  return { meetId, competitionId, athleteId: athlete.id, personId, notebook, things };
}

const PROTESTED = { lodgedBy: 'team manager', reason: 'called too late' };

type Ask = (name: string, input: object, selection: string, token?: string) => Promise<any>;

/** A calling group, a qualification, an implement, a combined event and a device link of the meet. */
async function whatHangsOn(
  ask: Ask,
  meetId: string,
  competitionId: string,
  director: string,
): Promise<object> {
  const of = { meetId, title: 'Circle 1' };
  const group = { ...of, competitionIds: [competitionId] };
  const { callingGroup } = await ask('callingGroupCreate', group, 'callingGroup { id }');
  const hammer = { ...of, sheet: groupSheet(20, 2), unit: 'CM' };
  const { competition } = await ask('sheetImport', hammer, 'competition { id }');
  const groups = { ...of, competitionIds: [competition.id] };
  const { qualification } = await ask('qualificationCreate', groups, 'qualification { id }');
  const { competition: another } = await ask('sheetImport', hammer, 'competition { id }');
  const combined = { ...of, programme: 'DECATHLON' };
  const { combinedEvent } = await ask('combinedEventCreate', combined, 'combinedEvent { id }');
  const entrant = { combinedEventId: combinedEvent.id, listedName: 'Nobody Known', bib: '300' };
  const { entrantId } = await ask('combinedEntrantEnter', entrant, 'entrantId');
  const implement = { meetId, event: 'DISCUS', grams: 1000, label: 'LT 1' };
  const { implement: registered } = await ask('implementRegister', implement, 'implement { id }', director);
  const mark = {
    meetId,
    event: 'DISCUS',
    mark: '50.00',
    onDate: '2020-06-13',
    sex: 'W',
    implementGrams: 1000,
  };
  const { startingMark } = await ask('startingMarkAdd', mark, 'startingMark { id }');
  const link = { on: competitionId, label: 'Circle 2 tablet', until: '2999-01-01T00:00:00Z' };
  await ask('deviceLinkCreate', link, 'link { id }');
  return {
    ...{ callingGroupId: callingGroup.id, qualificationId: qualification.id, groupId: another.id },
    ...{ combinedEventId: combinedEvent.id, entrantId, implementId: registered.id },
    startingMarkId: startingMark.id,
  };
}

/** Arguments of an element in a scene, from examples of their types. */
export function argumentsIn(
  { things }: Scene,
  element: string,
  examples: Readonly<Record<string, unknown>>,
): Readonly<Record<string, unknown>> {
  const known = Object.keys(examples).filter((key) => key in things);
  return {
    ...examples,
    ...Object.fromEntries(known.map((key) => [key, things[key]])),
    ...MEANT[element]?.(things),
  };
}

/** The input of a mutation; what is about accounts has people of its own. */
export async function inputIn(
  api: ApiClient,
  scene: Scene,
  name: string,
  example: Readonly<Record<string, unknown>>,
): Promise<Readonly<Record<string, unknown>>> {
  const ids = ['id', 'entryId'].filter((key) => key in example).map((key) => [key, randomUUID()]);
  const account = isOfAccounts(name) ? await accountScene(api, name, scene.competitionId) : null;
  return {
    ...argumentsIn(scene, `Mutation.${name}`, example),
    ...notebookInput(name, scene.notebook),
    ...Object.fromEntries(ids),
    ...account?.things,
  };
}

const OF_ATHLETE: ReadonlySet<Asker> = new Set(['coach', 'athlete', 'guardian']);

/** A token of the role for the things of this scene. What a coach writes says which person wrote it. */
export async function tokenFor(
  api: ApiClient,
  asker: Asker,
  scene: Scene,
  element = '',
): Promise<string | null> {
  const [type, name = ''] = element.split('.');
  const isNote = type === 'Mutation' && notebookInput(name, scene.notebook) !== null;
  if (asker === 'coach' && isNote) return scene.notebook.coach;
  if (asker === 'public') return null;
  if (asker === 'admin') return api.token('admin');
  if (OF_ATHLETE.has(asker)) return api.token(asker, scene.athleteId);
  return api.token(asker, asker === 'official' ? scene.competitionId : scene.meetId);
}
