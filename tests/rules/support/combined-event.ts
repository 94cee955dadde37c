import {
  COMBINED_TABLES,
  applyCombined,
  restoreCombined,
  standingRows,
  type CombinedBody,
  type CombinedEntry,
  type CombinedPerformance,
  type CombinedEventState,
  type CombinedItem,
  type CombinedSetup,
} from '#rules';

export const WIND_RULE = { meanTenths: 20, eachTenths: null };

export function setupOf(changes: Partial<CombinedSetup> = {}): CombinedSetup {
  return {
    ...{ rules: 'WA', edition: '2024-01', table: COMBINED_TABLES.heptathlon, ties: 'stay' },
    entrants: ['1', '2', '3'].map((bib) => ({ key: `e${bib}`, bib, guest: false })),
    linked: new Map(),
    ...changes,
  };
}

export const time = (hundredths: number, wind: number | 'NWI' | null = null): CombinedPerformance => ({
  ...{ outcome: 'valid', hundredths, timing: 'electronic', wind },
});
export const mark = (hundredths: number, wind: number | null = null): CombinedPerformance => ({
  ...{ outcome: 'valid', hundredths, timing: null, wind },
});
export const none = (outcome: CombinedPerformance['outcome']): CombinedPerformance => ({
  ...{ outcome, hundredths: null, timing: null, wind: null },
});

/** A combined event that remembers its state and numbers its entries. */
export class CombinedEvent {
  state: CombinedEventState;
  private next = 1;

  constructor(
    setup: Partial<CombinedSetup> = {},
    readonly journal: readonly CombinedItem[] = [],
  ) {
    this.state = restoreCombined(setupOf(setup), journal);
  }

  enter(body: CombinedBody, by: Partial<CombinedEntry> = {}): ReturnType<typeof applyCombined>['verdict'] {
    const entry = { id: `n${this.next}`, by: 'referee', actor: 'R', ...body, ...by } as CombinedEntry;
    const { state, verdict } = applyCombined(this.state, entry);
    if (verdict.standing !== 'refused') this.next += 1;
    this.state = state;
    return verdict;
  }

  run(bib: string, event: '100mh' | '200m' | '800m', performance: CombinedPerformance, by = {}) {
    return this.enter({ kind: 'result', entrant: `e${bib}`, event, ...performance }, by);
  }

  field(
    bib: string,
    event: 'high-jump' | 'shot' | 'long-jump' | 'javelin',
    performance: CombinedPerformance,
  ) {
    return this.enter({ kind: 'result', entrant: `e${bib}`, event, ...performance });
  }

  rows() {
    return standingRows(this.state, WIND_RULE);
  }
}

export const accepted = { standing: 'accepted', notices: [] };
export const held = (code: string): object => ({ standing: 'held', hold: expect.objectContaining({ code }) });
export const refused = (code: string, field: string | null = null): object => ({
  standing: 'refused',
  refusal: expect.objectContaining({ code, field }),
});
