import {
  buildClientSchema,
  getIntrospectionQuery,
  getNamedType,
  getNullableType,
  isInputObjectType,
  isListType,
  type GraphQLInputType,
} from 'graphql';
import { randomUUID } from 'node:crypto';
import { accountScene, isOfAccounts } from '../support/account-scene.js';
import { call } from '../support/accounts.js';
import { startApi, type TestApi } from '../support/api.js';
import { highJumpSheet } from '../support/at-the-bar.js';
import { Circle } from '../support/at-the-circle.js';
import { groupCreate } from '../support/calling.js';
import { discusSheet } from '../support/circle.js';
import { Groups, groupSheet } from '../support/groups.js';
import { notebookInput, notebookScene, type NotebookScene } from '../support/notebook.js';
import { FITTING, JUMPED } from '../support/fitting-inputs.js';
import { CombinedScene } from '../support/combined.js';
import { everythingStored } from '../support/everything-stored.js';
import { callsOf, type Call } from '../support/example-values.js';
import { hostileValues, TEN_TO_THE_400TH, type HostileValue } from '../support/hostile-values.js';

/** Where a value is legal although the field's type is full of values that are not; each with the reason. */
const LEGAL: ReadonlySet<string> = new Set([
  // A meet may do without a venue.
  'meetCreate input.venue empty text',
  'meetCreate input.venue blanks',
  // GraphQL takes one value for a list of it.
  'meetScoringSet input.divisions.0.ages text',
  'athleteErase input.alsoListedAs text',
  // A disc may leave the hand with its nose down.
  'throwsLog input.throws.0.release.attitudeTenths less than zero',
]);

/** Calls that are refused all the same, after everything about their fields has been looked at. */
const REFUSED: Readonly<Record<string, string>> = {
  attemptWindRecord: 'WIND_NOT_MEASURED',
  combinedEventReopen: 'ALREADY_SO',
  competitionConfirm: 'NOT_FOUND',
  competitionReopen: 'ALREADY_SO',
  competitorFlightSet: 'FLIGHT_UNKNOWN',
  competitorMatch: 'ALREADY_MATCHED',
  competitorReinstate: 'ALREADY_SO',
  entryRule: 'NO_QUESTION',
  jumpOffDecline: 'NO_JUMP_OFF',
  pastResultWithdraw: 'NOT_FOUND',
  startingMarkWithdraw: 'NOT_FOUND',
  timetableDelay: 'VERSION_CONFLICT',
};

/** Calls that go through and leave nothing: done already, kept nowhere, or only a look at a table. */
const STORES_NOTHING: ReadonlySet<string> = new Set([
  ...['meetPublish', 'tokenIssue', 'entriesImport', 'pastResultsImport'],
]);

let api: TestApi;
let calls: Call[];
let athleteId: string;
/** Whose erasure changes nothing for the others. */
let forgottenId: string;
let clubId: string;

beforeAll(async () => {
  api = await startApi();
  calls = callsOf(buildClientSchema(await api.data(getIntrospectionQuery())), 'mutation');
  const { clubCreate, athleteCreate, forgotten } = await api.data(
    `mutation { clubCreate(input: { name: "Quarry Lane AC" }) { club { id } }
       athleteCreate(input: { givenName: "Odalys", familyName: "Thornwick", sex: W }) { athlete { id } }
       forgotten: athleteCreate(input: { givenName: "Nobody", familyName: "Known", sex: W }) { athlete { id } } }`,
    {},
    api.adminToken,
  );
  forgottenId = forgotten.athlete.id;
  clubId = clubCreate.club.id;
  athleteId = athleteCreate.athlete.id;
});
afterAll(() => api.close());

/** What is done at a bar; all else is tried at a discus. */
const AT_A_BAR: ReadonlySet<string> = new Set([
  'barSet',
  'jumpCorrect',
  'jumpOffDecline',
  'jumpOffRecord',
  'jumpOrderSet',
  'jumpRecord',
  'jumpsMove',
  'uprightsSet',
]);
const POLE_VAULT = highJumpSheet(3, ['3.20', '3.40', '3.60'], { event: 'pole-vault' });

