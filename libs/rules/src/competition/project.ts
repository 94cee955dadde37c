import { activityOf } from '../journal/activity.js';
import { safetyOf, statusOf } from '../journal/decisions.js';
import type { JournalItem } from '../journal/journal-item.js';
import { questionsOf, type TrialInQuestion } from '../journal/replay.js';
import { gather, type Gathered } from './attempts.js';
import { mayCount } from './implement-in-question.js';
import { place, withProtests, type Placing } from './placing.js';
import type { CompetitionSetup } from './setup.js';
import type { AttemptState, CompetitionState, CompetitorState } from './state.js';

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
    questions: questionsOf(journal, activity, trialsInQuestion(gathered), placing.outside),
    card: placing.card,
    cardIfProtestsSucceed: withProtests(placing.card, placing.series),
    orderChanges: gathered.orderChanges,
    signedOff: gathered.decisions.signedOff,
    safety: safetyOf(gathered.decisions),
    away: gathered.decisions.away,
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
    status: statusOf(gathered.decisions, key),
    series: placing.series[index]!.map((draft) => draft?.id ?? null),
  }));
}

/** What may make a trial that counts a question: a protest, or its implement. */
function trialsInQuestion({ drafts, queries }: Gathered): Map<string, TrialInQuestion> {
  return new Map(
    [...drafts].map(([id, { fate, judgement }]) => {
      const query = queries.get(id);
      const isQueried =
        query !== undefined && query.implementId === judgement.implementId && mayCount(judgement);
      return [
        id,
        {
          fate,
          underProtest: judgement.protested !== null,
          implementQueriedAt: isQueried ? query.entered : null,
        },
      ];
    }),
  );
}
