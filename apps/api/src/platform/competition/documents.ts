import {
  countCompetition,
  editionsOf,
  parsePlacePoints,
  writeSheet,
  type Card,
  type CompetitionContent,
  type PlainObject,
  type ResultDocument,
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

/** What the competition counts to, as it stands (`sectorline-result/1`). */
export function resultDocumentOf(loaded: LoadedCompetition): ResultDocument {
  return countCompetition(contentOf(loaded, { nameOf: null, isArchive: true }));
}

function contentOf(loaded: LoadedCompetition, { nameOf, isArchive }: SheetOptions): CompetitionContent {
  const { row, roster, state } = loaded;
  const isNewest = editionsOf(row.rules).at(-1) === row.edition;
  const { categorySex: sex, categoryAge: age } = row;
  const competitors = state.card.competitors.map((competitor, index) => {
    const line = roster[index]!;
    return { ...competitor, name: nameOf?.(line) ?? null };
  });
  return {
    kind: 'distance',
    card: { ...state.card, competitors } satisfies Card,
    information: {
      edition: isArchive || !isNewest ? row.edition : null,
      plan: row.plan,
      category: { ...(sex !== null && { sex }), ...(age !== null && { age }) },
      implementGrams: row.implementGrams,
      scoring: scoringOf(row.scoring),
      competitors: roster.map(({ competitor }) => ({
        implementGrams: competitor.implementGrams,
        written: competitor.written,
      })),
    },
  };
}

type StoredScoring = LoadedCompetition['row']['scoring'];

function scoringOf(stored: StoredScoring): CompetitionContent['information']['scoring'] {
  if (!stored) return null;
  const { places, scorersPerClub = null, nonScorers = 'out' } = stored;
  return { places: places.map((points) => parsePlacePoints(String(points))!), scorersPerClub, nonScorers };
}