/** A competition and, by the names of the fields that take them, the things in it. */
interface Scene {
  readonly circle: Circle;
  readonly things: Readonly<Record<string, unknown>>;
  /** Who makes the call, where that is somebody of its own. */
  readonly token?: string;
  readonly notebook?: NotebookScene;
}

/** Start lists are made before the first trial, all else needs one. */
async function sceneFor(name: string): Promise<Scene> {
  if (isOfAccounts(name)) return sceneOfAccounts(name);
  if (notebookInput(name, NO_NOTEBOOK) !== null) return sceneOfANotebook();
  if (name.startsWith('calling')) return sceneOfAGroup(name);
  if (name.startsWith('qualification')) return sceneOfAQualification(name);
  if (name.startsWith('combined')) return sceneOfCombinedEvent(name);
  return AT_A_BAR.has(name) ? sceneAtABar() : sceneAtACircle(name);
}

/** A decathlon with a time and a mark of its first entrant; for a ruling a second time, which is held. */
async function sceneOfCombinedEvent(name: string): Promise<Scene> {
  const circle = await Circle.open(api, discusSheet(3));
  const combined = await CombinedScene.open(api, circle.meet, ['1', '2', '3'], { programme: 'DECATHLON' });
  const time = await combined.time('1', 'RUN_100', '11.20 +0.3');
  const mark = await combined.mark('1', 'SHOT', '12.00');
  const second = name === 'combinedEntryRule' ? await combined.time('1', 'RUN_100', '11.30 +0.3') : null;
  const target = second ?? (name === 'combinedMarkCorrect' ? mark : time);
  const things = {
    ...{ athleteId, clubId, meetId: circle.meet.id, competitionId: circle.competition.id },
    ...{ combinedEventId: combined.id, entrantId: combined.entrants['3'] },
    ...{ targetEntryId: target.entry.id, expectedVersion: mark.combinedEvent.version },
  };
  return { circle, things };
}

const NO_NOTEBOOK: NotebookScene = { coach: '', athleteId: '', sessionId: '', throwId: '', focusId: '' };
let coached: Promise<NotebookScene> | null = null;

/** One coach for all of it: nothing that is written about one athlete is in the way of anything else. */
async function sceneOfANotebook(): Promise<Scene> {
  coached ??= notebookScene(api, athleteId);
  const notebook = await coached;
  const circle = await (anyCircle ??= Circle.open(api, discusSheet(1)));
  const { coach: token, ...things } = notebook;
  return { circle, things, token, notebook };
}
let anyCircle: Promise<Circle> | null = null;

async function sceneOfAccounts(name: string): Promise<Scene> {
  const circle = await Circle.open(api, discusSheet(3));
  return { circle, ...(await accountScene(api, name, circle.competition.id)) };
}

async function sceneAtABar(): Promise<Scene> {
  const circle = await Circle.open(api, POLE_VAULT);
  const [first, second, third] = [1, 2, 3].map((bib) => circle.competitorOf(bib));
  const turn = { competitorId: first, height: '3.20', trial: 1 };
  const { entry, competition } = await circle.enter('jumpRecord', { ...turn, ...JUMPED });
  const things = {
    ...{ competitionId: circle.competition.id, competitorId: second, competitorIds: [third] },
    ...{ attemptId: entry.id, expectedVersion: competition.version },
    moves: [{ attemptId: entry.id, competitorId: second, height: '3.20', trial: 1 }],
  };
  return { circle, things };
}

/** A competition that is called by itself, or the group that it is in. */
async function sceneOfAGroup(name: string): Promise<Scene> {
  const circle = await Circle.open(api, discusSheet(3));
  const things = {
    ...{ meetId: circle.meet.id, competitionIds: [circle.competition.id] },
    competitorIds: [3, 1, 2].map((bib) => circle.competitorOf(bib)),
  };
  if (name === 'callingGroupCreate') return { circle, things };
  const { callingGroup } = await groupCreate(api, circle.director, {
    ...{ meetId: circle.meet.id, competitionIds: [circle.competition.id] },
  });
  return {
    circle,
    things: { ...things, callingGroupId: callingGroup.id, expectedVersion: callingGroup.version },
  };
}

