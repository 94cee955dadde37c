/** A competition of a group as far as its order goes. */
export interface OrderedCompetition {
  readonly key: string;
  /** Its competitors in its own order of competition. */
  readonly competitors: readonly string[];
}

export interface OrderedCompetitor {
  readonly competition: string;
  readonly competitor: string;
}

/**
 * Everybody of a group in one order. The order that was set says which competition has its turn when; within a
 * competition its own order of competition holds, also when it was changed since. Who is not named comes last,
 * competition by competition; who is named and is on no start list any more is passed over.
 */
export function commonOrder(
  competitions: readonly OrderedCompetition[],
  startOrder: readonly string[] | null,
): OrderedCompetitor[] {
  const ownerOf = new Map(
    competitions.flatMap(({ key, competitors }) =>
      competitors.map((competitor) => [competitor, key] as const),
    ),
  );
  const named = new Set((startOrder ?? []).filter((competitor) => ownerOf.has(competitor)));
  const everybody = competitions.flatMap(({ competitors }) => competitors);
  const places = [...named, ...everybody.filter((competitor) => !named.has(competitor))];
  const waiting = new Map(competitions.map(({ key, competitors }) => [key, competitors[Symbol.iterator]()]));
  return places.map((place) => {
    const competition = ownerOf.get(place)!;
    return { competition, competitor: waiting.get(competition)!.next().value! };
  });
}

/**
 * The turns that the competitors of one competition have in a common order when `moved` were called to the front of
 * theirs: they take the competition's first turns, the others the ones after. Turns of other competitions stay.
 */
export function turnsOf(
  order: readonly OrderedCompetitor[],
  competition: string,
  moved: readonly string[] = [],
): ReadonlyMap<string, number> {
  const turns = order.flatMap((one, turn) => (one.competition === competition ? [turn] : []));
  const own = turns.map((turn) => order[turn]!.competitor);
  const ahead = [...new Set(moved)].filter((competitor) => own.includes(competitor));
  const sequence = [...ahead, ...own.filter((competitor) => !ahead.includes(competitor))];
  return new Map(sequence.map((competitor, at) => [competitor, turns[at]!]));
}
