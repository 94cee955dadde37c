import {
  buildClientSchema,
  getIntrospectionQuery,
  getNamedType,
  isCompositeType,
  isObjectType,
  type GraphQLField,
  type GraphQLSchema,
} from 'graphql';
import { resolvers } from '../../apps/api/src/schema/print-schema.js';
import { anyAddress } from '../support/accounts.js';
import { startApi, type TestApi } from '../support/api.js';
import { exampleOf } from '../support/example-values.js';
import { listenByEvents } from '../support/listening.js';
import { eventually } from '../support/live.js';
import { MATRIX } from './authorisation/matrix.js';
import { ASKERS, PLACES, type Asker, type Place } from './authorisation/rows.js';
import {
  argumentsIn,
  inputIn,
  isAtHome,
  makeScene,
  tokenFor,
  WAYS,
  type Scene,
} from './authorisation/scene.js';

let api: TestApi;
let schema: GraphQLSchema;
/** What the roles are for where the object in hand is somebody else's. */
let home: Scene;
const kept = new Map<Place, Scene>();

beforeAll(async () => {
  api = await startApi();
  schema = buildClientSchema(await api.data(getIntrospectionQuery()));
  home = await makeScene(api, 'own');
}, 60_000);
afterAll(() => api.close());

/** Queries, mutations and subscriptions of the schema, and fields of objects that a resolver of their own answers. */
function elements(of: GraphQLSchema): string[] {
  const roots = [of.getQueryType(), of.getMutationType(), of.getSubscriptionType()];
  const entrances = roots.flatMap((type) =>
    type ? Object.keys(type.getFields()).map((field) => `${type.name}.${field}`) : [],
  );
  // What a payload adds to the answer of a mutation is as open as the mutation.
  return [...entrances, ...resolvedFields().filter((element) => !/^\w+Payload\./.test(element))];
}

function resolvedFields(): string[] {
  return resolvers().flatMap((resolver) =>
    Object.getOwnPropertyNames(resolver.prototype).flatMap((name) => {
      const method = resolver.prototype[name] as object;
      if (typeof method !== 'function' || !Reflect.hasMetadata('graphql:resolve_property', method)) return [];
      const field = (Reflect.getMetadata('graphql:resolver_name', method) as string | undefined) ?? name;
      return [`${String(Reflect.getMetadata('graphql:resolver_type', resolver))}.${field}`];
    }),
  );
}

it('every query, mutation and resolved field says in the matrix who may ask for it', () => {
  const known = elements(schema);
  const missing = known.filter((element) => !(element in MATRIX));
  // Add the line to tests/api/authorisation/matrix.ts: 'Type.field': who, as rows.ts names them.
  expect(missing).toEqual([]);
  expect(Object.keys(MATRIX).filter((element) => !known.includes(element))).toEqual([]);
});

/** After these the same thing can't be asked for again. */
const ONCE: ReadonlySet<string> = new Set([
  'Mutation.combinedEntrantWithdraw',
  'Mutation.competitorWithdraw',
  'Mutation.qualificationDissolve',
]);

async function sceneAt(place: Place): Promise<Scene> {
  const there = kept.get(place) ?? (await makeScene(api, place));
  kept.set(place, there);
  return there;
}

interface Request {
  readonly query: string;
  readonly variables: object;
}

function fieldOf(type: string, name: string): GraphQLField<unknown, unknown> {
  const object = schema.getType(type);
  if (!isObjectType(object)) throw new Error(`${type} is no object.`);
  return object.getFields()[name]!;
}

