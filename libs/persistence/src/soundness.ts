import { managerOf, type Reads } from './transaction.js';

/** Something that is stored and cannot be right, in words for the log of an operator. */
export interface Unsound {
  readonly where: string;
  readonly what: string;
}

/** Journals that are not numbered 1, 2, … n, or that have another length than their competition counts. */
export async function gapsInJournals(at: Reads, organisationId: string): Promise<Unsound[]> {
  const found: Unsound[] = [];
  for (const [table, journal, key] of [
    ['competition', 'journal_entry', 'competition_id'],
    ['combined_event', 'combined_entry', 'combined_event_id'],
  ] as const) {
    const rows = await managerOf(at).query<Counts[]>(
      `SELECT counted.id, counted.last_sequence AS counted, count(entry.sequence)::int AS entries,
              coalesce(max(entry.sequence), 0) AS last
         FROM ${table} AS counted
         LEFT JOIN ${journal} AS entry ON entry.organisation_id = counted.organisation_id AND entry.${key} = counted.id
        WHERE counted.organisation_id = $1
        GROUP BY counted.organisation_id, counted.id
       HAVING count(entry.sequence) <> counted.last_sequence OR coalesce(max(entry.sequence), 0) <> counted.last_sequence
        ORDER BY counted.id`,
      [organisationId],
    );
    for (const { id, counted, entries, last } of rows) {
      const what = `${counted} entries are counted, ${entries} are there, the last one is number ${last}`;
      found.push({ where: `${table} ${id}`, what });
    }
  }
  return found;
}

interface Counts {
  readonly id: string;
  readonly counted: number;
  readonly entries: number;
  readonly last: number;
}

/** Entries that decide about other ones without saying why, or about ones that were not there before them. */
export async function unexplainedDecisions(at: Reads, organisationId: string): Promise<Unsound[]> {
  return managerOf(at).query<Unsound[]>(UNEXPLAINED, [organisationId, WITH_A_REASON]);
}

const WITH_A_REASON = [
  ...['correction', 'move', 'jump-correction', 'jump-move', 'jump-order', 'jump-off-declined', 'order'],
  ...['reversal', 'replacement', 'ruling', 'disqualification', 'reinstatement', 'admission', 'reopening'],
];

const UNEXPLAINED = `
  SELECT 'entry ' || entry_id AS where, kind || ' gives no reason' AS what FROM journal_entry
   WHERE organisation_id = $1 AND kind = ANY ($2) AND btrim(coalesce(body ->> 'reason', '')) = ''
  UNION ALL
  SELECT 'entry ' || entry.entry_id, kind || ' is about ' || (named #>> '{}') || ', which is not in the journal before it'
    FROM journal_entry AS entry
   CROSS JOIN LATERAL (
     SELECT jsonb_path_query(body, path::jsonpath) AS named
       FROM unnest(ARRAY['$.attempt', '$.entry', '$.attempts[*]', '$.moves[*].attempt']) AS path) AS other
   WHERE entry.organisation_id = $1
     AND NOT EXISTS (
       SELECT FROM journal_entry AS before
        WHERE before.organisation_id = entry.organisation_id AND before.competition_id = entry.competition_id
          AND before.sequence < entry.sequence AND before.entry_id::text = named #>> '{}')
  ORDER BY 1, 2`;

/** Trials whose words, which are read for many competitions at once, are not those of the entry. */
export async function otherwiseInBrief(at: Reads, organisationId: string): Promise<Unsound[]> {
  return managerOf(at).query<Unsound[]>(
    `SELECT 'competition ' || competition_id AS where, 'entry ' || entry_id || ' is in brief ' || coalesce(trial, 'nothing') AS what
       FROM journal_entry
      WHERE organisation_id = $1 AND trial IS DISTINCT FROM journal_trial_of(entry_id, kind, standing, body)
      ORDER BY entry_id`,
    [organisationId],
  );
}

/**
 * Rows whose parent is missing, asked for anew and not of the constraints: they are not looked at again when a table
 * is restored, nor when somebody has switched them off.
 */
export async function orphans(at: Reads): Promise<Unsound[]> {
  const keys = await managerOf(at).query<ForeignKeyOf[]>(FOREIGN_KEYS);
  const found: Unsound[] = [];
  for (const { name, child, parent, childColumns, parentColumns } of keys) {
    const same = childColumns
      .map((column, n) => `parent.${parentColumns[n]} = child.${column}`)
      .join(' AND ');
    const given = childColumns.map((column) => `child.${column} IS NOT NULL`).join(' AND ');
    const [row] = await managerOf(at).query<{ count: number }[]>(
      `SELECT count(*)::int AS count FROM ${child} AS child
        WHERE ${given} AND NOT EXISTS (SELECT FROM ${parent} AS parent WHERE ${same})`,
    );
    const count = row?.count ?? 0;
    if (count > 0)
      found.push({ where: child, what: `${count} rows name a ${parent} that is not there (${name})` });
  }
  return found;
}

interface ForeignKeyOf {
  readonly name: string;
  readonly child: string;
  readonly parent: string;
  readonly childColumns: readonly string[];
  readonly parentColumns: readonly string[];
}

const FOREIGN_KEYS = `
  SELECT conname AS name, conrelid::regclass::text AS child, confrelid::regclass::text AS parent,
         ARRAY(SELECT quote_ident(attname) FROM unnest(conkey) WITH ORDINALITY AS k (num, n)
                 JOIN pg_attribute ON attrelid = conrelid AND attnum = num ORDER BY n) AS "childColumns",
         ARRAY(SELECT quote_ident(attname) FROM unnest(confkey) WITH ORDINALITY AS k (num, n)
                 JOIN pg_attribute ON attrelid = confrelid AND attnum = num ORDER BY n) AS "parentColumns"
    FROM pg_constraint WHERE contype = 'f' AND connamespace = current_schema()::regnamespace ORDER BY conname`;

/** Triggers and constraints that keep the journal as it is, and are switched off or were never looked at. */
export async function guardsOff(at: Reads): Promise<Unsound[]> {
  return managerOf(at).query<Unsound[]>(`
    SELECT tgrelid::regclass::text AS where, 'the trigger ' || tgname || ' is switched off' AS what
      FROM pg_trigger JOIN pg_class ON pg_class.oid = tgrelid
     WHERE tgenabled = 'D' AND relnamespace = current_schema()::regnamespace
    UNION ALL
    SELECT conrelid::regclass::text, 'the constraint ' || conname || ' was never checked'
      FROM pg_constraint WHERE NOT convalidated AND connamespace = current_schema()::regnamespace
    ORDER BY 1, 2`);
}
