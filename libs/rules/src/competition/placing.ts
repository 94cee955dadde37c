import { cutsOf } from '../progression/cuts.js';
import type { Card, CardCompetitor } from '../card.js';
import { admittedOf, statusOf } from '../journal/decisions.js';
import type { HoldCode } from '../journal/verdict.js';
import type { Trial } from '../trial.js';
import type { AttemptDraft, Gathered } from './attempts.js';
import type { CompetitionSetup } from './setup.js';

/** The trials of a competition arranged by competitor and round, and those that fit nowhere (yet). */
export interface Placing {
  /** By competitor (start list order), by round (index 0 = round 1). */
  readonly series: readonly (readonly (AttemptDraft | null)[])[];
  readonly outside: ReadonlyMap<string, HoldCode>;
  readonly card: Card;
  /** Two trials that both count in one round of one competitor: entries that lead to this are not taken. */
  readonly clash: boolean;
}

interface Rounds {
  readonly slots: (AttemptDraft | null)[][];
  clash: boolean;
}

/**
 * Puts each trial in its round. What cannot be there is left outside with the reason; nothing depends on the order
 * in which trials came in, but for a disqualification, which only stops what comes after it.
 */
export function place(setup: CompetitionSetup, gathered: Gathered): Placing {
  const rounds = arrange(setup, gathered);
  const outside = new Map<string, HoldCode>();
  setup.competitors.forEach((competitor, index) => {
    holdBySeries(setup, gathered, competitor.key, rounds.slots[index]!, outside);
  });
  let card = cardOf(setup, gathered, rounds.slots);
  // A trial left outside can change who is counted in a cut only by ending a disqualified competitor's series, so
  // this settles after at most one more look for each cut.
  while (holdByCuts(setup, card, rounds.slots, outside)) card = cardOf(setup, gathered, rounds.slots);
  return { series: rounds.slots, outside, card, clash: rounds.clash };
}

function arrange(setup: CompetitionSetup, gathered: Gathered): Rounds {
  const index = new Map(setup.competitors.map((competitor, at) => [competitor.key, at]));
  const slots = setup.competitors.map(() => new Array<AttemptDraft | null>(setup.plan.rounds).fill(null));
  let clash = false;
  for (const draft of gathered.drafts.values()) {
    if (draft.fate !== 'counts') continue;
    const row = slots[index.get(draft.competitor) ?? -1];
    if (!row) continue;
    if (row[draft.round - 1]) clash = true;
    row[draft.round - 1] = draft;
  }
  return { slots, clash };
}

/** What a competitor's own record forbids: trials of one who did not start, after retiring, after a gap, … */
function holdBySeries(
  setup: CompetitionSetup,
  gathered: Gathered,
  key: string,
  row: (AttemptDraft | null)[],
  outside: Map<string, HoldCode>,
): void {
  const stoppedAt = gathered.decisions.disqualifiedAt.get(key) ?? Infinity;
  let hold: HoldCode | null = gathered.decisions.notStarted.has(key) ? 'NOT_STARTED' : null;
  for (let at = 0; at < row.length; at++) {
    const draft = row[at];
    const reason: HoldCode | null = draft && draft.entered > stoppedAt ? 'DISQUALIFIED' : hold;
    if (draft && reason) {
      outside.set(draft.id, reason);
      row[at] = null;
    }
    hold ??= holdAfter(setup, row[at] ?? null);
  }
}

function holdAfter(setup: CompetitionSetup, draft: AttemptDraft | null): HoldCode | null {
  if (!draft) return 'EARLIER_ROUND_OPEN';
  if (draft.judgement.outcome === 'retired') return 'AFTER_RETIRING';
  const standard = setup.qualifying?.standard;
  const reached = standard !== undefined && (draft.judgement.mark ?? 0) >= standard;
  return reached ? 'AFTER_STANDARD' : null;
}

/** Leaves outside the trials after a cut of those who are not through; says whether there were any. */
function holdByCuts(
  setup: CompetitionSetup,
  card: Card,
  slots: (AttemptDraft | null)[][],
  outside: Map<string, HoldCode>,
): boolean {
  if (!slots.some((row) => row.some((draft, at) => draft && at >= (setup.plan.cuts[0]?.after ?? Infinity)))) {
    return false;
  }
  let held = false;
  for (const cut of cutsOf(card)) {
    const through = new Set(cut.through);
    setup.competitors.forEach((competitor, index) => {
      if (through.has(competitor.bib)) return;
      for (let at = cut.after; at < setup.plan.rounds; at++) {
        const draft = slots[index]![at];
        if (!draft) continue;
        outside.set(draft.id, 'NOT_THROUGH');
        slots[index]![at] = null;
        held = true;
      }
    });
  }
  return held;
}

function cardOf(
  setup: CompetitionSetup,
  gathered: Gathered,
  slots: readonly (AttemptDraft | null)[][],
): Card {
  const { rules, edition, event, indoor, stage, qualifying, plan, unit } = setup;
  return {
    rules,
    edition,
    event,
    indoor,
    stage,
    qualifying,
    plan,
    unit,
    admitted: admittedOf(gathered.decisions, setup.competitors),
    competitors: setup.competitors.map((competitor, index): CardCompetitor => {
      const { key, bib, name, club, flight, guest } = competitor;
      const status = statusOf(gathered.decisions, key);
      return { bib, name, club, flight, guest, status, series: seriesOf(slots[index]!) };
    }),
  };
}

function seriesOf(row: readonly (AttemptDraft | null)[]): (Trial | null)[] {
  let end = row.length;
  while (end > 0 && !row[end - 1]) end--;
  return row.slice(0, end).map((draft) => draft && trialOf(draft));
}

function trialOf(draft: AttemptDraft): Trial {
  const { outcome, mark, wind } = draft.judgement;
  return { outcome, mark, wind: wind === 'pending' ? null : wind };
}

/** The same card with every trial that is held under protest counted as if the protest had succeeded. */
export function withProtests(card: Card, series: Placing['series']): Card | null {
  let any = false;
  const competitors = card.competitors.map((competitor, index) => ({
    ...competitor,
    series: competitor.series.map((trial, at): Trial | null => {
      const protested = series[index]![at]?.judgement.protested ?? null;
      if (!trial || protested === null) return trial;
      any = true;
      return { ...trial, outcome: 'valid', mark: protested };
    }),
  }));
  return any ? { ...card, competitors } : null;
}