/** Two groups that are no qualification yet, or one with somebody who goes on. */
async function sceneOfAQualification(name: string): Promise<Scene> {
  if (name === 'qualificationCreate') {
    const circle = await Circle.open(api, groupSheet(1, 2));
    const other = await Circle.open(api, groupSheet(11, 2), circle.meet);
    const competitionIds = [circle.competition.id, other.competition.id];
    return { circle, things: { meetId: circle.meet.id, competitionIds } };
  }
  const groups = await Groups.open(api, [groupSheet(1, 2)]);
  await groups.record(0, { 1: ['61.00'] });
  return { circle: groups.circle(0), things: { qualificationId: groups.id } };
}

async function sceneAtACircle(name: string): Promise<Scene> {
  const circle = await Circle.open(api, discusSheet(3));
  const isBefore = [
    'bibsAssign',
    'entriesImport',
    'competitorEnter',
    'competitorWithdraw',
    'startOrderSet',
    'startListDraw',
  ].includes(name);
  const [[attemptId] = []] = isBefore ? [] : await circle.recordCard(['58.10']);
  const third = circle.competitorOf(3);
  const { version } = await circle.read();
  const moves = [{ attemptId, competitorId: circle.competitorOf(2), round: 1 }];
  const protestId = PROTEST_STEPS.has(name) ? await protestAt(circle, name === 'protestAppeal') : null;
  const lines = [3, 2, 1].map((bib) => ({ competitorId: circle.competitorOf(bib), flight: 'A' }));
  const things = {
    ...{ protestId, trialId: attemptId },
    ...{ athleteId, clubId, attemptId, moves, lines, implementId: await discusAt(circle) },
    ...{ meetId: circle.meet.id, competitionId: circle.competition.id, on: circle.competition.id },
    ...{ competitorId: third, competitorIds: [third], targetEntryId: attemptId, expectedVersion: version },
    ...{ afterRound: 3, plan: { rounds: 6, cuts: [{ after: 3, through: 8 }], reorderAfter: [3] } },
    slots: [
      {
        competitionIds: [circle.competition.id],
        ...{ facility: 'cage', startsAt: '2026-06-13T12:00:00Z', minutes: 60, reportMinutes: 30 },
      },
    ],
    competitionLimits: [{ competitionId: circle.competition.id, mostPerClub: 2 }],
    sheet: discusSheet(2),
    bibs: [{ competitorId: third, bib: '77' }],
  };
  return { circle, things };
}

const PROTEST_STEPS: ReadonlySet<string> = new Set(['protestAppeal', 'protestDecide', 'protestWithdraw']);

/** A protest, decided where it is to be appealed; gives its id. */
async function protestAt({ competition, referee }: Circle, isDecided: boolean): Promise<string> {
  const entryId = randomUUID();
  const head = { competitionId: competition.id, reason: 'called too late' };
  const lodged = { ...head, entryId, form: 'ORAL', ground: 'RULES', lodgedBy: 'coach' };
  await call(api, 'protestLodge', lodged, 'userErrors { code }', referee);
  const decided = { ...head, entryId: randomUUID(), protestId: entryId, by: 'referee', outcome: 'DISMISSED' };
  if (isDecided) await call(api, 'protestDecide', decided, 'userErrors { code }', referee);
  return entryId;
}

/** A discus on the register of the meet; gives its id. */
async function discusAt({ meet }: Circle): Promise<string> {
  const input = { meetId: meet.id, event: 'DISCUS', grams: 1000, label: 'LT 1' };
  const { implementRegister } = await api.data(
    `mutation ($input: ImplementRegisterInput!) { implementRegister(input: $input) { implement { id } } }`,
    { input },
    meet.referee,
  );
  return implementRegister.implement.id;
}

