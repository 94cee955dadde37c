import type { ClubRow } from '#persistence';
import type { CsvProblem } from '../platform/csv/csv-problem.js';
import { uuidV7 } from '../platform/inputs/uuid-v7.js';
import { ClubIndex } from './club-match.js';
import { nameKey } from './person-match.js';

export interface ClubDecision {
  /** As the table has it. */
  readonly name: string;
  readonly choice: 'same' | 'new' | 'as written';
  readonly clubId: string | null;
}

/** A club that is not on record by this name. */
export interface ClubQuestion {
  /** Where it stands first. */
  readonly line: number;
  readonly name: string;
  readonly candidates: readonly ClubRow[];
  readonly isDecided: boolean;
}

/** Whom a line competes for. */
export interface LineClub {
  readonly clubId: string | null;
  readonly listedClub: string | null;
}

export const NO_CLUB: LineClub = { clubId: null, listedClub: null };

export interface TableClubs {
  readonly of: (name: string | null) => LineClub;
  readonly questions: readonly ClubQuestion[];
  readonly added: readonly ClubRow[];
  readonly problems: readonly CsvProblem[];
}

/** The clubs of a table. One about which nobody has decided is looked at as one that is kept as it is written. */
export function tableClubs(
  organisationId: string,
  lines: readonly { readonly line: number; readonly club: string | null }[],
  known: readonly ClubRow[],
  decisions: readonly ClubDecision[],
): TableClubs {
  const index = new ClubIndex(known);
  const decided = new Map(decisions.map((one) => [nameKey(one.name), one]));
  const found = new Map<string, LineClub>();
  const questions: ClubQuestion[] = [];
  const added: ClubRow[] = [];
  const problems: CsvProblem[] = [];
  for (const { line, club: name } of lines) {
    const key = name === null ? null : nameKey(name);
    if (name === null || key === null || found.has(key)) continue;
    const there = index.named(name);
    if (there) {
      found.set(key, { clubId: there.id, listedClub: null });
      continue;
    }
    const decision = decided.get(key) ?? null;
    questions.push({ line, name, candidates: index.alike(name), isDecided: decision !== null });
    if (decision?.choice === 'new') {
      const club = { organisationId, id: uuidV7(), name };
      added.push(club);
      found.set(key, { clubId: club.id, listedClub: null });
    } else if (decision?.choice === 'same') {
      const same = known.find(({ id }) => id === decision.clubId);
      if (!same) problems.push({ ...CLUB_NOT_THERE, line });
      found.set(key, { clubId: same?.id ?? null, listedClub: null });
    } else found.set(key, { clubId: null, listedClub: name });
  }
  const of = (name: string | null): LineClub => (name === null ? NO_CLUB : found.get(nameKey(name))!);
  return { of, questions, added, problems };
}

const CLUB_NOT_THERE = {
  code: 'CLUB_UNKNOWN',
  column: 'club',
  message: 'It was decided to be a club that is not on record.',
  remedy: 'Decide again.',
} as const;
