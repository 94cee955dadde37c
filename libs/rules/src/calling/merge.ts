/** Sorts before another by the first number in which they differ. */
export type Rank = readonly number[];

/**
 * One list out of several: at each step the head with the least rank goes next, of level ones that of the earlier
 * list. The order within each list stays, whatever the ranks behind its head are.
 */
export function merge<Item>(lists: readonly (readonly Item[])[], rankOf: (item: Item) => Rank): Item[] {
  const heads = lists.map((list) => ({ list, at: 0, rank: rankAt(list, 0, rankOf) }));
  const merged: Item[] = [];
  for (;;) {
    let first: (typeof heads)[number] | undefined;
    for (const head of heads) {
      if (head.rank && (!first?.rank || compareRanks(head.rank, first.rank) < 0)) first = head;
    }
    if (!first) return merged;
    merged.push(first.list[first.at]!);
    first.at += 1;
    first.rank = rankAt(first.list, first.at, rankOf);
  }
}

function rankAt<Item>(list: readonly Item[], at: number, rankOf: (item: Item) => Rank): Rank | null {
  return at < list.length ? rankOf(list[at]!) : null;
}

export function compareRanks(a: Rank, b: Rank): number {
  const at = a.findIndex((value, index) => value !== b[index]);
  return at === -1 ? 0 : a[at]! - b[at]!;
}
