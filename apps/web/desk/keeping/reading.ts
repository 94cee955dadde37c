import { eventOf, type AnyEntry } from '#rules';
import type { ApiClient } from '../../offline/api-client.js';
import type { NumberedItem } from '../competition/fold.js';
import {
  eventIn,
  READ_COMPETITION,
  READ_JOURNAL,
  READ_VERSION,
  type CompetitionHead,
  type JournalNode,
  type JournalPage,
} from '../competition/head.js';
import {
  implementsIn,
  READ_IMPLEMENTS,
  type ImplementsAnswer,
  type KeptImplements,
} from '../competition/implements.js';
import type { DeskStore } from '../desk-store.js';
import type { KeptCompetition, SignIn } from './database.js';
import { groupOf } from '../session.js';
import { withItems } from './keeper.js';

type Read = CompetitionHead & { readonly journal: JournalPage };

const EVERY_MS = 3_000;
/** What changes without a version: the order of a calling group, and what inspection found. */
const BESIDE_EVERY_MS = 30_000;

/** Reads what others entered: asks every few seconds for the version, and reads on when it has risen. */
export class Reading {
  private timer: ReturnType<typeof setTimeout> | undefined;
  private isLooking = false;
  private besideAtMs = 0;
  private readonly going = new Map<string, Promise<boolean>>();

  constructor(
    private readonly store: DeskStore,
    private readonly client: ApiClient,
  ) {}

  watch(): void {
    clearTimeout(this.timer);
    // A page that comes back into sight while it is asking does not begin a second round.
    if (this.isLooking) return;
    this.isLooking = true;
    void this.look().finally(() => {
      this.isLooking = false;
      this.timer = setTimeout(() => this.watch(), EVERY_MS);
    });
  }

  private async look(): Promise<void> {
    if (document.visibilityState === 'hidden') return;
    for (const { kept } of this.store.group.value) await this.lookAt(kept.id);
    await this.lookBeside();
    this.store.onEntered();
  }

  /** A competition may have come to the group, and an implement may have passed. */
  private async lookBeside(): Promise<void> {
    const isIdle = this.store.group.value.length === 0 || this.store.link.value !== 'online';
    if (isIdle || Date.now() - this.besideAtMs < BESIDE_EVERY_MS) return;
    this.besideAtMs = Date.now();
    const { group, open } = this.store.settings.value;
    for (const { kept } of this.store.group.value) {
      const thrown = await this.implementsOf(kept.head);
      const now = this.store.competitions.value.find(({ id }) => id === kept.id);
      if (thrown && now && JSON.stringify(thrown) !== JSON.stringify(now.implements))
        await this.store.keepCompetition({ ...now, implements: thrown });
    }
    if (!group || open === null) return;
    const rows = await groupOf(this.client, group.id);
    const found = 'kind' in rows ? null : rows[0]?.group;
    if (!found || JSON.stringify(found) === JSON.stringify(group)) return;
    for (const id of found.competitionIds) {
      const isKept = this.store.competitions.value.some((one) => one.id === id);
      if (!isKept && !(await this.readOn(id))) return;
    }
    const isIn = found.competitionIds.includes(open);
    await this.store.keepSettings({ group: found, open: isIn ? open : (found.competitionIds[0] ?? null) });
  }

  /** Null: it is no throw, or there was no answer. */
  private async implementsOf(head: CompetitionHead): Promise<KeptImplements | null> {
    if (eventOf(eventIn(head)).kind !== 'throw') return null;
    const answer = await this.client.send<ImplementsAnswer>(READ_IMPLEMENTS, { id: head.id });
    return answer.ok ? implementsIn(answer.data) : null;
  }

  private async lookAt(id: string): Promise<void> {
    const answer = await this.client.send<{ competition: { version: number } | null }>(READ_VERSION, { id });
    if (!answer.ok) {
      this.store.link.value = answer.failure.kind === 'no-right' ? 'no-right' : 'offline';
      return;
    }
    this.store.link.value = 'online';
    // Asked for again: in the meantime an entry of this device may have been answered.
    const version = this.store.competitions.value.find((one) => one.id === id)?.version ?? 0;
    if (answer.data.competition && answer.data.competition.version > version) await this.readOn(id);
  }

  /** Reads a competition anew, or on from where it was read last. False: there was no answer, or no right. */
  readOn(id: string): Promise<boolean> {
    const going = this.going.get(id);
    if (going) return going;
    const reading = this.read(id).finally(() => this.going.delete(id));
    this.going.set(id, reading);
    return reading;
  }

  private async read(id: string): Promise<boolean> {
    const { store, client } = this;
    const before = store.competitions.value.find((one) => one.id === id);
    const answer = await client.send<{ competition: Read | null }>(READ_COMPETITION, {
      id,
      after: before?.cursor ?? null,
    });
    if (!answer.ok || !answer.data.competition) {
      store.link.value = answer.ok || answer.failure.kind === 'no-right' ? 'no-right' : 'offline';
      return false;
    }
    store.link.value = 'online';
    const { journal, ...head } = answer.data.competition;
    const pages = await this.furtherPages(id, journal);
    if (!pages) return false;
    const signIn = store.signIn.value;
    if (!signIn) return false;
    // An answer to an own entry may have come in while this was read.
    const now = store.competitions.value.find((one) => one.id === id);
    if (now && now.version > head.version) return true;
    await store.keepCompetition({
      id,
      head,
      items: withItems(now?.items ?? [], pages.nodes.map(itemOf)),
      cursor: pages.cursor ?? before?.cursor ?? null,
      version: head.version,
      capacity: capacityIn(signIn, id),
      ...(now?.implements && { implements: now.implements }),
    });
    return true;
  }

  private async furtherPages(
    id: string,
    first: JournalPage,
  ): Promise<{ readonly nodes: readonly JournalNode[]; readonly cursor: string | null } | null> {
    const nodes = first.edges.map(({ node }) => node);
    let { hasNextPage, endCursor } = first.pageInfo;
    while (hasNextPage) {
      const answer = await this.client.send<{ competition: { journal: JournalPage } | null }>(READ_JOURNAL, {
        id,
        after: endCursor,
      });
      if (!answer.ok || !answer.data.competition) return null;
      const { edges, pageInfo } = answer.data.competition.journal;
      nodes.push(...edges.map(({ node }) => node));
      ({ hasNextPage, endCursor } = pageInfo);
    }
    return { nodes, cursor: endCursor };
  }
}

function itemOf(node: JournalNode): NumberedItem {
  const { id, sequence, body, holdCode, authority, actor, recordedAt } = node;
  const entry = { ...body, id, by: authority, actor } as unknown as AnyEntry;
  return { sequence, entry, hold: holdCode, recordedAtMs: Date.parse(recordedAt) };
}

/** With which right this device enters: that of the competition, otherwise the one for its meet. */
function capacityIn({ grants }: SignIn, competitionId: string): KeptCompetition['capacity'] {
  const roles = grants.filter(({ role, on }) => role !== 'OFFICIAL' || on === competitionId);
  if (roles.some(({ role }) => role === 'DIRECTOR')) return 'director';
  return roles.some(({ role }) => role === 'REFEREE') ? 'referee' : 'official';
}
