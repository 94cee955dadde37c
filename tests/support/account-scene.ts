import { randomUUID } from 'node:crypto';
import { call, giveRole, newPerson, signedInPerson } from './accounts.js';
import type { ApiClient } from './client.js';

/** What a call about accounts needs, by the names of its fields, and who makes it. */
export interface AccountScene {
  readonly things: Readonly<Record<string, unknown>>;
  readonly token: string;
}

type Make = (api: ApiClient, competitionId: string) => Promise<AccountScene>;

const byAdmin =
  (make: (api: ApiClient, competitionId: string) => Promise<AccountScene['things']>): Make =>
  async (api, competitionId) => ({ things: await make(api, competitionId), token: api.adminToken });

/** A link for a competition, made by an administrator. */
async function newLink(api: ApiClient, on: string): Promise<{ id: string; url: string }> {
  const input = { on, label: 'Circle 2 tablet', until: '2999-01-01T00:00:00Z' };
  const { link } = await call(api, 'deviceLinkCreate', input, 'link { id url }', api.adminToken);
  return link;
}

/** By the mutation: people who are there, with what they know. */
const SCENES: Readonly<Record<string, Make>> = {
  personCreate: byAdmin(() => Promise.resolve({ loginName: `person-${randomUUID()}` })),
  personClose: byAdmin(async (api) => ({ personId: (await newPerson(api)).id })),
  setupCodeIssue: byAdmin(async (api) => ({ personId: (await newPerson(api)).id })),
  roleGrant: byAdmin(async (api, on) => {
    const window = { from: null, until: null };
    return { personId: (await newPerson(api)).id, role: 'OFFICIAL', on, ...window };
  }),
  roleRevoke: byAdmin(async (api, on) => {
    const { id } = await newPerson(api);
    return { grantId: await giveRole(api, id, { role: 'OFFICIAL', on }) };
  }),
  tokenRevoke: byAdmin(() => Promise.resolve({ tokenId: randomUUID() })),
  passwordSetUp: byAdmin(async (api) => {
    const { loginName, code } = await newPerson(api);
    return { loginName, setupCode: code, password: 'two hammers and a net' };
  }),
  signIn: byAdmin(async (api) => {
    const { loginName, password } = await signedInPerson(api);
    return { loginName, password };
  }),
  sessionRefresh: byAdmin(async (api) => {
    const { refreshToken } = await signedInPerson(api);
    return { refreshToken };
  }),
  deviceLinkCreate: byAdmin((_api, on) =>
    Promise.resolve({ on, from: null, until: '2999-01-01T00:00:00Z', devices: 2 }),
  ),
  deviceLinkRevoke: byAdmin(async (api, on) => ({ linkId: (await newLink(api, on)).id })),
  deviceLinkExchange: byAdmin(async (api, on) => {
    const { url } = await newLink(api, on);
    return { link: new URL(url).hash.replace('#link=', ''), deviceId: randomUUID() };
  }),
  passwordChange: async (api) => {
    const { password, accessToken } = await signedInPerson(api);
    return { things: { current: password, password: 'two hammers and a net' }, token: accessToken };
  },
  signOut: async (api) => {
    const { accessToken } = await signedInPerson(api);
    return { things: { isEverywhere: false }, token: accessToken };
  },
};

export function isOfAccounts(name: string): boolean {
  return name in SCENES;
}

/** Throws when the mutation is about something else. */
export async function accountScene(
  api: ApiClient,
  name: string,
  competitionId: string,
): Promise<AccountScene> {
  const make = SCENES[name];
  if (!make) throw new Error(`${name} is not about accounts.`);
  return make(api, competitionId);
}
