import { ApiClient, type Failure } from '../offline/api-client.js';
import { holderOf, kindOf } from '../offline/object-ids.js';
import type { DeskStore } from './desk-store.js';
import type { SignIn } from './keeping/database.js';

const VIEWER = `query DeskViewer { viewer { label grants { role on } } }`;

const MEET = `query DeskMeet($id: ID!) {
  meet(id: $id) { name competitions { id title status startsAt } }
}`;

const COMPETITION = `query DeskTitle($id: ID!) {
  competition(id: $id) { id title status startsAt meet { name } }
}`;

const GROUP = `query DeskGroup($id: ID!) {
  callingGroup(id: $id) { meet { name } competitions { id title status startsAt } }
}`;

/** A competition that this device may record. */
export interface Recordable {
  readonly id: string;
  readonly title: string;
  readonly status: string;
  readonly startsAt: string | null;
  readonly meet: string;
}

type Row = Omit<Recordable, 'meet'>;

/** Signs in with a token of a post; null: done. */
export async function signInWith(store: DeskStore, token: string): Promise<Failure | null> {
  const client = new ApiClient(() => token);
  const answer = await client.send<{ viewer: Pick<SignIn, 'grants'> & { label: string | null } }>(VIEWER, {});
  if (!answer.ok) return answer.failure;
  const { label, grants } = answer.data.viewer;
  await store.keepSignIn({ token, label: label ?? '', holder: holderOf(token) ?? token, grants });
  return null;
}

/** What the token in the address says, once: it is taken out of the address, so that it is in no history. */
export function tokenInAddress(): string | null {
  const token = new URLSearchParams(location.hash.slice(1)).get('token');
  if (token !== null) history.replaceState(null, '', location.pathname);
  return token;
}

/** The competitions for which the token is. */
export async function recordable(client: ApiClient, { grants }: SignIn): Promise<Recordable[] | Failure> {
  const found: Recordable[] = [];
  for (const { role, on } of grants) {
    if (on === null) continue;
    const rows = await competitionsFor(client, role, on);
    if ('kind' in rows) return rows;
    found.push(...rows);
  }
  return found.filter(({ id }, at) => found.findIndex((other) => other.id === id) === at);
}

function competitionsFor(client: ApiClient, role: string, on: string): Promise<Recordable[] | Failure> {
  if (kindOf(on) === 'CallingGroup') return groupOf(client, on);
  return role === 'OFFICIAL' ? oneOf(client, on) : allOf(client, on);
}

/** Several competitions that are called in one order. */
async function groupOf(client: ApiClient, id: string): Promise<Recordable[] | Failure> {
  const answer = await client.send<{
    callingGroup: { meet: { name: string }; competitions: Row[] } | null;
  }>(GROUP, { id });
  if (!answer.ok) return answer.failure;
  const { callingGroup } = answer.data;
  return (callingGroup?.competitions ?? []).map((row) => ({ ...row, meet: callingGroup!.meet.name }));
}

async function oneOf(client: ApiClient, id: string): Promise<Recordable[] | Failure> {
  const answer = await client.send<{ competition: (Row & { meet: { name: string } }) | null }>(COMPETITION, {
    id,
  });
  if (!answer.ok) return answer.failure;
  const { competition } = answer.data;
  return competition ? [{ ...competition, meet: competition.meet.name }] : [];
}

async function allOf(client: ApiClient, id: string): Promise<Recordable[] | Failure> {
  const answer = await client.send<{ meet: { name: string; competitions: Row[] } | null }>(MEET, { id });
  if (!answer.ok) return answer.failure;
  const { meet } = answer.data;
  return (meet?.competitions ?? []).map((row) => ({ ...row, meet: meet!.name }));
}
