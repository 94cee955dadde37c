import type { CompetitionState } from '../competition/state.js';
import { eventOf } from '../events/event.js';
import type { Wind } from '../quantities/wind.js';
import type { VerticalState } from '../vertical-competition/state.js';
import type { Performance } from './performance.js';
import {
  performancesOfCard,
  performancesOfVerticalCard,
  type Occasion,
  type Performer,
} from './performances-of.js';

/** Who a competitor is, by the key that entries name; what was thrown, the journal says. */
export type Identified = Omit<Performer, 'implementGrams'>;

/**
 * The performances of a competition as it stands, each under the id of its attempt and with the implement that was
 * noted with it, else the one of the competitor's category.
 */
export function performancesOfState(
  state: CompetitionState,
  occasion: Occasion,
  identify: (key: string) => Identified,
): Performance[] {
  const attempts = state.competitors.flatMap(({ key, bib, series }, position) => {
    const { implementGrams } = state.setup.competitors[position]!;
    return series.flatMap((id, at) => {
      if (id === null) return [];
      const grams = state.attempts.get(id)!.judgement.implementGrams ?? implementGrams;
      return [[`${occasion.competition}/${bib}/${at + 1}`, { id, implementGrams: grams, key }] as const];
    });
  });
  const performances = performancesOfCard(state.card, occasion, performer(state, identify));
  return named(performances, new Map(attempts)).map((one) => ({ ...one, wind: windSoFar(one, state) }));
}

/** A reading that is not there yet is expected until the result is signed off; after that there was none. */
function windSoFar({ event, indoor, wind }: Performance, { signedOff }: CompetitionState): Wind | null {
  if (!eventOf(event).hasWind(indoor) || (wind !== null && wind !== 'pending')) return wind;
  return signedOff ? 'NWI' : 'pending';
}

/** The same at a bar: each height cleared is the performance of the attempt that cleared it. */
export function performancesOfVerticalState(
  state: VerticalState,
  occasion: Occasion,
  identify: (key: string) => Identified,
): Performance[] {
  const jumps = state.competitors.flatMap(({ key, bib, series }) => {
    const own = [...state.attempts.values()].filter(({ competitor }) => competitor === key);
    const rounds = state.card.jumpOff.map(({ height }, at) => {
      const jump = own.find(
        (one) => one.kind === 'jump-off' && one.height === height && one.trial === at + 1,
      );
      return [`${occasion.competition}/${bib}/jump-off-${at + 1}`, jump?.id] as const;
    });
    const heights = state.heights.map((height, at) => {
      const id = series[at]?.find((one) => state.attempts.get(one)!.judgement.outcome === 'cleared');
      return [`${occasion.competition}/${bib}/${height}`, id] as const;
    });
    return [...heights, ...rounds].flatMap(([line, id]) =>
      id === undefined ? [] : [[line, { id, implementGrams: null }] as const],
    );
  });
  return named(performancesOfVerticalCard(state.card, occasion, performer(state, identify)), new Map(jumps));
}

function performer(
  { setup }: CompetitionState | VerticalState,
  identify: (key: string) => Identified,
): (bib: string) => Performer {
  const keys = new Map(setup.competitors.map(({ key, bib }) => [bib, key]));
  return (bib) => ({ ...identify(keys.get(bib)!), implementGrams: null });
}

function named(
  performances: readonly Performance[],
  attempts: ReadonlyMap<string, Pick<Performance, 'id' | 'implementGrams'>>,
): Performance[] {
  return performances.map((performance) => {
    const { id, implementGrams } = attempts.get(performance.id)!;
    return { ...performance, id, implementGrams };
  });
}
