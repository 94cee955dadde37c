import { checkedFirst, pageOf, readCursor, type Page, type PageRequest } from '../page.js';
import { managerOf, type Reads } from '../transaction.js';
import { AUDIT_LINES } from './audit-sources.js';

/** One thing that somebody did at a meet. */
export interface AuditLine {
  readonly at: string;
  readonly id: string;
  readonly kind: string;
  readonly competitionId: string | null;
  /** UUID of a line of a start list. */
  readonly competitorId: string | null;
  readonly standing: string | null;
  readonly actor: string;
  /** Where the actor is a person with an account. */
  readonly name: string | null;
  readonly authority: string | null;
  readonly device: string | null;
  readonly deviceAt: string | null;
  readonly reason: string | null;
  readonly before: unknown;
  readonly after: unknown;
}

/** What is looked for; whatever is absent is not asked. */
export interface AuditSearch {
  readonly competitionId?: string | null;
  readonly competitorId?: string | null;
  /** A holder of a token, or part of a person's name. */
  readonly who?: string | null;
  readonly kinds?: readonly string[] | null;
  /** Part of what the device is called. */
  readonly device?: string | null;
  readonly from?: string | null;
  readonly until?: string | null;
  /** In the reason, and in what was entered. */
  readonly text?: string | null;
}

interface FoundLine extends AuditLine {
  readonly micros: string;
}

/** The newest first. Names are looked for without regard to capitals. */
export async function page(
  at: Reads,
  organisationId: string,
  meetId: string,
  search: AuditSearch,
  request: PageRequest,
): Promise<Page<AuditLine>> {
  const first = checkedFirst(request.first);
  const [micros = null, key = null] =
    typeof request.after === 'string' ? readCursor(request.after, [isMicros, isKey]) : [];
  const rows = await managerOf(at).query<FoundLine[]>(PAGE, [
    ...[organisationId, meetId, search.competitionId ?? null, search.competitorId ?? null],
    ...[partOf(search.who), search.kinds ?? null, partOf(search.device)],
    ...[search.from ?? null, search.until ?? null, partOf(search.text)],
    ...[micros, key, first + 1],
  ]);
  return pageOf(rows, first, (row) => [row.micros, `${row.kind} ${row.id}`]);
}

/** For LIKE: what was typed, letter by letter. */
function partOf(text: string | null | undefined): string | null {
  return text === null || text === undefined
    ? null
    : `%${text.replaceAll(/[\\%_]/g, (sign) => `\\${sign}`)}%`;
}

function isMicros(text: string): boolean {
  return /^\d{1,17}$/.test(text);
}

function isKey(text: string): boolean {
  return /^[a-z-]{1,60} [0-9a-f:-]{36,60}$/.test(text);
}

/** A correction names a trial and no competitor: the trial does. */
const LINES = `
  SELECT line.*, p.display_name AS name, (extract(epoch FROM line.at) * 1000000)::bigint AS micros,
         coalesce(line.competitor, trial.body ->> 'competitor') AS "competitorId"
    FROM (${AUDIT_LINES}) AS line
    LEFT JOIN person p ON p.organisation_id = $1 AND p.id::text = line.actor
    LEFT JOIN journal_entry trial ON trial.organisation_id = $1 AND line.target IS NOT NULL
          AND trial.competition_id = line."competitionId" AND trial.entry_id::text = line.target`;

/** What was in force before a change of a trial: the change before it, or the trial. */
const BEFORE = `
  SELECT earlier.body FROM journal_entry earlier
   WHERE earlier.organisation_id = $1 AND earlier.competition_id = found."competitionId"
     AND earlier.sequence < found.sequence AND (earlier.entry_id::text = found.target
      OR (earlier.body ->> 'attempt' = found.target AND earlier.kind IN ('correction', 'jump-correction')))
   ORDER BY earlier.sequence DESC LIMIT 1`;

const PAGE = `
  SELECT found.at, found.id, found.kind, found."competitionId", found."competitorId", found.standing, found.actor,
         found.name, found.authority, found.device, found."deviceAt", found.reason, found.after, found.micros,
         CASE WHEN found.sequence IS NOT NULL AND found.target IS NOT NULL THEN (${BEFORE}) ELSE found.before END AS before
    FROM (
      SELECT * FROM (${LINES}) AS line
       WHERE ($3::uuid IS NULL OR "competitionId" = $3)
         AND ($4::text IS NULL OR "competitorId" = $4 OR after::text LIKE '%' || $4 || '%')
         AND ($5::text IS NULL OR actor ILIKE $5 OR name ILIKE $5)
         AND ($6::text[] IS NULL OR kind = ANY ($6))
         AND ($7::text IS NULL OR device ILIKE $7)
         AND ($8::timestamptz IS NULL OR at >= $8) AND ($9::timestamptz IS NULL OR at <= $9)
         AND ($10::text IS NULL OR reason ILIKE $10 OR after::text ILIKE $10 OR name ILIKE $10)
         AND ($11::bigint IS NULL OR (micros, kind || ' ' || id) < ($11, $12))
       ORDER BY micros DESC, kind || ' ' || id DESC LIMIT $13
    ) AS found
   ORDER BY found.micros DESC, found.kind || ' ' || found.id DESC`;
