import {
  countCompetition,
  countSheet,
  editionsOf,
  parsePlacePoints,
  writeSheet,
  type CompetitionContent,
  type MeetContent,
  type PlainObject,
  type RecountDocument,
  type ResultDocument,
  type Scoring,
} from '#rules';
import type { LoadedCompetition } from './loaded.js';

export interface SheetOptions {
  /** How a competitor is named; `null`: nobody is, as in an archive. */
  readonly nameOf: ((line: LoadedCompetition['roster'][number]) => string | null) | null;
  /** An archive names its edition, so that it is counted the same for ever; elsewhere the newest is left out. */
  readonly isArchive: boolean;
}

/** The competition as a sheet (`sectorline-sheet/1`), as it stands. */
export function sheetOf(loaded: LoadedCompetition, options: SheetOptions): PlainObject {
  return writeSheet(contentOf(loaded, options));
}

/** Competitions of one meet as a sheet (`sectorline-meet/1`), as they stand. */
export function meetSheetOf(
  loaded: readonly LoadedCompetition[],
  scoring: Scoring,
  options: SheetOptions,
): PlainObject {
  return writeSheet(meetContentOf(loaded, scoring, options));
}

/** What they count to together (`sectorline-meet-result/1`), as they stand. */
export function meetResultOf(loaded: readonly LoadedCompetition[], scoring: Scoring): RecountDocument {
  return countSheet(meetContentOf(loaded, scoring, { nameOf: null, isArchive: true }));
}

/** In a sheet of a meet the scoring is the meet's, and no competition has its own. */
function meetContentOf(
  loaded: readonly LoadedCompetition[],
  scoring: Scoring,
  options: SheetOptions,
): MeetContent {
  const sheets = loaded.map((one): CompetitionContent => {
    const content = contentOf(one, options);
    const information = { ...content.information, scoring: null };
    return content.kind === 'vertical' ? { ...content, information } : { ...content, information };
  });
  return { kind: 'meet', scoring, sheets };
}

/** What the competition counts to, as it stands (`sectorline-result/1`). */
export function resultDocumentOf(loaded: LoadedCompetition): ResultDocument {
  return countCompetition(contentOf(loaded, { nameOf: null, isArchive: true }));
}

function contentOf(loaded: LoadedCompetition, options: SheetOptions): CompetitionContent {
  const information = informationOf(loaded, options);
  const named = <C extends { readonly name: string | null }>(competitors: readonly C[]): C[] =>
    competitors.map((competitor, at) => ({
      ...competitor,
      name: options.nameOf?.(loaded.roster[at]!) ?? null,
    }));
  if (loaded.kind === 'vertical') {
    const { card } = loaded.state;
    return { kind: 'vertical', card: { ...card, competitors: named(card.competitors) }, information };
  }
  const { card } = loaded.state;
  return { kind: 'distance', card: { ...card, competitors: named(card.competitors) }, information };
}

function informationOf(
  { row, roster }: LoadedCompetition,
  { isArchive }: SheetOptions,
): CompetitionContent['information'] {
  const isNewest = editionsOf(row.rules).at(-1) === row.edition;
  const { categorySex: sex, categoryAge: age } = row;
  return {
    edition: isArchive || !isNewest ? row.edition : null,
    plan: row.plan,
    category: { ...(sex !== null && { sex }), ...(age !== null && { age }) },
    implementGrams: row.implementGrams,
    scoring: scoringOf(row.scoring),
    competitors: roster.map(({ competitor }) => ({
      implementGrams: competitor.implementGrams,
      written: competitor.written,
    })),
  };
}

type StoredScoring = LoadedCompetition['row']['scoring'];

function scoringOf(stored: StoredScoring): CompetitionContent['information']['scoring'] {
  if (!stored) return null;
  const { places, scorersPerClub = null, nonScorers = 'out' } = stored;
  return { places: places.map((points) => parsePlacePoints(String(points))!), scorersPerClub, nonScorers };
}
