import { ApiClient, type Failure } from '../offline/api-client.js';
import { holderOf, keyOf, kindOf } from '../offline/object-ids.js';
import { exchanged, type Pass } from '../offline/pass.js';
import { uuidV7 } from '../offline/uuid-v7.js';
import type { DeskStore } from './desk-store.js';
import type { KeptGroup, SignIn } from './keeping/database.js';

const VIEWER = `query DeskViewer { viewer { label grants { role on isWindsOnly } } }`;

const MEET = `query DeskMeet($id: ID!) {
  meet(id: $id) { name competitions { id title status startsAt } }
}`;

const COMPETITION = `query DeskTitle($id: ID!) {
  competition(id: $id) { id title status startsAt meet { name } }
}`;

const GROUP = `query DeskGroup($id: ID!) {
  callingGroup(id: $id) {
    title startsAt meet { name } competitions { id status } startList { competitor { id } }
  }
}`;

/** A competition that this device may record. */
export interface Recordable {
  readonly id: string;
  readonly title: string;
  readonly status: string;
  readonly startsAt: string | null;
  readonly meet: string;
  /** Of a calling group; null: one competition. */
  readonly group: KeptGroup | null;
}

type Row = Omit<Recordable, 'meet' | 'group'>;

/** Signs in with a token of a post; null: done. */
async function signInWith(store: DeskStore, token: string): Promise<Failure | null> {
  const client = new ApiClient(() => token);
  const answer = await client.send<{ viewer: Pick<SignIn, 'grants'> & { label: string | null } }>(VIEWER, {});
  if (!answer.ok) return answer.failure;
  const { label, grants } = answer.data.viewer;
  await store.keepSignIn({ token, label: label ?? '', holder: holderOf(token) ?? token, grants });
  return null;
}

/** Signs in with what was given; null: done. The same device gets the token of a link again. */
export async function comeIn(store: DeskStore, { kind, text }: Pass): Promise<Failure | null> {
  if (kind === 'token') return signInWith(store, text);
  const deviceId = store.settings.value.deviceId ?? uuidV7();
  await store.keepSettings({ deviceId });
  const token = await exchanged(text, deviceId);
  return typeof token === 'string' ? signInWith(store, token) : token;
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
export async function groupOf(client: ApiClient, id: string): Promise<Recordable[] | Failure> {
  const answer = await client.send<{
    callingGroup: {
      title: string;
      startsAt: string | null;
      meet: { name: string };
      competitions: { id: string; status: string }[];
      startList: { competitor: { id: string } }[];
    } | null;
  }>(GROUP, { id });
  if (!answer.ok) return answer.failure;
  const { callingGroup } = answer.data;
  if (!callingGroup) return [];
  const { title, startsAt, meet, competitions, startList } = callingGroup;
  const group = {
    id,
    title,
    competitionIds: competitions.map((one) => one.id),
    startOrder: startList.map(({ competitor }) => keyOf(competitor.id)),
  };
  const isOver = competitions.every(({ status }) => status === 'OFFICIAL');
  return [{ id, title, status: isOver ? 'OFFICIAL' : 'OPEN', startsAt, meet: meet.name, group }];
}

async function oneOf(client: ApiClient, id: string): Promise<Recordable[] | Failure> {
  const answer = await client.send<{ competition: (Row & { meet: { name: string } }) | null }>(COMPETITION, {
    id,
  });
  if (!answer.ok) return answer.failure;
  const { competition } = answer.data;
  return competition ? [{ ...competition, meet: competition.meet.name, group: null }] : [];
}

async function allOf(client: ApiClient, id: string): Promise<Recordable[] | Failure> {
  const answer = await client.send<{ meet: { name: string; competitions: Row[] } | null }>(MEET, { id });
  if (!answer.ok) return answer.failure;
  const { meet } = answer.data;
  return (meet?.competitions ?? []).map((row) => ({ ...row, meet: meet!.name, group: null }));
}
