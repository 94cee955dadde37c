import {
  ruleSet,
  openCompetition,
  apply,
  type CompetitionSetup,
  type CompetitionState,
  type Entry,
  type EntryBody,
  type Outcome,
  type Verdict,
} from '#rules';

/** A discus final under the newest WA edition: competitors `a`, `b`, … with bibs 1, 2, …, one cut after round 3. */
export function discus(count: number, changes: Partial<CompetitionSetup> = {}): CompetitionSetup {
  const rules = ruleSet('WA');
  return {
    rules: 'WA',
    edition: rules.edition,
    event: 'discus',
    indoor: false,
    stage: 'final',
    qualifying: null,
    plan: rules.plan.value,
    unit: 'cm',
    competitors: Array.from({ length: count }, (_, at) => ({
      key: String.fromCharCode(97 + at),
      bib: String(at + 1),
      name: null,
      club: null,
      flight: null,
      guest: false,
      implementGrams: null,
    })),
    ...changes,
  };
}

/** Makes entries and applies them one after the other, remembering the last verdict. */
export class Circle {
  state: CompetitionState;
  verdict: Verdict | undefined;
  private made = 0;

  constructor(
    setup: CompetitionSetup,
    readonly actor = 'ann',
  ) {
    this.state = openCompetition(setup);
  }

  /** Applies an entry and gives its id. */
  enter(body: EntryBody, head: Partial<Pick<Entry, 'id' | 'by' | 'actor'>> = {}): string {
    const id = head.id ?? `e${++this.made}`;
    const entry = { id, by: head.by ?? 'official', actor: head.actor ?? this.actor, ...body } as Entry;
    const applied = apply(this.state, entry);
    this.state = applied.state;
    this.verdict = applied.verdict;
    return id;
  }

  /** `58.10` valid, `X` a failure, `-` a pass, `r` retired, `O` valid and not measured. */
  trial(
    competitor: string,
    round: number,
    cell: string,
    extra: Partial<Extract<Entry, { kind: 'attempt' }>> = {},
  ): string {
    return this.enter(trial(competitor, round, cell, extra));
  }

  /** One round for everybody, cells by competitor in the order of the start list. */
  round(round: number, ...cells: string[]): void {
    cells.forEach((cell, at) => this.trial(this.state.setup.competitors[at]!.key, round, cell));
  }

  referee(body: EntryBody): string {
    return this.enter(body, { by: 'referee', actor: 'rolf' });
  }
}

const OUTCOMES: Readonly<Record<string, Outcome>> = { X: 'foul', '-': 'pass', r: 'retired', O: 'unmeasured' };

export function trial(
  competitor: string,
  round: number,
  cell: string,
  extra: Partial<Extract<Entry, { kind: 'attempt' }>> = {},
): Extract<EntryBody, { kind: 'attempt' }> {
  const outcome = OUTCOMES[cell] ?? 'valid';
  const mark = outcome === 'valid' ? Number(cell.replace('.', '')) : null;
  return {
    kind: 'attempt',
    competitor,
    round,
    outcome,
    mark,
    wind: null,
    foul: null,
    protested: null,
    implementGrams: null,
    ...extra,
  };
}

/** The same judgement as a correction of an earlier trial. */
export function correction(
  attempt: string,
  cell: string,
  reason = 'misread',
): Extract<EntryBody, { kind: 'correction' }> {
  const { outcome, mark, wind, foul, protested, implementGrams } = trial('', 1, cell);
  return { kind: 'correction', attempt, outcome, mark, wind, foul, protested, implementGrams, reason };
}

/** What counts for a competitor, by round: the mark, else the outcome, else `null`. */
export function seriesOf(state: CompetitionState, key: string): (number | string | null)[] {
  const row = state.competitors.find((competitor) => competitor.key === key)!;
  return row.series.map((id) => {
    if (id === null) return null;
    const { judgement } = state.attempts.get(id)!;
    return judgement.mark ?? judgement.outcome;
  });
}
