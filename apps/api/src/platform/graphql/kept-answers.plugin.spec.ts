import { createSchema, createYoga } from 'graphql-yoga';
import type { CompetitionMemory } from '../competition/competition-memory.js';
import type { LoadedCompetition } from '../competition/loaded.js';
import { globalId } from '../inputs/global-id.js';
import { useKeptAnswers } from './kept-answers.plugin.js';

const UUID = '00000000-0000-7000-8000-000000000001';
const OTHER = '00000000-0000-7000-8000-000000000002';
const ID = globalId('Competition', UUID);

/** A server with one competition in its memory, that counts how often it is asked to resolve. */
function server() {
  const at = (version: number) => ({ row: { id: UUID, version } }) as unknown as LoadedCompetition;
  const state = { resolved: 0, loaded: at(1) as LoadedCompetition | undefined, isPublic: true };
  const memory = {
    atHand: (_organisation: string, id: string) => (id === UUID ? state.loaded : undefined),
  } as unknown as CompetitionMemory;
  const schema = createSchema({
    typeDefs: `type Query { competition(id: ID!): Competition now: Int }
               type Competition { title: String version: Int callList: Int }`,
    resolvers: {
      Query: {
        competition: () => {
          state.resolved += 1;
          return { title: 'Discus', version: state.loaded?.row.version ?? 0, callList: 1 };
        },
      },
    },
  });
  const identity = { organisationId: OTHER };
  const yoga = createYoga<any, any>({
    schema,
    logging: false,
    context: () => ({ identity: { ...identity, isPublic: state.isPublic }, traceId: 't' }),
    plugins: [useKeptAnswers(memory) as object],
  });
  const ask = async (query: string, variables: object = { id: ID }): Promise<unknown> => {
    const body = JSON.stringify({ query, variables });
    const request = { method: 'POST', headers: { 'content-type': 'application/json' }, body };
    const req = { identity: { ...identity, isPublic: state.isPublic } };
    return (await yoga.fetch('http://x/graphql', request, { req })).json();
  };
  return { state, at, ask };
}

const READ = 'query ($id: ID!) { competition(id: $id) { title version } }';
const ANSWER = { data: { competition: { title: 'Discus', version: 1 } } };

describe('what the public is answered about a competition', () => {
  it('is resolved once for a version', async () => {
    const { state, at, ask } = server();
    expect([await ask(READ), await ask(READ), await ask(READ)]).toEqual([ANSWER, ANSWER, ANSWER]);
    expect(state.resolved).toBe(1);
    state.loaded = at(2);
    expect(await ask(READ)).toEqual({ data: { competition: { title: 'Discus', version: 2 } } });
    expect(state.resolved).toBe(2);
  });

  it('is not kept when the version is not at hand', async () => {
    const { state, ask } = server();
    state.loaded = undefined;
    await ask(READ);
    await ask(READ);
    expect(state.resolved).toBe(2);
  });

  it('is another answer for another question', async () => {
    const { state, ask } = server();
    await ask(READ);
    expect(await ask(READ.replace('title', 'name: title'))).toEqual({
      data: { competition: { name: 'Discus', version: 1 } },
    });
    expect(await ask('{ competition(id: "x") { title } }')).toEqual({
      data: { competition: { title: 'Discus' } },
    });
    expect(state.resolved).toBe(3);
  });

  it.each([
    [
      'with a field that is not known to be of the version alone',
      'query ($id: ID!) { competition(id: $id) { callList } }',
    ],
    ['with another field beside the competition', 'query ($id: ID!) { now competition(id: $id) { title } }'],
    ['through a fragment', 'query ($id: ID!) { competition(id: $id) { ... on Competition { title } } }'],
  ])('is not kept %s', async (_what, query) => {
    const { state, ask } = server();
    await ask(query);
    await ask(query);
    expect(state.resolved).toBe(2);
  });

  it('is neither made of nor given to a request with a token', async () => {
    const { state, ask } = server();
    await ask(READ);
    state.isPublic = false;
    await ask(READ);
    await ask(READ);
    expect(state.resolved).toBe(3);
  });
});
