import type { Circle } from '../../support/at-the-circle.js';

/** The journal with bibs instead of keys: what was entered, by kind and standing, in the order of recording. */
export async function written(circle: Circle): Promise<any[]> {
  const bibs = new Map(Object.entries(circle.competition.competitors).map(([bib, id]) => [id, bib]));
  const bibOf = (key: string): string | undefined =>
    bibs.get(Buffer.from(`Competitor:${key}`).toString('base64url'));
  const journal = await circle.journal();
  return journal.map(({ kind, standing, body: { competitor, ...rest } }) => ({
    standing,
    ...rest,
    kind,
    ...(competitor !== undefined && { bib: bibOf(competitor) }),
  }));
}
