import { activityOf } from '../journal/activity.js';
import { safetyOf, statusOf } from '../journal/decisions.js';
import type { JournalItem } from '../journal/journal-item.js';
import { questionsOf } from '../journal/replay.js';
import { verticalStanding } from '../vertical/vertical-standing.js';
import type { VerticalEntry } from './entry.js';
import { barSetOf } from './heights.js';
import { gather, withProtestsUpheld, type Gathered } from './jumps.js';
import { hasClash, place, type Placing } from './placing.js';
import type { Row } from './rows.js';
import type { VerticalSetup } from './setup.js';
import type { JumpState, VerticalCompetitorState, VerticalState } from './state.js';

/** The state that a journal describes. Shape: see {@link VerticalState}. */
export function project(setup: VerticalSetup, journal: readonly JournalItem<VerticalEntry>[]): VerticalState {
  const activity = activityOf(journal);
  const gathered = gather(journal, activity);
  const placing = place(setup, gathered);
  const upheld = withProtestsUpheld(gathered);
  const ifUpheld = upheld && place(setup, upheld);
  return {
    setup,
    journal,
    attempts: jumpStates(gathered, placing),
    competitors: setup.competitors.map((_, index) =>
      competitorState(setup, gathered, placing, ifUpheld, index),
    ),
    questions: questionsOf(journal, activity, protestsOf(gathered), placing.outside),
    heights: placing.heights,
    bar: placing.bar,
    barSet: barSetOf(gathered),
    card: placing.card,
    cardIfProtestsSucceed: ifUpheld && ifUpheld.card,
    orderChanges: gathered.orderChanges,
    jumpOffDeclined: gathered.declinedAt !== null,
    signedOff: gathered.decisions.signedOff,
    safety: safetyOf(gathered.decisions),
    away: gathered.decisions.away,
    activity,
    clash: hasClash(gathered),
  };
}

function jumpStates(gathered: Gathered, placing: Placing): Map<string, JumpState> {
  const states = new Map<string, JumpState>();
  for (const draft of gathered.drafts.values()) {
    const { id, sequence, kind, competitor, height, trial, judgement, behindZeroCm } = draft;
    const standing = draft.fate === 'counts' ? (placing.outside.get(id) ?? 'counts') : draft.fate;
    states.set(id, { id, sequence, kind, competitor, height, trial, judgement, behindZeroCm, standing });
  }
  return states;
}

function competitorState(
  setup: VerticalSetup,
  gathered: Gathered,
  { heights, bar, rows, card }: Placing,
  ifUpheld: Placing | null,
  index: number,
): VerticalCompetitorState {
  const { key, bib } = setup.competitors[index]!;
  const row = rows[index]!;
  const { best, consecutiveFailures } = verticalStanding(card.competitors[index]!.series);
  return {
    key,
    bib,
    status: statusOf(gathered.decisions, key),
    condition: row.condition,
    series: row.trials.map((taken) => taken.map(({ id }) => id)),
    best: best === null ? null : heights[best]!,
    failuresInARow: consecutiveFailures,
    next: row.next,
    nextUnderProtest: row.condition === 'in' ? null : (ifUpheld?.rows[index]?.next ?? null),
    atBar: atBar(row, heights.indexOf(bar), bar),
    behindZeroCm: gathered.uprights.get(key) ?? null,
  };
}

function atBar(
  { condition, next, trials }: Row,
  index: number,
  bar: number,
): VerticalCompetitorState['atBar'] {
  if (condition !== 'in' && condition !== 'standard reached') return 'out';
  if (trials[index]?.at(-1)?.judgement.outcome === 'cleared') return 'cleared';
  if (condition === 'standard reached') return 'out';
  if (next?.height === bar) return 'to jump';
  return next && next.height < bar ? 'behind' : 'passing';
}

function protestsOf({ drafts }: Gathered): Parameters<typeof questionsOf>[2] {
  return new Map(
    [...drafts].map(([id, { fate, judgement }]) => [
      id,
      { fate, underProtest: judgement.protested, implementQueriedAt: null },
    ]),
  );
}
