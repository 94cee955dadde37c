import { randomUUID } from 'node:crypto';
import request from 'supertest';
import type { Role } from '../../apps/api/src/platform/identity/grant.js';
import type { Tokens } from '../../apps/api/src/platform/identity/tokens.js';
import { readGlobalId } from '../../apps/api/src/platform/inputs/global-id.js';

export interface GraphqlAnswer {
  readonly status: number;
  readonly data: any;
  readonly errors:
    | readonly { message: string; path?: readonly (string | number)[]; extensions: any }[]
    | undefined;
}

/** An API as any client reaches it over HTTP, and the key to its tokens. */
export interface ApiClient {
  readonly graphqlUrl: string;
  readonly organisationId: string;
  readonly adminToken: string;
  /** A token with one grant; `on` is an id as the API shows it. */
  token(role: Role, on?: string, window?: { from?: number; until?: number }): Promise<string>;
  /** Sends a document by POST; without a token as the public. */
  send(query: string, variables?: object, token?: string | null): Promise<GraphqlAnswer>;
  /** The same for an answer that must hold data and no error. */
  data(query: string, variables?: object, token?: string | null): Promise<any>;
}

export async function clientOf(url: string, tokens: Tokens): Promise<ApiClient> {
  const { organisationId } = tokens.everybody;
  const graphqlUrl = `${url}/graphql`;
  const send = sender(graphqlUrl);
  const token: ApiClient['token'] = (role, on, window) => {
    const named = on === undefined ? null : readGlobalId(on);
    const scope = named?.kind === 'CallingGroup' ? ({ scope: 'calling-group' } as const) : {};
    const [from, until] = [window?.from ?? null, window?.until ?? null];
    const grant = { role, on: named?.uuid ?? on ?? null, ...scope, from, until };
    return tokens.issue({ holder: randomUUID(), organisationId, grants: [grant], label: `test ${role}` });
  };
  return {
    graphqlUrl,
    organisationId,
    adminToken: await token('admin'),
    token,
    send,
    data: async (query, variables, bearer) => {
      const answer = await send(query, variables, bearer);
      if (answer.errors) throw new Error(`The API answered with errors: ${JSON.stringify(answer.errors)}`);
      return answer.data;
    },
  };
}

function sender(graphqlUrl: string): ApiClient['send'] {
  const { origin, pathname } = new URL(graphqlUrl);
  return async (query, variables = {}, token = null) => {
    const asked = request(origin)
      .post(pathname)
      .set('content-type', 'application/json')
      .set('accept', 'application/graphql-response+json');
    if (token !== null) asked.set('authorization', `Bearer ${token}`);
    const { status, body } = await asked.send(JSON.stringify({ query, variables }));
    const { data, errors } = body as Pick<GraphqlAnswer, 'data' | 'errors'>;
    return { status, data, errors };
  };
}
