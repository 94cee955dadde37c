import { neededForAll, type Needed } from '#rules';
import type { LoadedCompetition } from '../platform/competition/loaded.js';
import { globalId } from '../platform/inputs/global-id.js';
import type { NeededNow, NeededPass } from './needed.types.js';

/** What each competitor needs now, in the order of competition. */
export function neededView({ state, roster }: LoadedCompetition): NeededNow[] {
  const ids = new Map(
    roster.map(({ competitor }) => [competitor.bib, globalId('Competitor', competitor.id)]),
  );
  const idOf = (bib: string): string => ids.get(bib)!;
  return neededForAll(state.card).map((needed) => ({
    competitor: idOf(needed.bib),
    bib: needed.bib,
    place: needed.place,
    round: needed.next.round,
    barrier: needed.next.barrier,
    places: needed.places.map(({ place, mark, shared, rival }) => ({
      place,
      mark,
      isShared: shared,
      rival: rival && idOf(rival.bib),
      rivalBest: rival?.best ?? null,
      equalMark: rival?.equalMark ?? null,
    })),
    cut: needed.cut && passView(needed.cut, needed.cut.after, idOf),
    standard: needed.standard,
    fill: needed.fill && passView(needed.fill, null, idOf),
  }));
}

function passView(
  pass: NonNullable<Needed['fill']>,
  afterRound: number | null,
  idOf: (bib: string) => string,
): NeededPass {
  const { isIn, mark, rival } = pass;
  return {
    afterRound,
    isIn,
    mark,
    rival: rival && idOf(rival.bib),
    rivalBest: rival?.best ?? null,
    isEqualEnough: rival?.equalIsEnough ?? null,
  };
}
