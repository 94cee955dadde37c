/** Somebody who wears one bib at a meet, in however many competitions. */
export interface Wearer {
  /** Of the athlete; of who is only a name, of the line of the start list. */
  readonly key: string;
  readonly familyName: string;
  readonly givenName: string;
  readonly club: string | null;
  /** Where the first of the own competitions stands in the meet, from 0. */
  readonly firstCompetition: number;
  /** Those worn now, of each competition one; several differ. */
  readonly bibs: readonly string[];
  /** A draw, a trial or a combined event goes by the bib already, so that it stays. */
  readonly isFixed: boolean;
}

export interface BibTerms {
  readonly order: 'club' | 'name' | 'competition';
  /** The first number. */
  readonly from: number;
  /** Each club, or competition, begins at `from` and whole steps of so many; `null`: without gaps. */
  readonly blockStep: number | null;
  /** Whoever wears one bib that nobody else wears keeps it. */
  readonly isKeeping: boolean;
}

export interface AssignedBib {
  readonly wearer: Wearer;
  readonly bib: string;
}

/**
 * One bib for each, which nobody else at the meet wears; in the order of the terms. Numbers that are kept, and those
 * in `taken`, are left out.
 */
export function assignBibs(
  wearers: readonly Wearer[],
  terms: BibTerms,
  taken: Iterable<string> = [],
): AssignedBib[] {
  const sorted = wearers.toSorted(comparerOf(terms.order));
  const kept = keptBibs(sorted, terms.isKeeping);
  const fixed = sorted.filter(({ isFixed }) => isFixed).flatMap(({ bibs }) => bibs);
  const used = new Set([...taken, ...fixed, ...kept.values()]);
  let next = terms.from;
  let block: unknown = null;
  return sorted.map((wearer): AssignedBib => {
    const own = blockOf(wearer, terms.order);
    if (own !== block && block !== null) next = startOfBlock(next, terms);
    block = own;
    const keeps = kept.get(wearer.key);
    if (keeps !== undefined) return { wearer, bib: keeps };
    while (used.has(String(next))) next += 1;
    const bib = String(next);
    used.add(bib);
    next += 1;
    return { wearer, bib };
  });
}

/** Who is fixed keeps the bib whatever happens; of others who share one the first keeps it. */
function keptBibs(sorted: readonly Wearer[], isKeeping: boolean): ReadonlyMap<string, string> {
  const kept = new Map<string, string>();
  const used = new Set<string>();
  for (const wearer of [...sorted.filter(({ isFixed }) => isFixed), ...sorted]) {
    const [bib, ...others] = new Set(wearer.bibs);
    const mayKeep = wearer.isFixed || (isKeeping && others.length === 0);
    if (bib === undefined || !mayKeep || kept.has(wearer.key)) continue;
    if (used.has(bib) && !wearer.isFixed) continue;
    kept.set(wearer.key, bib);
    used.add(bib);
  }
  return kept;
}

function startOfBlock(next: number, { from, blockStep }: BibTerms): number {
  return blockStep === null ? next : from + Math.ceil((next - from) / blockStep) * blockStep;
}

function blockOf({ club, firstCompetition }: Wearer, order: BibTerms['order']): unknown {
  if (order === 'name') return '';
  return order === 'club' ? (club ?? '') : firstCompetition;
}

const COLLATOR = new Intl.Collator('en', { sensitivity: 'base', numeric: true });

function comparerOf(order: BibTerms['order']): (a: Wearer, b: Wearer) => number {
  return (a, b) =>
    (order === 'competition' ? a.firstCompetition - b.firstCompetition : 0) ||
    (order === 'club' ? COLLATOR.compare(a.club ?? '\uffff', b.club ?? '\uffff') : 0) ||
    COLLATOR.compare(a.familyName, b.familyName) ||
    COLLATOR.compare(a.givenName, b.givenName) ||
    (a.key < b.key ? -1 : 1);
}
