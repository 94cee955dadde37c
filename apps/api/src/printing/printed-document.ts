/** A document before it is set on paper: what stands in it, in reading order. */
export interface PrintedDocument {
  readonly title: string;
  /** Under the title, a line each. */
  readonly lines: readonly string[];
  readonly isLandscape: boolean;
  readonly tables: readonly PrintedTable[];
  /** Instead of all this a page each: what is worn. */
  readonly cards?: readonly PrintedCard[];
  /** Under the last table, a paragraph each. */
  readonly notes: readonly string[];
  /** Lines to sign on, left to right. */
  readonly signatures: readonly string[];
  /** On every page. */
  readonly foot: string;
}

/** A page with one number that is read from afar. */
export interface PrintedCard {
  readonly number: string;
  /** Under it, the larger first. */
  readonly lines: readonly string[];
}

export interface PrintedTable {
  /** Above the table; also what it is called for those who do not see it. */
  readonly caption: string | null;
  readonly columns: readonly PrintedColumn[];
  readonly rows: readonly (readonly string[])[];
  /** Rows to write in are higher. */
  readonly isForWriting: boolean;
}

export interface PrintedColumn {
  readonly title: string;
  /** Share of the width, in relation to the other columns. */
  readonly share: number;
  readonly align: 'left' | 'right' | 'center';
  /** Names its row. */
  readonly isHeader?: boolean;
}
