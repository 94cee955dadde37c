import type { Authority } from './rows.js';

/* What the tables of people, sessions, device links and second persons hold, in the manner of rows.ts. */

/** `admin`: the installation; the others: a meet, a competition or calling group, or an athlete. */
export type AccessRole = 'admin' | 'director' | 'referee' | 'official' | 'coach' | 'athlete' | 'guardian';

export interface PersonRow {
  readonly organisationId: string;
  readonly id: string;
  /** Lower case, once in an organisation. */
  readonly loginName: string;
  readonly displayName: string;
  /** Invented for the demonstration: nobody where there is none. */
  readonly isDemo: boolean;
  readonly madeBy: string;
  readonly madeAt: string;
  readonly closedBy: string | null;
  /** `null`: may sign in. */
  readonly closedAt: string | null;
}

export interface CredentialRow {
  readonly organisationId: string;
  readonly personId: string;
  /** As argon2 writes it, with its parameters and salt; `null`: no password was chosen yet. */
  readonly passwordHash: string | null;
  /** SHA-256 of the one-time code, 64 hexadecimal digits. */
  readonly setupHash: string | null;
  readonly setupExpiresAt: string | null;
  readonly changedAt: string;
}

export interface RoleGrantRow {
  readonly organisationId: string;
  readonly id: string;
  readonly personId: string;
  readonly role: AccessRole;
  /** Of director and referee. */
  readonly meetId: string | null;
  /** Of an official: this or a calling group. */
  readonly competitionId: string | null;
  readonly callingGroupId: string | null;
  /** Of coach, athlete and guardian. */
  readonly athleteId: string | null;
  /** `null`: at once. */
  readonly startsAt: string | null;
  /** `null`: until it is taken away. */
  readonly endsAt: string | null;
  readonly reason: string | null;
  readonly givenBy: string;
  readonly givenAt: string;
}

/** A grant with what became of it; the last three are `null` while nobody took it away. */
export interface RoleRow extends RoleGrantRow {
  readonly revokedAt: string | null;
  readonly revokedBy: string | null;
  readonly revokedBecause: string | null;
}

export type SessionEnd = 'signed-out' | 'everywhere' | 'reuse' | 'password' | 'closed';

export interface LoginSessionRow {
  readonly organisationId: string;
  readonly id: string;
  readonly personId: string;
  /** What the person calls the device. */
  readonly label: string | null;
  /** Number of its newest refresh token, from 1. */
  readonly generation: number;
  readonly madeAt: string;
  readonly endedAt: string | null;
  readonly endedBecause: SessionEnd | null;
}

export interface RefreshTokenRow {
  readonly organisationId: string;
  /** SHA-256, 64 hexadecimal digits. */
  readonly hash: string;
  readonly sessionId: string;
  readonly generation: number;
  readonly madeAt: string;
  readonly expiresAt: string;
}

export interface DeviceLinkRow {
  readonly organisationId: string;
  readonly id: string;
  readonly meetId: string;
  /** This or a calling group. */
  readonly competitionId: string | null;
  readonly callingGroupId: string | null;
  readonly label: string;
  readonly startsAt: string;
  readonly endsAt: string;
  /** How many devices may come in by it. */
  readonly devices: number;
  /** Its devices give winds and nothing else. */
  readonly isWindsOnly: boolean;
  readonly madeBy: string;
  readonly madeAt: string;
}

/** A link with what became of it; the last three are `null` while it holds. */
export interface DeviceLinkState extends DeviceLinkRow {
  /** Devices that came in by it. */
  readonly used: number;
  readonly revokedAt: string | null;
  readonly revokedBy: string | null;
  readonly revokedBecause: string | null;
}

export interface DecisionRequestRow {
  readonly organisationId: string;
  readonly id: string;
  readonly competitionId: string;
  readonly kind: 'sign-off' | 'reopening';
  /** Of a signature: why trials are outstanding, if they are. */
  readonly reason: string | null;
  /** The version of the competition that it was decided on. */
  readonly version: number;
  readonly authority: Authority;
  readonly askedBy: string;
  readonly askedAt: string;
}

/** A request with the second person's word; the last four are `null` while it waits. */
export interface DecisionState extends DecisionRequestRow {
  readonly confirmedBy: string | null;
  readonly confirmedAt: string | null;
  readonly confirmingAuthority: Authority | null;
  readonly entryId: string | null;
}
