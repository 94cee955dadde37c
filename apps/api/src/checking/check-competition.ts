import {
  briefs,
  competitions,
  officialResults,
  type CompetitionRow,
  type OfficialResultRow,
} from '#persistence';
import { recount } from '#rules';
import { resultDocumentOf, sheetOf } from '../platform/competition/documents.js';
import { loadCompetition, type LoadedCompetition } from '../platform/competition/loaded.js';
import { placesOfBrief, placesOfLoaded } from '../platform/competition/places.js';
import type { Database } from '../platform/database/database.js';
import type { Aspect, Finding } from './finding.js';
import { difference, placeRowsOf, type PlaceRow } from './place-rows.js';

/** Counts a sheet apart from the rules library and gives a result document. */
export type SecondCount = (sheet: unknown) => unknown;

/** What is known of a competition that was checked. */
export interface Checked {
  readonly row: CompetitionRow;
  /** Of the journal, at the version of `row`. */
  readonly places: readonly PlaceRow[];
  readonly findings: readonly Finding[];
}

/** Counts one competition from its journal and compares all else that is said of it; null: it is not there any more. */
export async function checkCompetition(
  database: Database,
  { organisationId, id }: Pick<CompetitionRow, 'organisationId' | 'id'>,
  secondCount: SecondCount | null,
): Promise<Checked | null> {
  const read = await database.snapshot(async (at) => {
    const row = await competitions.find(at, organisationId, id);
    if (!row) return null;
    const [brief] = await briefs.read(at, organisationId, [id]);
    const archived = await officialResults.ofCompetition(at, organisationId, id);
    return { loaded: await loadCompetition(at, row), brief: brief!, archived };
  });
  if (!read) return null;
  const { loaded, brief, archived } = read;
  const places = placeRowsOf(resultDocumentOf(loaded)) ?? [];
  const findings: Finding[] = [];
  const add = (aspect: Aspect, what: string | null): void => {
    if (what !== null) findings.push({ aspect, where: `competition ${id} (${loaded.row.title})`, what });
  };
  add('briefs', sameInBrief(loaded, placesOfBrief(loaded.row, brief)));
  add('sealed', asSigned(loaded, places, archived[0]));
  for (const one of archived) add('archives', countsToItsResult(one));
  if (secondCount) {
    const sheet = sheetOf(loaded, { nameOf: null, isArchive: true });
    add('secondCount', difference(places, placeRowsOf(secondCount(sheet))));
  }
  return { row: loaded.row, places, findings };
}

function sameInBrief(loaded: LoadedCompetition, brief: ReturnType<typeof placesOfBrief>): string | null {
  const isSame = JSON.stringify(placesOfLoaded(loaded)) === JSON.stringify(brief);
  return isSame ? null : 'the places that count for the clubs are others than those of the journal';
}

/** A signature holds until a reopening: nothing that came in between may have moved a place. */
function asSigned(
  { state, row }: LoadedCompetition,
  places: readonly PlaceRow[],
  latest: OfficialResultRow | undefined,
): string | null {
  if (!state.signedOff)
    return row.status === 'official' ? 'it is said to be official and nobody has signed' : null;
  if (row.status !== 'official') return `it was signed, and is said to be ${row.status}`;
  if (!latest) return 'it was signed and not archived';
  return difference(places, placeRowsOf(latest.result));
}

function countsToItsResult({ revision, sheet, result }: OfficialResultRow): string | null {
  const counted = placeRowsOf(recount(JSON.stringify(sheet)));
  const found = difference(counted ?? [], placeRowsOf(result));
  return found === null ? null : `revision ${revision}, ${found}`;
}
