import { competitors, draws, journal, type CompetitionRow, type CompetitorRow, type Tx } from '#persistence';
import type { Refusal } from '../platform/errors/user-error.types.js';
import { uuidV7 } from '../platform/inputs/uuid-v7.js';
import { rosterLineOf, type Merged } from './merged-groups.js';
import { bibTwice, notQualified } from './refusals.js';

/** The lines of the groups that go on, by bib; or why they cannot be one start list. */
export function finalistsOf(
  merged: Merged,
): ReadonlyMap<string, CompetitorRow> | { readonly refusal: Refusal } {
  const lines = merged.table.finalists.map((row) => rosterLineOf(merged, row).competitor);
  const byBib = new Map(lines.map((line) => [line.bib, line]));
  if (byBib.size === lines.length) return byBib;
  const twice = lines.map(({ bib }) => bib).filter((bib, at, all) => all.indexOf(bib) < at);
  return { refusal: bibTwice([...new Set(twice)]) };
}

/**
 * Makes the start list of the final: who goes on is copied from the group, who came by an earlier draw and goes on no
 * longer is taken off. Nobody whom somebody entered there by hand is. The caller holds the lock of the final; gives
 * the competitors' ids by bib.
 */
export async function fillFinal(
  tx: Tx,
  final: CompetitionRow,
  finalists: ReadonlyMap<string, CompetitorRow>,
): Promise<ReadonlyMap<string, string> | { readonly refusal: Refusal }> {
  const { organisationId, id: competitionId } = final;
  const list = await competitors.ofCompetition(tx, organisationId, competitionId);
  const staying = list.filter((line) => isSamePerson(line, finalists.get(line.bib)));
  const leaving = list.filter((line) => !staying.includes(line));
  const refusal = await removalProblem(tx, final, leaving);
  if (refusal) return { refusal };
  for (const { id } of leaving) await competitors.remove(tx, organisationId, id);
  const ids = new Map(staying.map(({ bib, id }) => [bib, id]));
  let position = Math.max(0, ...list.map((line) => line.position));
  for (const [bib, line] of finalists) {
    if (ids.has(bib)) continue;
    const copy = { ...line, id: uuidV7(), competitionId, position: ++position, flight: null, written: null };
    await competitors.insert(tx, [copy]);
    ids.set(bib, copy.id);
  }
  return ids;
}

function isSamePerson(line: CompetitorRow, finalist: CompetitorRow | undefined): boolean {
  return line.athleteId === finalist?.athleteId && line.listedName === finalist?.listedName;
}

/** Taken off is only who came by a draw, and is not named in the journal. */
async function removalProblem(
  tx: Tx,
  { organisationId, id, lastSequence }: CompetitionRow,
  leaving: readonly CompetitorRow[],
): Promise<Refusal | null> {
  if (leaving.length === 0) return null;
  const drawn = await draws.latest(tx, organisationId, id);
  const byDraw = new Set(drawn?.qualificationId ? drawn.entries.map(({ key }) => key) : []);
  const entries = lastSequence === 0 ? [] : await journal.read(tx, organisationId, id, 0);
  const named = new Set(entries.map(({ body }) => ('competitor' in body ? body.competitor : null)));
  const others = leaving.filter((line) => !byDraw.has(line.bib) || named.has(line.id));
  return others.length > 0 ? notQualified(others.map(({ bib }) => bib)) : null;
}
