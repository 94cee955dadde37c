import type { RuleSetCode } from '../codes.js';

/** `sectorline-result/1`: what was counted from one sheet, or why it was not. Marks and points are decimal strings. */
export interface ResultDocument {
  readonly format: 'sectorline-result/1';
  readonly rules?: RuleSetCode;
  readonly edition?: string;
  readonly results?: readonly ResultRow[];
  readonly cuts?: readonly CutResult[];
  /** By round ("1", "2", …); absent for vertical jumps. */
  readonly order?: Readonly<Record<string, readonly string[]>>;
  readonly clubs?: readonly ClubRow[];
  readonly differences?: readonly Difference[];
  readonly problems: readonly Problem[];
}

export interface ResultRow {
  readonly bib: string;
  readonly place: number | null;
  readonly equal: boolean;
  readonly mark: string | null;
  readonly wind: string | null;
  readonly windLegal: boolean | null;
  readonly windLegalMark: string | null;
  readonly status: 'NM' | 'DQ' | 'DNS' | 'GUEST' | null;
  /** What separates this row from the one placed just before. */
  readonly decidedBy: string | null;
  readonly qualified: 'Q' | 'q' | 'qR' | 'qJ' | 'qD' | null;
  /** Only with a scoring. */
  readonly points?: string;
}

export interface CutResult {
  readonly after: number;
  readonly through: readonly string[];
}

export interface ClubRow {
  readonly club: string;
  readonly points: string;
  readonly place: number;
}

export interface Difference {
  readonly bib: string;
  readonly key: 'place' | 'mark';
  readonly written: number | string | null;
  readonly counted: number | string | null;
  readonly because: string;
}

/** One thing that is wrong with a file: where (JSON Pointer), which code, in words, by which rule. */
export interface Problem {
  readonly path: string;
  readonly code: string;
  readonly message: string;
  readonly rule: string | null;
}
