import { neededForAll, verticalNeededForAll, type Needed } from '#rules';
import type { LoadedDistance, LoadedVertical } from '../platform/competition/loaded.js';
import type { NeededNow, NeededPass } from './needed.types.js';
import { idsByBib } from './view.js';

/** Which mark each competitor of a throw or a horizontal jump needs now, in the order of competition. */
export function neededInDistance(loaded: LoadedDistance): NeededNow[] {
  const idOf = idsByBib(loaded);
  return neededForAll(loaded.state.card).map((needed) => ({
    competitor: idOf(needed.bib),
    bib: needed.bib,
    place: needed.place,
    round: needed.next.round,
    barrier: needed.next.barrier,
    places: needed.places.map(({ place, mark, shared, rival }) => ({
      place,
      mark,
      trial: null,
      isShared: shared,
      rival: rival && idOf(rival.bib),
      rivalBest: rival?.best ?? null,
      equalMark: rival?.equalMark ?? null,
    })),
    cut: needed.cut && passView(needed.cut, needed.cut.after, idOf),
    standard: needed.standard,
    fill: needed.fill && passView(needed.fill, null, idOf),
    vertical: null,
  }));
}

/** Which height each competitor of a high jump or pole vault needs now, and at which trial at the latest. */
export function neededInVertical(loaded: LoadedVertical): NeededNow[] {
  const idOf = idsByBib(loaded);
  return verticalNeededForAll(loaded.state.card).map((needed) => ({
    competitor: idOf(needed.bib),
    bib: needed.bib,
    place: needed.place,
    round: needed.next?.trial ?? null,
    barrier: needed.barrier,
    places: needed.places.map(({ place, height, trial, shared, rival }) => ({
      place,
      mark: height,
      trial,
      isShared: shared,
      rival: rival && idOf(rival),
      rivalBest: null,
      equalMark: null,
    })),
    cut: null,
    standard: needed.standard?.height ?? null,
    fill: null,
    vertical: { next: needed.next, standard: needed.standard, fill: needed.fill },
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
