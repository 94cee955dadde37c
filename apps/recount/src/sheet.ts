/**
 * What a table for people shows from the file itself: names, clubs and cells. Only read from files that the rules
 * library has counted, so the shapes hold.
 */
export interface Sheet {
  readonly format: 'sectorline-sheet/1';
  readonly event: string;
  readonly category?: { readonly sex?: 'W' | 'M' | 'X'; readonly age?: string };
  readonly implementGrams?: number;
  readonly indoor?: boolean;
  readonly stage?: 'final' | 'qualification';
  readonly qualifying?: { readonly standard: string; readonly fill?: number };
  readonly heights?: readonly string[];
  readonly competitors: readonly Competitor[];
  readonly jumpOff?: readonly { readonly height: string; readonly tries: Readonly<Record<string, string>> }[];
}

export interface Competitor {
  readonly bib: string;
  readonly name?: string;
  readonly club?: string;
  readonly series?: readonly (string | null)[];
  readonly written?: { readonly place?: number; readonly mark?: string };
}

export interface CombinedSheet {
  readonly format: 'sectorline-combined/1';
  readonly table: string;
  readonly timing?: 'electronic' | 'hand';
  readonly rows: readonly {
    readonly bib: string;
    readonly name?: string;
    readonly club?: string;
    readonly marks: Readonly<Record<string, string | null>>;
  }[];
}

export interface Meet {
  readonly format: 'sectorline-meet/1';
  readonly sheets: readonly Sheet[];
}

export type SheetFile = Sheet | CombinedSheet | Meet;
