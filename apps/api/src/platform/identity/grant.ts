/**
 * What a token lets its holder do. `admin`: the installation; `director` and `referee`: one meet; `official`: one
 * competition. Whoever shows no token is the public.
 */
export const ROLES = ['admin', 'director', 'referee', 'official'] as const;
export type Role = (typeof ROLES)[number];

export interface Grant {
  readonly role: Role;
  /** UUID of the meet or competition; null exactly for `admin`. */
  readonly on: string | null;
  /** Seconds since the epoch: first and last moment at which the grant holds; null = unlimited. */
  readonly from: number | null;
  readonly until: number | null;
}

/** True while the grant's window is open. */
export function isOpen(grant: Grant, nowS: number): boolean {
  return (grant.from === null || grant.from <= nowS) && (grant.until === null || nowS <= grant.until);
}
