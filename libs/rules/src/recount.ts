import type { CombinedResultDocument } from './combined/combined-result.js';
import { countCombined } from './combined/count-combined.js';
import { countCard } from './result/count-card.js';
import type { Problem, ResultDocument } from './result/result-document.js';
import { scoreMeet, scoreResult, type MeetResultDocument } from './scoring/score-result.js';
import { differencesOf } from './sheet/differences.js';
import { readSheetSource } from './sheet/read-sheet.js';
import {
  type CombinedContent,
  type CompetitionContent,
  type MeetContent,
  type SheetContent,
} from './sheet/sheet-content.js';
import type { SheetHead } from './sheet/sheet-head.js';
import { countVertical } from './vertical/count-vertical.js';

/** What one file gives. */
export type RecountDocument = ResultDocument | CombinedResultDocument | MeetResultDocument;

/**
 * Counts a sheet of any format: bytes of a file or its text in, one result document out, whatever the input is. A file
 * that is not a valid sheet gives a document with all its problems and no results.
 */
export function recount(source: Uint8Array | string): RecountDocument {
  const reading = readSheetSource(source);
  return reading.ok ? countSheet(reading.content) : refused(reading.problems, reading.head);
}

/** Counts a sheet that has been read. */
export function countSheet(content: SheetContent): RecountDocument {
  switch (content.kind) {
    case 'combined':
      return countCombinedEvents(content);
    case 'meet':
      return countMeet(content);
    default:
      return countCompetition(content);
  }
}

/** Counts one competition. */
export function countCompetition(content: CompetitionContent): ResultDocument {
  const { card, information } = content;
  const { results: rows, ...progression } =
    content.kind === 'vertical' ? countVertical(content.card) : countCard(content.card);
  const scored = information.scoring && scoreResult(rows, card.competitors, information.scoring);
  const differences = differencesOf(content, rows);
  return {
    format: 'sectorline-result/1',
    rules: card.rules,
    edition: card.edition,
    results: rows,
    ...progression,
    ...scored,
    ...(differences && { differences }),
    problems: [],
  };
}

function countCombinedEvents({ card }: CombinedContent): CombinedResultDocument {
  return { format: 'sectorline-result/1', results: countCombined(card), problems: [] };
}

function countMeet({ sheets, scoring }: MeetContent): MeetResultDocument {
  const events = sheets.map((sheet) => ({
    document: countCompetition(sheet),
    competitors: sheet.card.competitors,
  }));
  return scoreMeet(events, scoring);
}

function refused(problems: readonly Problem[], { isMeet, ...decidedBy }: SheetHead): RecountDocument {
  if (isMeet) return { format: 'sectorline-meet-result/1', problems };
  return { format: 'sectorline-result/1', ...decidedBy, problems };
}
