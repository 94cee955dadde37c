import type { Activity } from '../journal/activity.js';
import { decide, noDecisions, type Decisions } from '../journal/decisions.js';
import type { NamedImplement } from '../implements/standing.js';
import type { EntryHead, RulingDecision } from '../journal/entry.js';
import type { Fate, JournalItem } from '../journal/journal-item.js';
import { replay, type Moment } from '../journal/replay.js';
import type { CorrectionEntry, Entry, Judgement, OrderEntry } from './entry.js';

/** A trial while the journal is read: where it belongs and what it is so far. */
export interface AttemptDraft {
  readonly id: string;
  readonly sequence: number;
  competitor: string;
  round: number;
  judgement: Judgement;
  fate: Fate;
  /** Position in the journal from which it counts: its own, or that of the ruling that let it. */
  readonly entered: number;
}

/** Everything the journal says that is not yet arranged in rounds. */
export interface Gathered {
  readonly drafts: Map<string, AttemptDraft>;
  /** By trial: the implement that came into question, and the position in the journal from which it is. */
  readonly queries: Map<string, { readonly implementId: string; readonly entered: number }>;
  readonly decisions: Decisions;
  readonly orderChanges: Map<number, OrderEntry>;
}

export function gather(journal: readonly JournalItem[], activity: Activity): Gathered {
  const gathered: Gathered = {
    drafts: new Map(),
    queries: new Map(),
    decisions: noDecisions(),
    orderChanges: new Map(),
  };
  replay(journal, activity, {
    takeIn: (entry, moment) => takeIn(gathered, entry, moment),
    rule: (trial, decision) => change(gathered, trial, (draft) => rule(gathered, draft, decision)),
  });
  return gathered;
}

function rule({ queries }: Gathered, draft: AttemptDraft, decision: RulingDecision): void {
  const { protested, implementId } = draft.judgement;
  if (
    decision === 'dismiss' &&
    implementId !== undefined &&
    queries.get(draft.id)?.implementId === implementId
  )
    draft.judgement = failedByImplement(draft.judgement);
  else if (protested !== null) draft.judgement = ruleProtest(draft.judgement, protested, decision);
  else if (decision === 'dismiss') draft.fate = 'dismissed';
}

/** It was taken, and was a failure: nobody is called for it again. */
function failedByImplement(judgement: Judgement): Judgement {
  return { ...judgement, outcome: 'foul', mark: null, foul: 'IMPLEMENT', protested: null };
}

/** A protested failure becomes valid with the mark that was held, or stays a failure and is no longer open. */
function ruleProtest(judgement: Judgement, mark: number, decision: RulingDecision): Judgement {
  return decision === 'count'
    ? { ...judgement, outcome: 'valid', mark, foul: null, protested: null }
    : { ...judgement, protested: null };
}

function takeIn(gathered: Gathered, entry: Entry, moment: Moment): void {
  switch (entry.kind) {
    case 'attempt':
      // A pass is told of whoever is away; a trial shows that the competitor is back.
      if (entry.outcome !== 'pass') gathered.decisions.away.delete(entry.competitor);
      addAttempt(gathered, entry, moment);
      return;
    case 'wind':
      change(gathered, entry.attempt, (draft) => {
        draft.judgement = { ...draft.judgement, wind: entry.wind };
      });
      return;
    case 'correction':
      change(gathered, entry.attempt, (draft) => {
        draft.judgement = corrected(draft.judgement, entry);
      });
      return;
    case 'move':
      for (const move of entry.moves) {
        change(gathered, move.attempt, (draft) => {
          draft.competitor = move.competitor;
          draft.round = move.round;
        });
      }
      return;
    case 'replacement':
      change(gathered, entry.attempt, (draft) => {
        draft.fate = 'struck';
      });
      return;
    case 'implement-query':
      for (const attempt of entry.attempts) {
        gathered.queries.set(attempt, { implementId: entry.implementId, entered: moment.entered });
      }
      return;
    case 'order':
      gathered.orderChanges.set(entry.round, entry);
      return;
    default:
      decide(gathered.decisions, entry, moment.sequence);
  }
}

function addAttempt(
  gathered: Gathered,
  entry: Extract<Entry, { kind: 'attempt' }>,
  { sequence, entered, byRuling }: Moment,
): void {
  if (byRuling) {
    for (const other of gathered.drafts.values()) {
      const sameTrial = other.competitor === entry.competitor && other.round === entry.round;
      if (sameTrial && other.fate === 'counts') other.fate = 'displaced';
    }
  }
  gathered.drafts.set(entry.id, {
    id: entry.id,
    sequence,
    competitor: entry.competitor,
    round: entry.round,
    judgement: judgementOf(entry),
    fate: 'counts',
    entered,
  });
}

function change(gathered: Gathered, attempt: string, edit: (draft: AttemptDraft) => void): void {
  const draft = gathered.drafts.get(attempt);
  if (draft) edit(draft);
}

/** The judgement part of an entry, without what names and places it. */
export function judgementOf(entry: Judgement & Partial<EntryHead>): Judgement {
  const { outcome, mark, wind, foul, protested, implementGrams } = entry;
  return { outcome, mark, wind, foul, protested, implementGrams, ...namedImplement(entry) };
}

/** The implement that an entry names, without keys where it names none. */
export function namedImplement({ implementId, implementStanding }: NamedImplement): NamedImplement {
  return implementId === undefined || implementStanding === undefined
    ? {}
    : { implementId, implementStanding };
}

/**
 * A correction says what the trial was; wind and implement that it leaves out stay as they were known. Another mass
 * by itself is another implement, which nobody named.
 */
function corrected(before: Judgement, correction: CorrectionEntry): Judgement {
  const after = judgementOf(correction);
  const judged = {
    ...after,
    wind: after.wind ?? (after.outcome === 'valid' || after.outcome === 'foul' ? before.wind : null),
  };
  if (after.implementId !== undefined) return judged;
  const isSame = after.implementGrams === null || after.implementGrams === before.implementGrams;
  return isSame ? { ...judged, implementGrams: before.implementGrams, ...namedImplement(before) } : judged;
}
