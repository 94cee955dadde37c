/**
 * The open sheet format as plain shapes, for the second count only. They are written from the format's
 * description, not from the rules library, so that an error there cannot be shared here.
 */
export type Cell = string | null;

export interface Written {
  place?: number;
  mark?: string;
}

export interface Competitor {
  bib: string;
  name?: string;
  club?: string;
  flight?: string;
  status?: 'DNS' | 'DQ';
  guest?: boolean;
  implementGrams?: number;
  series?: Cell[];
  written?: Written;
}

export interface Cut {
  after: number;
  through: number;
}

export interface PlanOverride {
  rounds?: number;
  cuts?: Cut[];
  cutTies?: 'next-best' | 'mark';
  reorderAfter?: number[];
  reorder?: 'reverse' | 'leaders-first';
}

export interface Admitted {
  bib: string;
  after?: number;
  by: 'R' | 'J' | 'D';
}

export interface JumpOffRound {
  height: string;
  tries: Record<string, string>;
}

export interface Scoring {
  places: number[];
  scorersPerClub?: number | null;
  nonScorers?: 'out' | 'hold';
}

export interface Sheet {
  format: 'sectorline-sheet/1';
  rules: string;
  edition?: string;
  event: string;
  category?: { sex?: string; age?: string };
  implementGrams?: number;
  indoor?: boolean;
  stage?: 'final' | 'qualification';
  qualifying?: { standard: string; fill?: number };
  plan?: PlanOverride;
  heights?: string[];
  competitors: Competitor[];
  admitted?: Admitted[];
  jumpOff?: JumpOffRound[];
  scoring?: Scoring;
}

export interface CombinedRow {
  bib: string;
  name?: string;
  club?: string;
  marks: Record<string, string | null>;
}

export interface CombinedSheet {
  format: 'sectorline-combined/1';
  table: string;
  timing?: 'electronic' | 'hand';
  rows: CombinedRow[];
}

export interface MeetSheet {
  format: 'sectorline-meet/1';
  scoring: Scoring;
  sheets: Sheet[];
}

export type AnySheet = Sheet | CombinedSheet | MeetSheet;

/** One line of a result. The keys of the format, nothing else; `points` only where there is a scoring. */
export interface ResultRow {
  bib: string;
  place: number | null;
  equal: boolean;
  mark: string | null;
  wind: string | null;
  windLegal: boolean | null;
  windLegalMark: string | null;
  status: string | null;
  decidedBy: string | null;
  qualified: string | null;
  points?: string;
}

const VERTICAL_EVENTS = ['high-jump', 'pole-vault'];

export function isVertical(sheet: Sheet): boolean {
  return VERTICAL_EVENTS.includes(sheet.event);
}

/** Wind is measured for the two horizontal jumps, and not under a roof. */
export function hasWind(sheet: Sheet): boolean {
  return ['long-jump', 'triple-jump'].includes(sheet.event) && sheet.indoor !== true;
}

/** The cells of a competitor without the trials not taken, which can only stand at the end. */
export function trialsOf(competitor: Competitor): string[] {
  return (competitor.series ?? []).filter((cell) => cell !== null);
}
