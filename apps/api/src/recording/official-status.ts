import { competitions, officialResults, type CompetitionStatus, type Tx } from '#persistence';
import type { AnyEntry } from '#rules';
import { resultDocumentOf, sheetOf } from '../platform/competition/documents.js';
import type { LoadedCompetition } from '../platform/competition/loaded.js';

/**
 * A signature makes the result official and archives it as a sheet, which names competitors by bib and never by name;
 * a reopening makes it open again and leaves what was archived. `firstPerson`: who signed, where the entry is the second
 * person's.
 */
export async function signOffOrReopen(
  tx: Tx,
  after: LoadedCompetition,
  entry: Extract<AnyEntry, { kind: 'sign-off' | 'reopening' }>,
  firstPerson: string | null,
): Promise<LoadedCompetition> {
  const { row } = after;
  const status = entry.kind === 'sign-off' ? 'official' : 'open';
  if (entry.kind === 'reopening') return withStatus(tx, after, status);
  const signature = await officialResults.archive(tx, {
    organisationId: row.organisationId,
    competitionId: row.id,
    sequence: row.lastSequence,
    sheet: sheetOf(after, { nameOf: null, isArchive: true }),
    result: resultDocumentOf(after),
    signedBy: firstPerson ?? entry.actor,
    confirmedBy: firstPerson === null ? null : entry.actor,
  });
  const { proceedings } = after;
  const signed = { ...proceedings, signatures: [...proceedings.signatures, signature] };
  return withStatus(tx, { ...after, proceedings: signed }, status);
}

/** The competition with another status, which is a version of its own. */
export async function withStatus(
  tx: Tx,
  loaded: LoadedCompetition,
  status: CompetitionStatus,
): Promise<LoadedCompetition> {
  const { row } = loaded;
  const version = await competitions.updateAt(tx, row.organisationId, row.id, row.version, { status });
  if (version === null) throw new Error(`Competition ${row.id} changed while it was locked.`);
  return { ...loaded, row: { ...row, status, version } };
}
