import { isDeepStrictEqual } from 'node:util';
import {
  competitions,
  competitors,
  journal,
  meets,
  type CompetitionRow,
  type CompetitorRow,
  type JournalBody,
  type NewCompetition,
  type NewEntry,
  type Reads,
  type Tx,
} from '#persistence';
import {
  entriesOfCard,
  entriesOfVerticalCard,
  normaliseSheet,
  writeSheet,
  type CompetitionContent,
} from '#rules';
import { sheetOf } from '../platform/competition/documents.js';
import { fingerprintOf } from '../platform/competition/fingerprint.js';
import { loadCompetition } from '../platform/competition/loaded.js';
import { notFound } from '../platform/errors/outcomes.js';
import { refusal, type UserError } from '../platform/errors/user-error.types.js';
import type { Identity } from '../platform/identity/identity.js';
import { uuidV7 } from '../platform/inputs/uuid-v7.js';
import { competitionOf, competitorsOf } from './sheet-rows.js';

/** What an import made, in the order of the sheet, or why it made nothing. */
export type Imported =
  | { readonly rows: readonly CompetitionRow[]; readonly isMeet: boolean; readonly replayed: boolean }
  | { readonly userErrors: readonly UserError[] };

/** Where the competition of a sheet goes. */
export type SheetPlace = Pick<NewCompetition, 'organisationId' | 'id' | 'meetId' | 'title'>;

/** Makes the competition of a sheet, or answers a request that is sent again. */
export async function storeSheet(
  tx: Tx,
  content: CompetitionContent,
  place: SheetPlace,
  viewer: Identity,
): Promise<Imported> {
  const { organisationId, id } = place;
  const there = await competitions.lock(tx, organisationId, id);
  if (there) {
    return (await isMadeOf(tx, there, content, place))
      ? { rows: [there], isMeet: false, replayed: true }
      : { userErrors: [ID_REUSED] };
  }
  if (!(await meets.find(tx, organisationId, place.meetId)))
    return { userErrors: [notFound('meet', ['meetId'])] };
  return { rows: [await makeCompetition(tx, content, place, viewer)], isMeet: false, replayed: false };
}

/** The competition of a sheet with its start list and its journal. */
export async function makeCompetition(
  tx: Tx,
  content: CompetitionContent,
  place: SheetPlace,
  viewer: Identity,
): Promise<CompetitionRow> {
  const { organisationId, id } = place;
  await competitions.insert(tx, competitionOf(content, place));
  const lines = competitorsOf(content, place);
  await competitors.insert(tx, lines);
  for (const entry of entriesOf(content, lines, place, viewer)) await journal.append(tx, entry);
  const made = await competitions.lock(tx, organisationId, id);
  if (!made) throw new Error(`Competition ${id} went away while it was made.`);
  const version = await competitions.updateAt(tx, organisationId, id, made.version, { status: 'open' });
  await checkAgainst(tx, made, content);
  return { ...made, status: 'open', version: version ?? made.version };
}

function entriesOf(
  content: CompetitionContent,
  lines: readonly CompetitorRow[],
  { organisationId, id: competitionId }: Pick<NewCompetition, 'organisationId' | 'id'>,
  viewer: Identity,
): NewEntry[] {
  const keys = new Map(lines.map((line) => [line.bib, line.id]));
  return bodiesOf(content, (bib) => keys.get(bib)!).map((body) => ({
    organisationId,
    competitionId,
    entryId: uuidV7(),
    kind: body.kind,
    body,
    standing: 'accepted',
    verdict: { standing: 'accepted', notices: [] },
    authority: 'director',
    actor: viewer.holder!,
    device: 'sheet',
    deviceAt: null,
    fingerprint: fingerprintOf(competitionId, body),
  }));
}

function bodiesOf(content: CompetitionContent, keyOf: (bib: string) => string): JournalBody[] {
  return content.kind === 'vertical'
    ? entriesOfVerticalCard(content.card, keyOf)
    : entriesOfCard(content.card, keyOf);
}

/** The journal must fold into the card that it was made from: if ever it did not, nothing is kept. */
async function checkAgainst(tx: Tx, row: CompetitionRow, { card }: CompetitionContent): Promise<void> {
  const { state } = await loadCompetition(tx, row);
  if (!isDeepStrictEqual(deciding(state.card), deciding(card))) {
    throw new Error('The journal made of a sheet does not fold into its card.');
  }
}

/** What decides of a card: no names, a series without the empty cells at its end, admissions in whatever order. */
function deciding({ competitors: lines, admitted, ...card }: CompetitionContent['card']): object {
  return {
    ...card,
    competitors: lines.map((line) => ({ ...line, name: null, series: taken(line.series) })),
    admitted: admitted.map(({ bib, after, by }) => JSON.stringify([bib, after, by])).sort(),
  };
}

function taken(series: readonly unknown[]): readonly unknown[] {
  return series.slice(0, series.findLastIndex((trial) => trial !== null) + 1);
}

/** Whether a competition is what this sheet makes, so that the same import, sent again, is answered with it. */
export async function isMadeOf(
  at: Reads,
  there: CompetitionRow,
  content: CompetitionContent,
  place: Pick<SheetPlace, 'meetId' | 'title'>,
): Promise<boolean> {
  const loaded = await loadCompetition(at, there);
  const now = sheetOf(loaded, { nameOf: (line) => line.name, isArchive: false });
  return (
    there.meetId === place.meetId &&
    there.title === place.title &&
    isDeepStrictEqual(normaliseSheet(now), normaliseSheet(writeSheet(content)))
  );
}

const ID_REUSED = refusal({
  code: 'ID_REUSED',
  path: ['id'],
  message: 'Something else was made under this id.',
  remedy: 'Make a new id; send the same id only with the same content.',
});
