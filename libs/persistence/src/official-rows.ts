/** A signed-off result as it was archived; competitors by id and bib. */
export interface OfficialResultRow {
  readonly organisationId: string;
  readonly competitionId: string;
  /** From 1; a new one for each signature after a reopening. */
  readonly revision: number;
  /** The journal is counted up to this entry. */
  readonly sequence: number;
  readonly sheet: object;
  readonly result: object;
  readonly signedBy: string;
  /** The second person; `null`: the meet demands none. */
  readonly confirmedBy: string | null;
  readonly signedAt: string;
}
