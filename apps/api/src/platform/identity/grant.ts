/**
 * What somebody may do. `admin`: the installation; `director` and `referee`: one meet; `official`: one competition, or
 * all of one calling group; `coach`, `athlete` and `guardian`: one athlete. Whoever shows no token is the public.
 */
export const ROLES = ['admin', 'director', 'referee', 'official', 'coach', 'athlete', 'guardian'] as const;
export type Role = (typeof ROLES)[number];

/** Roles at a meet, and the installation's: what a post or a device may hold without being a person. */
export const POSTS = ['admin', 'director', 'referee', 'official'] as const satisfies readonly Role[];

export interface Grant {
  readonly role: Role;
  /** UUID of the meet, competition, calling group or athlete; null exactly for `admin`. */
  readonly on: string | null;
  /**
   * Said where `on` is a calling group, and only there: ids are made by clients, so that one alone does not say what it
   * is of.
   */
  readonly scope?: 'calling-group';
  /** Said of a device at the wind gauge: it reads what an official reads, and gives winds and nothing else. */
  readonly only?: 'winds';
  /** Seconds since the epoch: first and last moment at which the grant holds; null = unlimited. */
  readonly from: number | null;
  readonly until: number | null;
}

/** True while the grant's window is open. */
export function isOpen(grant: Grant, nowS: number): boolean {
  return (grant.from === null || grant.from <= nowS) && (grant.until === null || nowS <= grant.until);
}
