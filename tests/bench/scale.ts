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
  /** Who listens to one table, how often it changes, and so far apart. */
  readonly crowd: number;
  readonly changes: number;
  readonly apartMs: number;
}

export const SCALE: Scale =
  process.env['BENCH_QUICK'] === '1'
    ? { rounds: 2, readSeconds: 1, stored: 50, sheets: 200, crowd: 200, changes: 20, apartMs: 50 }
    : { rounds: 7, readSeconds: 3, stored: 2_000, sheets: 1_000, crowd: 5_000, changes: 200, apartMs: 300 };

/** What every figure is about: a final of 24 with six rounds and no cut, and as many officials or readers at once. */
export const COMPETITORS = 24;
export const ROUNDS = 6;
export const CLIENTS = 16;
