/** The days on which something is in force, both included; `null`: since ever, until further notice. */
export interface Validity {
  readonly from: string | null;
  readonly until: string | null;
}

export const ALWAYS: Validity = { from: null, until: null };

/** @param onDate a day as `YYYY-MM-DD`. */
export function isValidOn({ from, until }: Validity, onDate: string): boolean {
  return (from === null || from <= onDate) && (until === null || onDate <= until);
}
