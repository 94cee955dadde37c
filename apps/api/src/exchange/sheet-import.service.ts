import { Injectable } from '@nestjs/common';
import { isDeepStrictEqual } from 'node:util';
import {
  competitions,
  competitors,
  journal,
  meets,
  violationOf,
  type CombinedEventRow,
  type CompetitionRow,
  type CompetitorRow,
  type JournalBody,
  type NewCompetition,
  type NewEntry,
  type Tx,
} from '#persistence';
import {
  entriesOfCard,
  entriesOfVerticalCard,
  normaliseSheet,
  writeSheet,
  type CompetitionContent,
  type Problem,
} from '#rules';
import { CombinedImportService } from '../combined/combined-import.service.js';
import { sheetOf } from '../platform/competition/documents.js';
import { fingerprintOf } from '../platform/competition/fingerprint.js';
import { loadCompetition } from '../platform/competition/loaded.js';
import { Database } from '../platform/database/database.js';
import { notFound } from '../platform/errors/outcomes.js';
import { refusal, type UserError } from '../platform/errors/user-error.types.js';
import type { Identity } from '../platform/identity/identity.js';
import { uuidV7 } from '../platform/inputs/uuid-v7.js';
import type { SheetImportInput } from './sheet-import.inputs.js';
import { SheetProblem } from './sheet-import.types.js';
import { readingOf } from './sheet-reading.js';
import { competitionOf, competitorsOf } from './sheet-rows.js';

export type Imported =
  | { readonly row: CompetitionRow; readonly replayed: boolean }
  | { readonly combined: CombinedEventRow; readonly replayed: boolean }
  | { readonly userErrors: readonly UserError[] };

/** Makes a competition of a paper card: its start list, and every trial as an entry of the journal. */
@Injectable()
export class SheetImportService {
  constructor(
    private readonly database: Database,
    private readonly combined: CombinedImportService,
  ) {}

  /** All of the sheet, or nothing and every problem of it. Throws UNAUTHENTICATED or FORBIDDEN for others than directors. */
  async import(input: SheetImportInput, viewer: Identity): Promise<Imported> {
    viewer.requireDirector(input.meetId);
    const reading = readingOf(input);
    if ('problems' in reading) return { userErrors: reading.problems.map(problemError) };
    const { content } = reading;
    const { organisationId } = viewer;
    const place = { organisationId, id: input.id ?? uuidV7(), meetId: input.meetId, title: input.title };
    try {
      return await this.database.write(async (tx): Promise<Imported> => {
        if (content.kind !== 'combined') return store(tx, content, place, viewer);
        const stored = await this.combined.store(tx, content.card, place, viewer);
        return 'refusal' in stored ? { userErrors: [stored.refusal] } : stored;
      });
    } catch (error) {
      const violation = violationOf(error);
      if (violation?.kind === 'check' || violation?.kind === 'data') return { userErrors: [TOO_LONG] };
      throw error;
    }
  }
}

async function store(
  tx: Tx,
  content: CompetitionContent,
  place: Pick<NewCompetition, 'organisationId' | 'id' | 'meetId' | 'title'>,
  viewer: Identity,
): Promise<Imported> {
  const { organisationId, id } = place;
  const there = await competitions.lock(tx, organisationId, id);
  if (there) return replay(tx, there, content, place);
  if (!(await meets.find(tx, organisationId, place.meetId)))
    return { userErrors: [notFound('meet', ['meetId'])] };
  await competitions.insert(tx, competitionOf(content, place));
  const lines = competitorsOf(content, place);
  await competitors.insert(tx, lines);
  for (const entry of entriesOf(content, lines, place, viewer)) await journal.append(tx, entry);
  const made = await competitions.lock(tx, organisationId, id);
  if (!made) throw new Error(`Competition ${id} went away while it was made.`);
  const version = await competitions.updateAt(tx, organisationId, id, made.version, { status: 'open' });
  await checkAgainst(tx, made, content);
  return { row: { ...made, status: 'open', version: version ?? made.version }, replayed: false };
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

/** The same import, sent again, is answered with what it made; anything else under the id is refused. */
async function replay(
  tx: Tx,
  there: CompetitionRow,
  content: CompetitionContent,
  place: Pick<NewCompetition, 'meetId' | 'title'>,
): Promise<Imported> {
  const loaded = await loadCompetition(tx, there);
  const now = sheetOf(loaded, { nameOf: (line) => line.name, isArchive: false });
  const isSame =
    there.meetId === place.meetId &&
    there.title === place.title &&
    isDeepStrictEqual(normaliseSheet(now), normaliseSheet(writeSheet(content)));
  return isSame ? { row: there, replayed: true } : { userErrors: [ID_REUSED] };
}

const ID_REUSED = refusal({
  code: 'ID_REUSED',
  path: ['id'],
  message: 'Something else was made under this id.',
  remedy: 'Make a new id; send the same id only with the same content.',
});

const TOO_LONG = refusal({
  code: 'TOO_LONG',
  path: ['sheet'],
  message: 'A bib, flight, age or what is written is longer than can be kept.',
  remedy: 'Shorten it: bibs and flights to 64 characters, names and clubs to 200.',
});

function problemError({ path: pointer, code, message, rule }: Problem): SheetProblem {
  const path = pointer === '' ? [] : pointer.split('/').slice(1).map(unescaped);
  const error = refusal({
    code,
    message,
    rule,
    path: ['sheet', ...path],
    remedy: 'Correct the sheet and import it again.',
  });
  return Object.assign(new SheetProblem(), error, { pointer });
}

/** RFC 6901 section 4. */
function unescaped(part: string): string {
  return part.replaceAll('~1', '/').replaceAll('~0', '~');
}
