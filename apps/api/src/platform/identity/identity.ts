import { forbidden, unauthenticated } from '../errors/api-error.js';
import { isOpen, type Grant, type Role } from './grant.js';

/** A competition, the meet it belongs to and who it is called with: what a right is checked against. */
export interface CompetitionRef {
  readonly id: string;
  readonly meetId: string;
  /** As the competition's row has it; null: it is called by itself. */
  readonly callingGroupId: string | null;
}

/** With which right somebody acts on a competition, the strongest first. */
export type Capacity = 'director' | 'referee' | 'official';

const FOLLOWERS = ['athlete', 'guardian', 'coach'] as const;

/** The account behind a token, and the session in which the token was given out. */
export interface Account {
  readonly personId: string;
  readonly sessionId: string;
  readonly loginName: string;
  readonly displayName: string;
}

/**
 * Who is asking, as far as the token and the records of the account say. Rights are asked for an object; the answer
 * depends on the moment, so a window that closes or a role that is taken away during a long connection ends the right
 * there and then.
 */
export class Identity {
  constructor(
    /** UUID of the token's holder or of the person: what the journal keeps as "who". Null for the public. */
    readonly holder: string | null,
    /** Whose records are meant; the public sees those of the installation's own organisation. */
    readonly organisationId: string,
    /** As a token says; or, of an account, as it is known at the moment of asking. */
    private readonly given: readonly Grant[] | (() => readonly Grant[]),
    readonly label: string | null = null,
    private readonly nowS: () => number = () => Date.now() / 1000,
    /** Null: a token of a post or a device, or the public. */
    readonly account: Account | null = null,
  ) {}

  get grants(): readonly Grant[] {
    return typeof this.given === 'function' ? this.given() : this.given;
  }

  get isPublic(): boolean {
    return this.holder === null;
  }

  /** The grants that hold now. */
  open(): readonly Grant[] {
    const nowS = this.nowS();
    return this.grants.filter((grant) => isOpen(grant, nowS));
  }

  has(role: Role, on: string | null): boolean {
    return this.open().some(
      (grant) => grant.role === role && grant.scope === undefined && (role === 'admin' || grant.on === on),
    );
  }

  get isAdmin(): boolean {
    return this.has('admin', null);
  }

  mayDirect(meetId: string): boolean {
    return this.isAdmin || this.has('director', meetId);
  }

  /** May see and keep what is not public: anybody who directs a meet, and admin. */
  get mayKeepAthletes(): boolean {
    return this.open().some((grant) => grant.role === 'admin' || grant.role === 'director');
  }

  /**
   * The strongest right on this competition, or null. An admin has none: results are never edited from outside the
   * meet.
   */
  capacityIn(competition: CompetitionRef): Capacity | null {
    if (this.has('director', competition.meetId)) return 'director';
    if (this.has('referee', competition.meetId)) return 'referee';
    return this.mayOfficiate(competition) ? 'official' : null;
  }

  /** Is an official of this competition, by itself or as one of its calling group. */
  mayOfficiate({ id, callingGroupId }: CompetitionRef): boolean {
    return this.has('official', id) || (callingGroupId !== null && this.mayCall(callingGroupId));
  }

  /** Whether all that makes the holder an official of this competition is for winds alone. */
  private givesWindsOnly({ id, callingGroupId }: CompetitionRef): boolean {
    const own = this.open().filter(
      ({ role, on }) => role === 'official' && (on === id || on === callingGroupId),
    );
    return own.length > 0 && own.every(({ only }) => only === 'winds');
  }

  /** Is an official of this competition for all that officials do. */
  mayDoAll(competition: CompetitionRef): boolean {
    return this.mayOfficiate(competition) && !this.givesWindsOnly(competition);
  }

  /** Is an official of this calling group as a whole. */
  mayCall(callingGroupId: string): boolean {
    return this.open().some(
      ({ role, on, scope }) => role === 'official' && scope === 'calling-group' && on === callingGroupId,
    );
  }

  /** Is the athlete, or the guardian or coach of the athlete. */
  follows(athleteId: string): boolean {
    return FOLLOWERS.some((role) => this.has(role, athleteId));
  }

  /** Is a coach of the athlete. */
  coaches(athleteId: string): boolean {
    return this.has('coach', athleteId);
  }

  /** The athletes that somebody is, coaches, or is the guardian of, each once. */
  followed(): readonly string[] {
    const own = this.open().filter(({ role }) => (FOLLOWERS as readonly Role[]).includes(role));
    return [...new Set(own.flatMap(({ on }) => on ?? []))];
  }

  /**
   * Whether the holder's own right on something reaches over a whole window; nobody gives away for longer than they
   * hold. `isOver`: which of the grants are a right on it.
   */
  covers(isOver: (grant: Grant) => boolean, from: number, until: number | null): boolean {
    return this.open().some(
      (grant) =>
        isOver(grant) &&
        (grant.from === null || grant.from <= from) &&
        (grant.until === null || (until !== null && until <= grant.until)),
    );
  }

  /** Throws UNAUTHENTICATED or FORBIDDEN unless the holder keeps athletes or follows this one. */
  requireSightOf(athleteId: string): void {
    if (!this.mayKeepAthletes && !this.follows(athleteId))
      throw this.refusal(
        'Only the athlete, a guardian or coach of the athlete, a meet director or an administrator may do this.',
      );
  }

  /** Throws UNAUTHENTICATED or FORBIDDEN unless the holder coaches the athlete. */
  requireCoachOf(athleteId: string): void {
    if (!this.coaches(athleteId)) throw this.refusal('Only a coach of this athlete may do this.');
  }

  /** Throws UNAUTHENTICATED or FORBIDDEN unless the holder follows the athlete: nobody who runs a meet has part in it. */
  requireFollower(athleteId: string): void {
    if (!this.follows(athleteId))
      throw this.refusal('Only the athlete, and a guardian or coach of the athlete, may see this.');
  }

  /** Throws UNAUTHENTICATED unless this is the session of a person. */
  requireAccount(): Account {
    if (this.account === null) throw unauthenticated('This is for a person who is signed in.');
    return this.account;
  }

  /** Throws UNAUTHENTICATED or FORBIDDEN unless the holder directs the meet. */
  requireDirector(meetId: string): void {
    if (!this.mayDirect(meetId)) throw this.refusal('Only a director of this meet may do this.');
  }

  requireAdmin(): void {
    if (!this.isAdmin) throw this.refusal('Only an administrator may do this.');
  }

  requireKeeper(): void {
    if (!this.mayKeepAthletes) throw this.refusal('Only a meet director or an administrator may do this.');
  }

  /**
   * Throws UNAUTHENTICATED or FORBIDDEN unless the holder may act on this competition now. `what`: a device at the wind
   * gauge may give winds, and read.
   */
  requireCapacity(competition: CompetitionRef, what: 'all' | 'winds' = 'all'): Capacity {
    const capacity = this.capacityIn(competition);
    if (capacity === 'official' && what === 'all' && this.givesWindsOnly(competition))
      throw this.refusal('This device gives winds and nothing else.');
    if (!capacity)
      throw this.refusal('Only an official, referee or director of this competition may do this.');
    return capacity;
  }

  private refusal(message: string): Error {
    return this.isPublic ? unauthenticated(`${message} Send a token.`) : forbidden(message);
  }
}
