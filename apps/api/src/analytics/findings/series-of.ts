import { assessedThrows, type AssessedSeries, type Purpose } from '#technique';
import type { AnalysisTask, KnownThrow } from './task.js';

/** A series is named by athlete, occasion and what was thrown; of these the occasion. */
export function occasionOf({ id }: { readonly id: string }): string {
  return id.split(' ')[1] ?? '';
}

/** Series for a purpose, whatever was noted of them. */
export function plainSeries(
  throws: readonly KnownThrow[],
  { vocabulary }: Pick<AnalysisTask, 'vocabulary'>,
  purpose: Purpose,
): readonly AssessedSeries[] {
  return assessedThrows({ throws, observations: [], vocabulary }, '', purpose).series;
}

/** Throws of one implement and variant. */
export interface OneImplement {
  readonly implement: string;
  readonly implementGrams: number | null;
  readonly variant: KnownThrow['variant'];
  readonly throws: readonly KnownThrow[];
}

/** By what was thrown: what is used most comes first. Marks of different implements never meet. */
export function byImplement(throws: readonly KnownThrow[]): readonly OneImplement[] {
  const groups = new Map<string, KnownThrow[]>();
  for (const one of throws) {
    const implement = [one.event, one.massG ?? 'any', one.variant].join(' ');
    const group = groups.get(implement);
    if (group) group.push(one);
    else groups.set(implement, [one]);
  }
  return [...groups]
    .map(([implement, all]) => ({
      ...{ implement, implementGrams: all[0]!.massG, variant: all[0]!.variant, throws: all },
    }))
    .sort((a, b) => b.throws.length - a.throws.length || (a.implement < b.implement ? -1 : 1));
}

/** Throws that have a mark somebody measured. */
export function measured(
  throws: readonly KnownThrow[],
): readonly (KnownThrow & { readonly markCm: number })[] {
  return throws.filter(
    (one): one is KnownThrow & { readonly markCm: number } =>
      one.outcome === 'valid' && one.markCm !== null && one.measured && !one.annulled,
  );
}

export function idsOf(throws: readonly KnownThrow[]): readonly string[] {
  return throws.map(({ id }) => id);
}
