import type { CountingThrow } from '#persistence';
import { toMetric } from '#rules';
import { isTechniqueEvent, VARIANTS, type TechniqueEvent, type Variant } from '#technique';
import type { LoadedCompetition } from '../platform/competition/loaded.js';
import { momentOf } from '../platform/competition/moment-of.js';
import { dayOf, type KnownThrow } from './findings/task.js';

/** A trial as the history has it, but for the variant: no official writes down how much of a throw was done. */
export type MeetThrow = Omit<KnownThrow, 'variant'> & { readonly competitorId: string };

/** Every trial of a throw or a horizontal jump that counts now, of athletes on record. */
export function throwsOf(loaded: LoadedCompetition): readonly MeetThrow[] {
  const { row, meet } = loaded;
  if (loaded.kind === 'vertical' || !isTechniqueEvent(row.event)) return [];
  const event: TechniqueEvent = row.event;
  const { onDate } = momentOf(row, meet);
  const owners = new Map(loaded.roster.map(({ competitor }) => [competitor.id, competitor]));
  return loaded.state.competitors.flatMap(({ key, series }) => {
    const competitor = owners.get(key);
    const athlete = competitor?.athleteId;
    if (!competitor || !athlete) return [];
    return series.flatMap((id): MeetThrow[] => {
      const attempt = id === null ? undefined : loaded.state.attempts.get(id);
      if (!attempt) return [];
      const { outcome, mark, wind, foul, implementGrams } = attempt.judgement;
      const markCm = mark === null ? null : row.unit === 'cm' ? mark : toMetric(mark);
      return [
        {
          ...{ id: attempt.id, athlete, thrownIn: 'competition', occasion: row.id, competitorId: key, event },
          ...{ occasionName: `${meet.name}, ${row.title}`, onDate, day: dayOf(onDate), round: attempt.round },
          massG: implementGrams ?? competitor.implementGrams ?? row.implementGrams,
          outcome:
            outcome === 'pass' || outcome === 'retired' ? 'pass' : outcome === 'foul' ? 'foul' : 'valid',
          ...{ markCm, measured: markCm !== null, effortPercent: null, voidedOnPurpose: false },
          ...{ annulled: false, styles: [], foul, windTenths: typeof wind === 'number' ? wind : null },
        },
      ];
    });
  });
}

export function practiceThrow(row: CountingThrow, place: string | null): KnownThrow | null {
  if (!isTechniqueEvent(row.event)) return null;
  return {
    ...{ id: row.throwId, athlete: row.athleteId, thrownIn: 'practice', occasion: row.sessionId },
    ...{ occasionName: place ?? '', onDate: row.onDate, day: dayOf(row.onDate), event: row.event },
    ...{ variant: row.variant, massG: row.implementGrams, round: row.round, outcome: row.outcome },
    ...{ markCm: row.mark, measured: row.isMeasured, effortPercent: row.effortPercent },
    ...{ voidedOnPurpose: row.voidedOnPurpose, annulled: row.isAnnulled, styles: row.styles },
    ...{ foul: row.foul, windTenths: row.wind },
  };
}

const STANDING: readonly Variant[] = ['standing', 'step-in', 'half-turn', 'short-approach'];

/**
 * How an athlete does an event at meets: as most of the whole throws of practice are done. Nobody writes it down at a
 * meet; without practice it is the most complete way of the event.
 */
export function usualVariant(event: TechniqueEvent, practice: readonly KnownThrow[]): Variant {
  const counts = new Map<Variant, number>();
  for (const one of practice) {
    const isWhole = one.event === event && !STANDING.includes(one.variant);
    if (isWhole) counts.set(one.variant, (counts.get(one.variant) ?? 0) + 1);
  }
  const [usual] = [...counts].sort((a, b) => b[1] - a[1]);
  return usual?.[0] ?? VARIANTS[event].at(-1)!;
}
