import { randomBytes, randomUUID } from 'node:crypto';
import type { ApiClient, GraphqlAnswer } from './client.js';

/** A person who has chosen a password and is signed in. */
export interface SignedInPerson {
  /** As the API shows it. */
  readonly id: string;
  readonly loginName: string;
  readonly password: string;
  readonly accessToken: string;
  readonly refreshToken: string;
}

export const SESSION = `session { accessToken accessExpiresAt refreshToken refreshExpiresAt person { id loginName } }
  userErrors { code message path remedy }`;

/** Somewhere else every time, so that the tries of one test do not count in another. */
export function anyAddress(): string {
  const [a, b, c] = randomBytes(3);
  return `10.${a}.${b}.${c}`;
}

/** Calls one mutation with its input, from an address that the server's proxy names; the whole answer. */
export async function answerTo(
  api: ApiClient,
  name: string,
  input: object,
  selection: string,
  token: string | null = null,
  from: string = anyAddress(),
): Promise<GraphqlAnswer> {
  const type = `${name[0]!.toUpperCase()}${name.slice(1)}Input`;
  const query = `mutation ($input: ${type}!) { ${name}(input: $input) { ${selection} } }`;
  const response = await fetch(api.graphqlUrl, {
    method: 'POST',
    headers: {
      'content-type': 'application/json',
      'x-forwarded-for': from,
      ...(token !== null && { authorization: `Bearer ${token}` }),
    },
    body: JSON.stringify({ query, variables: { input } }),
  });
  const { data, errors } = (await response.json()) as Pick<GraphqlAnswer, 'data' | 'errors'>;
  return { status: response.status, data, errors };
}

/** The payload of a mutation that must have one. */
export async function call(...request: Parameters<typeof answerTo>): Promise<any> {
  const { data, errors } = await answerTo(...request);
  if (errors) throw new Error(`The API answered with errors: ${JSON.stringify(errors)}`);
  return data[request[1]];
}

/** An account as its maker sees it, with the code that is shown once. */
export async function newPerson(
  api: ApiClient,
  input: object = {},
  token: string = api.adminToken,
): Promise<{ id: string; loginName: string; code: string }> {
  const loginName = `person-${randomUUID()}`;
  const made = await call(
    api,
    'personCreate',
    { loginName, displayName: 'Orla Fennick', ...input },
    'person { id loginName } setupCode { code } userErrors { code }',
    token,
  );
  if (made.userErrors.length > 0) throw new Error(JSON.stringify(made.userErrors));
  return { ...made.person, code: made.setupCode.code };
}

export async function signedInPerson(
  api: ApiClient,
  roles: readonly { readonly role: string; readonly on?: string; readonly until?: string }[] = [],
): Promise<SignedInPerson> {
  const { id, loginName, code } = await newPerson(api);
  for (const role of roles) await giveRole(api, id, role);
  const password = `four sectors ${randomUUID().slice(0, 8)}`;
  const { session } = await call(api, 'passwordSetUp', { loginName, setupCode: code, password }, SESSION);
  return { id, loginName, password, accessToken: session.accessToken, refreshToken: session.refreshToken };
}

/** Gives a role as an administrator; gives the grant's id. */
export async function giveRole(
  api: ApiClient,
  personId: string,
  role: { readonly role: string; readonly on?: string; readonly until?: string },
): Promise<string> {
  const given = await call(
    api,
    'roleGrant',
    { personId, ...role },
    'grant { id } userErrors { code path }',
    api.adminToken,
  );
  if (given.userErrors.length > 0) throw new Error(JSON.stringify(given.userErrors));
  return given.grant.id;
}

export async function signIn(api: ApiClient, loginName: string, password: string): Promise<any> {
  return call(api, 'signIn', { loginName, password }, SESSION);
}
