import { activityOf, needsRuling, type Activity } from './activity.js';
import { gather, type AttemptDraft, type Gathered } from './attempts.js';
import { place, withProtests, type Placing } from './placing.js';
import type { CompetitionSetup } from './setup.js';
import type { AttemptState, CompetitionState, CompetitorState, JournalItem, Question } from './state.js';

/** The state that a journal describes. Shape: see {@link CompetitionState}. */
export function project(setup: CompetitionSetup, journal: readonly JournalItem[]): CompetitionState {
  const activity = activityOf(journal);
  const gathered = gather(journal, activity);
  const placing = place(setup, gathered);
  return {
    setup,
    journal,
    attempts: attemptStates(gathered, placing),
    competitors: competitorStates(setup, gathered, placing),
    questions: questionsOf(journal, activity, gathered, placing),
    card: placing.card,
    cardIfProtestsSucceed: withProtests(placing.card, placing.series),
    orderChanges: gathered.orderChanges,
    signedOff: gathered.signedOff,
    activity,
    clash: placing.clash,
  };
}

function attemptStates(gathered: Gathered, placing: Placing): Map<string, AttemptState> {
  const states = new Map<string, AttemptState>();
  for (const draft of gathered.drafts.values()) {
    const { id, sequence, competitor, round, judgement } = draft;
    const standing = draft.fate === 'counts' ? (placing.outside.get(id) ?? 'counts') : draft.fate;
    states.set(id, { id, sequence, competitor, round, judgement, standing });
  }
  return states;
}

function competitorStates(setup: CompetitionSetup, gathered: Gathered, placing: Placing): CompetitorState[] {
  return setup.competitors.map(({ key, bib }, index) => ({
    key,
    bib,
    status: gathered.notStarted.has(key) ? 'DNS' : gathered.disqualifiedAt.has(key) ? 'DQ' : null,
    series: placing.series[index]!.map((draft) => draft?.id ?? null),
  }));
}

/** What waits for a referee, in the order of the journal: held entries not ruled on, and open protests. */
function questionsOf(
  journal: readonly JournalItem[],
  activity: Activity,
  gathered: Gathered,
  placing: Placing,
): Question[] {
  const questions: Question[] = [];
  for (const item of journal) {
    const { id } = item.entry;
    if (activity.reversed.has(id)) continue;
    const draft = gathered.drafts.get(id);
    if (needsRuling(item) && !activity.rulings.has(id)) {
      questions.push({ entry: id, about: 'held', hold: item.hold });
    } else if (draft?.fate === 'counts') {
      questions.push(...questionsOfTrial(draft, placing));
    }
  }
  return questions;
}

function questionsOfTrial(draft: AttemptDraft, placing: Placing): Question[] {
  const outside = placing.outside.get(draft.id);
  if (outside) return [{ entry: draft.id, about: 'held', hold: outside }];
  return draft.judgement.protested === null ? [] : [{ entry: draft.id, about: 'protest', hold: null }];
}