/** The call's input with things that are there, and with an example of everything on the way to `path`. */
function inputFor({ name, variables }: Call, { things, notebook }: Scene, path: readonly string[]): unknown {
  const example = variables['input'] as Record<string, unknown>;
  const known = Object.keys(example).filter((key) => key in things);
  const ids = ['id', 'entryId'].filter((key) => key in example).map((key) => [key, randomUUID()]);
  const input: Record<string, unknown> = {
    ...example,
    ...Object.fromEntries(known.map((key) => [key, things[key]])),
    ...Object.fromEntries(ids),
    ...FITTING[name],
    ...(name === 'athleteErase' && { athleteId: forgottenId }),
    ...(notebook && notebookInput(name, notebook)),
  };
  const [, top, ...below] = path;
  if (top !== undefined && below.length > 0 && valueAt(input[top], below) === undefined)
    input[top] = example[top];
  return input;
}

interface Field {
  readonly path: readonly string[];
  readonly type: GraphQLInputType;
}

/** Every field of the input, the input itself first; of lists their first element. */
function fieldsOf(type: GraphQLInputType, path: readonly string[]): Field[] {
  const bare: GraphQLInputType = getNullableType(type);
  const own = { path, type };
  if (isListType(bare)) return [own, ...fieldsOf(bare.ofType, [...path, '0'])];
  if (!isInputObjectType(bare)) return [own];
  const below = Object.values(bare.getFields());
  return [own, ...below.flatMap((field) => fieldsOf(field.type, [...path, field.name]))];
}

function valueAt(value: unknown, path: readonly string[]): unknown {
  return path.reduce((inner: any, key) => inner?.[key], value);
}

function withValue(value: unknown, [key, ...rest]: readonly string[], wanted: unknown): unknown {
  if (key === undefined) return wanted;
  if (Array.isArray(value))
    return value.map((one, at) => (String(at) === key ? withValue(one, rest, wanted) : one));
  return { ...(value as object), [key]: withValue((value as Record<string, unknown>)[key], rest, wanted) };
}

interface Answer {
  readonly status: number;
  readonly errors?: readonly { readonly message: string; readonly extensions: any }[];
  readonly data?: any;
}

async function send(call: Call, variables: unknown, token: string): Promise<Answer> {
  const body = JSON.stringify({ query: withUserErrors(call), variables });
  const response = await fetch(api.graphqlUrl, {
    method: 'POST',
    headers: {
      'content-type': 'application/json',
      accept: 'application/graphql-response+json',
      authorization: `Bearer ${token}`,
    },
    body: body.replaceAll(`"${TEN_TO_THE_400TH}"`, '1e400'),
  });
  return { status: response.status, ...((await response.json()) as Omit<Answer, 'status'>) };
}

function withUserErrors({ document }: Call): string {
  return document.replace('{ __typename }', '{ userErrors { code path remedy } }');
}

/** Directors may do all that can be done at a meet; clubs, athletes and meets are the administrator's. */
function tokenFor({ name, variables }: Call, { circle }: Scene): string {
  // It makes a meet, though it names one.
  if (name === 'meetCopy') return api.adminToken;
  const atMeet = [
    'entryId',
    'competitionId',
    'meetId',
    'competitorId',
    'callingGroupId',
    'combinedEventId',
    'entrantId',
  ];
  return atMeet.some((key) => key in (variables['input'] as object)) ? circle.director : api.adminToken;
}

/** What is wrong with the answer to a call whose field at `path` is hostile; `null`: it is as it should be. */
function complaint(
  { status, errors, data }: Answer,
  path: readonly string[],
  isData: boolean,
): string | null {
  if (status >= 500) return `status ${status}`;
  if (errors === undefined) {
    const { userErrors } = Object.values<any>(data)[0];
    if (userErrors.length === 0) return 'accepted';
    if (!isData) return `only a user error: ${JSON.stringify(userErrors)}`;
    return userErrors.some((error: Problem) => names(error, path)) ? null : JSON.stringify(userErrors);
  }
  if (errors.some(({ extensions }) => extensions.code !== 'BAD_USER_INPUT')) return JSON.stringify(errors);
  const fields: Problem[] = errors.flatMap(({ extensions }) => extensions.fields ?? []);
  return fields.some((field) => names(field, path)) ? null : `not named: ${JSON.stringify(errors)}`;
}

