import type { Admission, Card, CardCompetitor } from '../card.js';
import type { CombinedCard, CombinedMark } from '../combined/combined-card.js';
import { COMBINED_TABLES } from '../combined/combined-tables.js';
import { formatPoints } from '../quantities/fraction.js';
import { formatMark, type Unit } from '../quantities/mark.js';
import type { Scoring } from '../scoring/scoring.js';
import type { JumpOffRound, VerticalCard, VerticalCompetitor } from '../vertical/vertical-card.js';
import { formatJumpOffTry, formatVerticalCell } from '../vertical/vertical-cell.js';
import { formatCombinedMark } from './combined-text.js';
import { formatDistanceCell } from './distance-cell.js';
import { plainObject, type PlainJson, type PlainObject } from './json.js';
import { planToWrite } from './plan-to-write.js';
import {
  COMBINED_FORMAT,
  COMPETITION_FORMAT,
  MEET_FORMAT,
  type CompetitionContent,
  type CompetitorInformation,
  type SheetContent,
} from './sheet-content.js';

/**
 * Writes a sheet of any format, with its keys in the order of the format: the inverse of `readSheet`, but for defaults
 * and empty cells at the end of a series, which are left out.
 */
export function writeSheet(content: SheetContent): PlainObject {
  switch (content.kind) {
    case 'combined':
      return writeCombined(content.card);
    case 'meet':
      return present({
        format: MEET_FORMAT,
        scoring: writeScoring(content.scoring),
        sheets: content.sheets.map(writeCompetition),
      });
    default:
      return writeCompetition(content);
  }
}

/** Values by key; `undefined` leaves the key out. */
type Members = Readonly<Record<string, PlainJson | undefined>>;

function present(members: Members): PlainObject {
  return plainObject(
    Object.entries(members).filter((entry): entry is [string, PlainJson] => entry[1] !== undefined),
  );
}

function writeCompetition(content: CompetitionContent): PlainObject {
  const { card, information } = content;
  const { category, implementGrams, scoring, edition } = information;
  return present({
    format: COMPETITION_FORMAT,
    rules: card.rules,
    edition: edition ?? undefined,
    event: card.event,
    category: Object.keys(category).length > 0 ? { ...category } : undefined,
    implementGrams: implementGrams ?? undefined,
    indoor: card.indoor || undefined,
    stage: card.stage === 'final' ? undefined : card.stage,
    qualifying: writeQualifying(card),
    ...(content.kind === 'vertical'
      ? verticalMembers(content.card, information.competitors)
      : distanceMembers(content.card, content)),
    scoring: scoring ? writeScoring(scoring) : undefined,
  });
}

function distanceMembers(card: Card, { information }: CompetitionContent): Members {
  const writeSeries = ({ series }: CardCompetitor): (string | null)[] =>
    series.map((trial) => trial && formatDistanceCell(trial, card.unit));
  return {
    plan: planToWrite(card, information.plan),
    competitors: card.competitors.map((competitor, index) =>
      writeCompetitor(competitor, writeSeries(competitor), information.competitors[index]),
    ),
    admitted: writeAdmitted(card.admitted),
  };
}

function verticalMembers(card: VerticalCard, information: readonly CompetitorInformation[]): Members {
  const writeSeries = ({ series }: VerticalCompetitor): (string | null)[] =>
    series.map((trials) => trials && formatVerticalCell(trials));
  return {
    heights: card.heights.map((height) => formatMark(height, card.unit)),
    competitors: card.competitors.map((competitor, index) =>
      writeCompetitor(competitor, writeSeries(competitor), information[index]),
    ),
    admitted: writeAdmitted(card.admitted),
    jumpOff: card.jumpOff.length > 0 ? card.jumpOff.map((round) => writeRound(round, card.unit)) : undefined,
  };
}

function writeRound({ height, tries }: JumpOffRound, unit: Unit): PlainObject {
  const entries = tries.map(({ bib, trial }) => [bib, formatJumpOffTry(trial)] as const);
  return { height: formatMark(height, unit), tries: plainObject(entries) };
}

function writeCompetitor(
  { bib, name, club, flight, status, guest }: CardCompetitor | VerticalCompetitor,
  series: readonly (string | null)[],
  information: CompetitorInformation | undefined,
): PlainObject {
  const written = information?.written;
  return present({
    bib,
    name: name ?? undefined,
    club: club ?? undefined,
    flight: flight ?? undefined,
    status: status ?? undefined,
    guest: guest || undefined,
    implementGrams: information?.implementGrams ?? undefined,
    series: withoutEmptyEnd(series),
    written: written ? present({ ...written }) : undefined,
  });
}

function withoutEmptyEnd(series: readonly (string | null)[]): (string | null)[] {
  return series.slice(0, series.findLastIndex((cell) => cell !== null) + 1);
}

function writeQualifying({ qualifying, unit }: Card | VerticalCard): PlainObject | undefined {
  if (!qualifying) return undefined;
  return { standard: formatMark(qualifying.standard, unit), fill: qualifying.fill };
}

function writeAdmitted(admitted: readonly Admission[]): readonly PlainObject[] | undefined {
  if (admitted.length === 0) return undefined;
  return admitted.map(({ bib, after, by }) => present({ bib, after: after ?? undefined, by }));
}

function writeScoring({ places, scorersPerClub, nonScorers }: Scoring): PlainObject {
  return { places: places.map((points) => Number(formatPoints(points))), scorersPerClub, nonScorers };
}

function writeCombined({ table, timing, rows }: CombinedCard): PlainObject {
  const { events } = COMBINED_TABLES[table];
  const writeMark = (mark: CombinedMark, index: number): PlainJson =>
    typeof mark === 'number' ? formatCombinedMark(mark, events[index]!, timing) : mark;
  return {
    format: COMBINED_FORMAT,
    table,
    timing,
    rows: rows.map(({ bib, name, club, marks }) =>
      present({
        bib,
        name: name ?? undefined,
        club: club ?? undefined,
        marks: plainObject(marks.map((mark, index) => [events[index]!, writeMark(mark, index)])),
      }),
    ),
  };
}