/** A request for one element, with everything that it needs but the right to it. */
async function requestFor(element: string, scene: Scene): Promise<Request> {
  const [type = '', name = ''] = element.split('.');
  const field = fieldOf(type, name);
  const examples = Object.fromEntries(field.args.map((arg) => [arg.name, exampleOf(arg.type)]));
  const selection = type === 'Mutation' ? '{ userErrors { code path } }' : '{ __typename }';
  const passed = field.args.map((arg) => `${arg.name}: $${arg.name}`).join(', ');
  const chosen = isCompositeType(getNamedType(field.type)) ? selection : '';
  const call = `${name}${passed === '' ? '' : `(${passed})`} ${chosen}`;
  const declared = field.args.map((arg) => `$${arg.name}: ${String(arg.type)}`);
  if (type === 'Mutation') {
    const input = await inputIn(api, scene, name, examples['input'] as Record<string, unknown>);
    return { query: `mutation (${declared.join(', ')}) { ${call} }`, variables: { input } };
  }
  const own = argumentsIn(scene, element, examples);
  const way = type === 'Query' || type === 'Subscription' ? '#' : WAYS[type];
  if (way === undefined) throw new Error(`Say in scene.ts (WAYS) how a query comes to a ${type}.`);
  const ids = [...way.matchAll(/\$(\w+)/g)].map(([, id]) => id!);
  const variables = { ...own, ...Object.fromEntries(ids.map((id) => [id, scene.things[id]])) };
  const head = [...declared, ...ids.map((id) => `$${id}: ID!`)].join(', ');
  const kind = type === 'Subscription' || type === 'LiveCompetition' ? 'subscription' : 'query';
  return {
    query: `${kind} ${head === '' ? '' : `(${head})`} { ${way.replace('#', () => call)} }`,
    variables,
  };
}

interface Problem {
  readonly code: string;
  readonly path: readonly string[] | null;
}

/** Fields that name the object in hand: not to find that is not to be let through. */
const OBJECTS: ReadonlySet<unknown> = new Set([
  ...['meetId', 'competitionId', 'callingGroupId', 'qualificationId', 'combinedEventId', 'implementId'],
  ...['personId', 'grantId', 'linkId', 'on', 'id', 'athleteId'],
]);

const DENIED: ReadonlySet<unknown> = new Set(['UNAUTHENTICATED', 'FORBIDDEN']);

interface Answer {
  readonly data?: any;
  readonly errors?: any[];
}

async function answered(request: Request, token: string | null): Promise<Answer> {
  const response = await fetch(api.graphqlUrl, {
    method: 'POST',
    headers: {
      'content-type': 'application/json',
      'x-forwarded-for': anyAddress(),
      ...(token !== null && { authorization: `Bearer ${token}` }),
    },
    body: JSON.stringify(request),
  });
  return (await response.json()) as Answer;
}

/** What a subscription tells first. Not to find what it is about is not to be let through. */
async function firstTold({ query, variables }: Request, token: string | null): Promise<Answer> {
  const listener = await listenByEvents(api.url, { ...variables }, token, query);
  await eventually(
    () => [listener.seen.length, listener.errors.length],
    (counts) => counts.some((count) => count > 0),
  );
  listener.stop();
  const hidden = listener.errors.some(({ message }) => /not published and not yours/.test(message));
  return hidden
    ? { data: { hidden: null } }
    : { data: listener.seen, errors: listener.errors[0] && listener.errors };
}

/** Whether the asker was let through: to an answer, or to a refusal for another reason. */
async function isAllowed(element: string, asker: Asker, place: Place): Promise<boolean> {
  const scene = await sceneAt(place);
  const { query, variables } = await requestFor(element, scene);
  const token = await tokenFor(api, asker, isAtHome(place) ? scene : home, element);
  const { data, errors } = await (query.startsWith('subscription') ? firstTold : answered)(
    { query, variables },
    token,
  );
  if (errors?.some(({ extensions }) => DENIED.has(extensions.code))) return false;
  if (errors) throw new Error(`${element}: give it in scene.ts what it needs: ${JSON.stringify(errors)}`);
  if (!element.startsWith('Mutation.')) return Object.values(data)[0] !== null;
  const { userErrors } = Object.values<any>(data)[0];
  if (ONCE.has(element)) kept.delete(place);
  return !userErrors.some(({ code, path }: Problem) => code === 'NOT_FOUND' && OBJECTS.has(path?.at(-1)));
}

function sorted(who: readonly Asker[]): string {
  return ASKERS.filter((asker) => who.includes(asker)).join(' ');
}

describe.each(Object.entries(MATRIX))('%s', (element, row) => {
  it('is for whom the matrix says, in each place', async () => {
    const found: Record<string, string> = {};
    for (const place of PLACES) {
      const allowed: Asker[] = [];
      // The refused first: they leave everything as it is.
      const order = [...ASKERS].sort(
        (a, b) => Number(row[place].includes(a)) - Number(row[place].includes(b)),
      );
      for (const asker of order) if (await isAllowed(element, asker, place)) allowed.push(asker);
      found[place] = sorted(allowed);
    }
    expect(found).toEqual(Object.fromEntries(PLACES.map((place) => [place, sorted(row[place])])));
  }, 60_000);
});