interface Problem {
  readonly path: readonly string[] | null;
  readonly remedy: string;
}

/** A key too many is named by the object that has it, an element by its list or by what is wrong inside it. */
function names({ path: given, remedy }: Problem, path: readonly string[]): boolean {
  if (given === null || remedy === '') return false;
  const shared = path.filter((key, at) => given[at] === key).length;
  return shared === path.length || (shared === given.length && shared >= path.length - 1);
}

const IS_LONG = process.env['LONG'] === '1';
const FEW = 4;
/** Fields by name and type, with how often they have been met. */
const met = new Map<string, number>();

/**
 * Everything for a field that is met for the first time, or in the long run. Most fields of the journal are in every
 * mutation of it: the others get a few values, and each time different ones.
 */
function valuesFor(path: readonly string[], type: GraphQLInputType, example: unknown): HostileValue[] {
  const values = hostileValues(type, example);
  const key = `${path.slice(1).join('.')}: ${String(type)}`;
  const times = met.get(key) ?? 0;
  met.set(key, times + 1);
  if (IS_LONG || times === 0) return values;
  return values.filter((_, at) => (at + times) % Math.ceil(values.length / FEW) === 0);
}

/** What a table says is read as data: its faults are told by line and column. */
function isTable(path: readonly string[]): boolean {
  return ['csv.text', 'csv.base64'].includes(path.slice(-2).join('.'));
}

/** Sends one call with hostile values in every place. */
async function attack(call: Call): Promise<{ sent: number; complaints: string[] }> {
  const scene = await sceneFor(call.name);
  const before = await everythingStored(api.databaseUrl);
  const complaints: string[] = [];
  let sent = 0;
  for (const { path, type } of fieldsOf(call.argumentTypes['input']!, ['input'])) {
    for (const { what, value } of valuesFor(path, type, valueAt(call.variables, path))) {
      const where = `${call.name} ${path.join('.')} ${what}`;
      if (LEGAL.has(where)) continue;
      const variables = withValue({ input: inputFor(call, scene, path) }, path, value);
      // What is right in form and wrong in fact may be told as a business error.
      const isData = getNamedType(type).name === 'JSON' || isTable(path) || what === 'less than zero';
      const found = complaint(
        await send(call, variables, scene.token ?? tokenFor(call, scene)),
        path,
        isData,
      );
      if (found !== null) complaints.push(`${where}: ${found}`);
      sent += 1;
    }
  }
  if ((await everythingStored(api.databaseUrl)) !== before) complaints.push(`${call.name} stored something`);
  return { sent, complaints };
}

describe('every field of every mutation', () => {
  it('refuses by name what it cannot be, and nothing is stored', async () => {
    let sent = 0;
    const complaints: string[] = [];
    for (const call of calls) {
      const attacked = await attack(call);
      sent += attacked.sent;
      complaints.push(...attacked.complaints);
    }
    expect(complaints.slice(0, 40)).toEqual([]);
    expect(sent).toBeGreaterThan(1_000);
  }, 300_000);

  it('takes what it can be: the same calls without a hostile field go through', async () => {
    expect(calls.length).toBeGreaterThan(20);
    for (const call of calls) {
      const scene = await sceneFor(call.name);
      const before = await everythingStored(api.databaseUrl);
      const answer = await send(
        call,
        { input: inputFor(call, scene, []) },
        scene.token ?? tokenFor(call, scene),
      );
      expect([call.name, answer.errors]).toEqual([call.name, undefined]);
      const codes = answer.data[call.name].userErrors.map(({ code }: { code: string }) => code);
      const refused = REFUSED[call.name];
      expect([call.name, codes]).toEqual([call.name, refused === undefined ? [] : [refused]]);
      const isStored = (await everythingStored(api.databaseUrl)) !== before;
      const storesNothing = refused !== undefined || STORES_NOTHING.has(call.name);
      expect([call.name, isStored]).toEqual([call.name, !storesNothing]);
    }
  }, 120_000);
});
