/** Of one competitor in a result, whatever it was counted by: what makes it official. */
export interface PlaceRow {
  readonly bib: string;
  readonly place: number | null;
  readonly mark: string | null;
}

/** The rows of a result document, or of what a second implementation gave for one; null: it has none. */
export function placeRowsOf(document: unknown): PlaceRow[] | null {
  const { results } = (document ?? {}) as { readonly results?: unknown };
  return Array.isArray(results)
    ? results.map(({ bib, place, mark }: PlaceRow) => ({ bib, place, mark }))
    : null;
}

/** The first place where two results part, in words; null: they agree. */
export function difference(ours: readonly PlaceRow[], others: readonly PlaceRow[] | null): string | null {
  if (others === null) return 'there is no result to compare with';
  const length = Math.max(ours.length, others.length);
  for (let at = 0; at < length; at += 1) {
    const [a, b] = [ours[at], others[at]];
    if (a?.bib === b?.bib && a?.place === b?.place && a?.mark === b?.mark) continue;
    return `row ${at + 1}: ${inWords(a)} by the journal, ${inWords(b)} there`;
  }
  return null;
}

function inWords(row: PlaceRow | undefined): string {
  return row ? `bib ${row.bib} place ${row.place ?? '–'} with ${row.mark ?? 'no mark'}` : 'nobody';
}
