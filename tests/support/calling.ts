import { randomUUID } from 'node:crypto';
import type { ApiClient } from './client.js';

export const GROUP = `
  id title facility warmUpMinutes version meet { id }
  competitions { id title version }
  startList {
    position competition name categoryAge implementGrams competitor { id bib position displayName }
  }
  progress {
    phase awaits round height nextHeight remaining awaitingHeight interrupted finished
    up { competition competitor bib name round height implementGrams isJumpOff } next { bib } then { bib }
    calls { bib round } outstanding { bib }
    timeAllowed { seconds because left startsWhen rule }
  }`;

const PAYLOAD = `callingGroup { ${GROUP} }
  userErrors { code path message rule remedy ... on VersionConflict { currentVersion } }`;

export async function groupCreate(api: ApiClient, token: string, input: object): Promise<any> {
  const query = `mutation ($input: CallingGroupCreateInput!) { callingGroupCreate(input: $input) { isReplay ${PAYLOAD} } }`;
  const given = { id: randomUUID(), title: 'Circle 1', ...input };
  return (await api.data(query, { input: given }, token)).callingGroupCreate;
}

export async function groupUpdate(api: ApiClient, token: string, input: object): Promise<any> {
  const query = `mutation ($input: CallingGroupUpdateInput!) { callingGroupUpdate(input: $input) { ${PAYLOAD} } }`;
  return (await api.data(query, { input }, token)).callingGroupUpdate;
}

export async function groupOrderSet(api: ApiClient, token: string, input: object): Promise<any> {
  const query = `mutation ($input: CallingOrderSetInput!) { callingOrderSet(input: $input) { ${PAYLOAD} } }`;
  return (await api.data(query, { input }, token)).callingOrderSet;
}

/** The group as the holder of the token sees it; null: not at all. */
export async function groupRead(api: ApiClient, id: string, token: string | null = null): Promise<any> {
  const query = `query ($id: ID!) { callingGroup(id: $id) { ${GROUP} } }`;
  return (await api.data(query, { id }, token)).callingGroup;
}
