import type { ClubRow } from '#persistence';
import { distance } from 'fastest-levenshtein';
import { nameKey } from './person-match.js';

/** From so many letters on two of them may differ. */
const LONG_NAME = 9;

/** Clubs by what is left of their names without marks, case and spaces. */
export class ClubIndex {
  private readonly byName = new Map<string, ClubRow>();
  private readonly byKey = new Map<string, ClubRow>();

  constructor(clubs: readonly ClubRow[]) {
    for (const club of clubs) {
      this.byName.set(club.name, club);
      this.byKey.set(nameKey(club.name), club);
    }
  }

  /** The club of this name; else the one that has it but for marks and case. */
  named(name: string): ClubRow | null {
    return this.byName.get(name) ?? this.byKey.get(nameKey(name)) ?? null;
  }

  /** Clubs with nearly this name, or whose name is a part of it, by name. */
  alike(name: string): ClubRow[] {
    const key = nameKey(name);
    const found = [...this.byKey].filter(([other]) => isAlike(key, other)).map(([, club]) => club);
    return found.toSorted((a, b) => (a.name < b.name ? -1 : 1));
  }
}

const SHORTEST_PART = 4;

function isAlike(one: string, other: string): boolean {
  const [short, long] = one.length <= other.length ? [one, other] : [other, one];
  if (short.length >= SHORTEST_PART && long.includes(short)) return true;
  const most = short.length >= LONG_NAME ? 2 : 1;
  return long.length - short.length <= most && distance(one, other) <= most;
}
