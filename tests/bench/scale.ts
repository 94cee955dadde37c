/** How much is measured. The quick scale runs the same code where only breakage is looked for. */
export interface Scale {
  /** Measured rounds, after one that is thrown away. */
  readonly rounds: number;
  /** Seconds of load in a round of reading. */
  readonly readSeconds: number;
  /** Competitions that lie in the database while tables are read. */
  readonly stored: number;
  /** Sheets that are counted. */
  readonly sheets: number;
}

export const SCALE: Scale =
  process.env['BENCH_QUICK'] === '1'
    ? { rounds: 2, readSeconds: 1, stored: 50, sheets: 200 }
    : { rounds: 7, readSeconds: 3, stored: 2_000, sheets: 1_000 };

/** What every figure is about: a final of 24 with six rounds and no cut, and as many officials or readers at once. */
export const COMPETITORS = 24;
export const ROUNDS = 6;
export const CLIENTS = 16;
