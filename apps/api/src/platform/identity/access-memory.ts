import { persons, roles, sessions, type Reads, type RoleRow } from '#persistence';
import { LRUCache } from 'lru-cache';
import type { Database } from '../database/database.js';
import { LiveBus } from '../live/live-bus.js';
import type { LiveMessage } from '../live/live-message.js';
import type { Grant } from './grant.js';

/**
 * What is known of an account is looked at again after this long, so that another process on the same database is heard
 * of. Changes made by this process are known at once, those of other instances as soon as the bus carries them; where
 * there are others, what the bus loses is made up for sooner.
 */
const FRESH_MS = 30_000;
const FRESH_AMONG_OTHERS_MS = 5_000;
const REMEMBERED = 2_000;

/** An account as it stood when it was read. */
export interface PersonAccess {
  readonly loginName: string;
  readonly displayName: string;
  readonly isDemo: boolean;
  readonly isClosed: boolean;
  /** Given and not taken away; windows are looked at by whoever asks. */
  readonly grants: readonly Grant[];
  /** Ids of the sessions that have not ended. */
  readonly sessions: ReadonlySet<string>;
}

interface Read<T> {
  readonly value: T;
  readonly atMs: number;
}

/**
 * The rights of accounts and the list of what is revoked, kept in memory: a request pays no statement for them. Whoever
 * changes them says so here after the commit.
 */
export class AccessMemory {
  private readonly people = new LRUCache<string, Read<PersonAccess>>({ max: REMEMBERED });
  private revoked: Read<ReadonlySet<string>> | null = null;
  /** Revoked by this process: known before any reading of the list that was under way at the time. */
  private readonly revokedHere = new Set<string>();
  /** Changes made by this process so far: what was read before one of them is not kept after it. */
  private changes = 0;
  private readonly freshMs: number;
  private readonly listeners = new Set<() => void>();

  constructor(
    private readonly database: Database,
    private readonly bus: LiveBus = new LiveBus(),
    private readonly nowMs: () => number = Date.now,
  ) {
    this.freshMs = bus.reachesOthers ? FRESH_AMONG_OTHERS_MS : FRESH_MS;
    bus.listen({ hear: (message) => this.hear(message), catchUp: () => this.doubtAll() });
  }

  /** Hears of every change of anybody's rights. Returns the function that ends it. */
  onChange(listener: () => void): () => void {
    this.listeners.add(listener);
    return () => this.listeners.delete(listener);
  }

  /** The account; null: there is none. `sessionId`: looked for again if it is not among the sessions known. */
  async person(organisationId: string, id: string, sessionId: string): Promise<PersonAccess | null> {
    const known = this.people.get(keyOf(organisationId, id));
    if (known && this.isFresh(known) && known.value.sessions.has(sessionId)) return known.value;
    try {
      return await this.readAnew(organisationId, id);
    } catch (error) {
      // While the database is away, what was known goes on: without it nothing can be written anyway.
      if (known === undefined) throw error;
      return known.value;
    }
  }

  /** The grants of an account as known at this moment; none once its session has ended. */
  grantsOf(organisationId: string, id: string, sessionId: string): readonly Grant[] {
    const known = this.people.peek(keyOf(organisationId, id))?.value;
    return known?.sessions.has(sessionId) === true && !known.isClosed ? known.grants : [];
  }

  /** Whether one of these ids, of a token or of a device link, was revoked. */
  async isRevoked(...ids: readonly (string | null | undefined)[]): Promise<boolean> {
    const known = this.revoked;
    if (!known || !this.isFresh(known)) {
      const atMs = this.nowMs();
      const read = this.database.read(async (at) => new Set(await sessions.revokedIds(at)));
      const value = await read.catch((error: unknown) => {
        if (known === null) throw error;
        return known.value;
      });
      this.revoked = { value, atMs };
    }
    return ids.some(
      (id) => typeof id === 'string' && (this.revokedHere.has(id) || this.revoked?.value.has(id) === true),
    );
  }

  /** After a change of the account, its roles or its sessions: read anew, so that open connections see it too. */
  async changed(organisationId: string, id: string): Promise<void> {
    this.bus.tell({ about: 'person', organisationId, id });
    await this.readAnew(organisationId, id);
  }

  /** After something was revoked: it holds no longer from now on. */
  revoke(id: string): void {
    this.bus.tell({ about: 'revocation', id });
  }

  private hear(message: LiveMessage): void {
    if (message.about === 'competition') return;
    if (message.about === 'revocation') this.revokedHere.add(message.id);
    else {
      this.changes += 1;
      // Until it has been read nobody acts on what it was.
      this.people.delete(keyOf(message.organisationId, message.id));
    }
    for (const listener of this.listeners) listener();
  }

  /** Changes may have been missed. What is known goes on until it has been read again, which the next request does. */
  private doubtAll(): void {
    for (const [key, { value }] of this.people.entries()) this.people.set(key, { value, atMs: -Infinity });
    if (this.revoked) this.revoked = { value: this.revoked.value, atMs: -Infinity };
    for (const listener of this.listeners) listener();
  }

  private async readAnew(organisationId: string, id: string): Promise<PersonAccess | null> {
    const key = keyOf(organisationId, id);
    for (;;) {
      const { changes } = this;
      const atMs = this.nowMs();
      const value = await this.database.read((at) => readPerson(at, organisationId, id));
      if (changes !== this.changes) continue;
      if (value === null) this.people.delete(key);
      else this.people.set(key, { value, atMs });
      return value;
    }
  }

  private isFresh({ atMs }: Read<unknown>): boolean {
    return this.nowMs() - atMs < this.freshMs;
  }
}

function keyOf(organisationId: string, id: string): string {
  return `${organisationId}/${id}`;
}

async function readPerson(at: Reads, organisationId: string, id: string): Promise<PersonAccess | null> {
  const row = await persons.find(at, organisationId, id);
  if (!row) return null;
  const [given, open] = [
    await roles.ofPersons(at, organisationId, [id]),
    await sessions.openOf(at, organisationId, id),
  ];
  return {
    loginName: row.loginName,
    displayName: row.displayName,
    isDemo: row.isDemo,
    isClosed: row.closedAt !== null,
    grants: given.filter(({ revokedAt }) => revokedAt === null).map(grantOfRow),
    sessions: new Set(open),
  };
}

/** A stored grant in the form in which tokens carry one. */
export function grantOfRow(row: RoleRow): Grant {
  const { role, meetId, competitionId, callingGroupId, athleteId, startsAt, endsAt } = row;
  return {
    role,
    on: meetId ?? competitionId ?? callingGroupId ?? athleteId,
    ...(callingGroupId !== null && { scope: 'calling-group' }),
    from: startsAt === null ? null : Date.parse(startsAt) / 1000,
    until: endsAt === null ? null : Date.parse(endsAt) / 1000,
  };
}
