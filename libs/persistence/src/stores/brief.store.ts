import type { AnyEntry, HoldCode, JournalItem } from '#rules';
import { execute, type Statement } from '../statement.js';
import type { Reads } from '../transaction.js';

/** One line of a start list, as far as places and clubs depend on it. */
export interface BriefLine {
  readonly id: string;
  readonly bib: string;
  readonly club: string | null;
  readonly guest: boolean;
}

/**
 * A competition as far as its places depend on it. The journal is whole and in order; an accepted trial says nothing
 * of who entered it, of reasons for a failure, winds and implements.
 */
export interface Brief {
  readonly competitionId: string;
  /** In the order of competition. */
  readonly startList: readonly BriefLine[];
  readonly journal: readonly JournalItem<AnyEntry>[];
}

/**
 * Reads several competitions of one moment, one row for each: a trial comes as a few words instead of a row with all
 * its columns (measured: a quarter of the time of reading the journals row by row).
 */
export async function read(
  at: Reads,
  organisationId: string,
  competitionIds: readonly string[],
): Promise<Brief[]> {
  const rows = await execute<BriefRow>(at, READ, [organisationId, competitionIds]);
  return rows.map(({ competitionId, startList, trials, others }) => ({
    competitionId,
    startList: (startList ?? []).map(([id, bib, club, guest]) => ({ id, bib, club, guest })),
    journal: journalOf(trials ?? '', others ?? []),
  }));
}

interface BriefRow {
  readonly competitionId: string;
  readonly startList: [id: string, bib: string, club: string | null, guest: boolean][] | null;
  readonly trials: string | null;
  readonly others: OtherEntry[] | null;
}

type OtherEntry = [
  sequence: number,
  id: string,
  by: AnyEntry['by'],
  actor: string,
  body: AnyEntry,
  hold: HoldCode | null,
];

/** The trials come from the index alone: a row of a journal is wide, and there are thousands. */
const READ: Statement = {
  name: 'brief_read',
  text: `
    SELECT wanted.id AS "competitionId", line.list AS "startList", trial.list AS trials, other.list AS others
      FROM unnest($2::uuid[]) AS wanted (id)
      CROSS JOIN LATERAL (
        SELECT json_agg(json_build_array(competitor.id, bib, coalesce(club.name, listed_club), guest) ORDER BY position) AS list
          FROM competitor LEFT JOIN club ON club.organisation_id = $1 AND club.id = club_id
         WHERE competitor.organisation_id = $1 AND competition_id = wanted.id) AS line
      CROSS JOIN LATERAL (
        SELECT string_agg(trial, ',' ORDER BY sequence) AS list
          FROM journal_entry
         WHERE organisation_id = $1 AND competition_id = wanted.id AND trial IS NOT NULL) AS trial
      CROSS JOIN LATERAL (
        SELECT json_agg(json_build_array(sequence, entry_id, authority, actor, body, verdict -> 'hold' -> 'code') ORDER BY sequence) AS list
          FROM journal_entry
         WHERE organisation_id = $1 AND competition_id = wanted.id AND trial IS NULL) AS other`,
};

/** Puts the trials between the other entries, which know their number; a journal has no gaps. */
function journalOf(trials: string, others: readonly OtherEntry[]): JournalItem<AnyEntry>[] {
  const journal: JournalItem<AnyEntry>[] = [];
  const words = trials === '' ? [] : trials.split(',');
  let from = 0;
  const takeTrials = (until: number): void => {
    for (; journal.length < until && from < words.length; from += WORDS) journal.push(trialAt(words, from));
  };
  for (const [sequence, id, by, actor, body, hold] of others) {
    takeTrials(sequence - 1);
    journal.push({ entry: { ...body, id, by, actor }, hold });
  }
  takeTrials(Infinity);
  return journal;
}

/** Words of one trial. */
const WORDS = 7;

type Trial<K extends AnyEntry['kind']> = Extract<AnyEntry, { readonly kind: K }>;

function trialAt(words: readonly string[], from: number): JournalItem<AnyEntry> {
  return { entry: words[from] === 'j' ? jumpAt(words, from) : attemptAt(words, from), hold: null };
}

/*
 * Written out without spreading: a literal has one shape, and so many are made that it counts (measured: a tenth of
 * the time).
 */

function attemptAt(words: readonly string[], from: number): AnyEntry {
  const [mark, protested] = [words[from + 5]!, words[from + 6]!];
  return {
    id: words[from + 1]!,
    by: 'official',
    actor: '',
    kind: 'attempt',
    competitor: words[from + 2]!,
    outcome: words[from + 3] as Trial<'attempt'>['outcome'],
    round: Number(words[from + 4]),
    mark: mark === '' ? null : Number(mark),
    wind: null,
    foul: null,
    protested: protested === '' ? null : Number(protested),
    implementGrams: null,
  };
}

function jumpAt(words: readonly string[], from: number): AnyEntry {
  return {
    id: words[from + 1]!,
    by: 'official',
    actor: '',
    kind: 'jump',
    competitor: words[from + 2]!,
    outcome: words[from + 3] as Trial<'jump'>['outcome'],
    trial: Number(words[from + 4]),
    height: Number(words[from + 5]),
    foul: null,
    incident: null,
    protested: words[from + 6] === 'true',
  };
}
