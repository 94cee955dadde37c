import { needsRuling, type Activity } from './activity.js';
import type { CorrectionEntry, Entry, EntryHead, Judgement, OrderEntry } from './entry.js';
import type { JournalItem } from './state.js';

/** A trial while the journal is read: where it belongs and what it is so far. */
export interface AttemptDraft {
  readonly id: string;
  readonly sequence: number;
  competitor: string;
  round: number;
  judgement: Judgement;
  fate: 'counts' | 'struck' | 'displaced' | 'dismissed';
  /** Position in the journal from which it counts: its own, or that of the ruling that let it. */
  readonly entered: number;
}

/** Everything the journal says that is not yet arranged in rounds. */
export interface Gathered {
  readonly drafts: Map<string, AttemptDraft>;
  readonly notStarted: Set<string>;
  /** By competitor: the position of the disqualification in force. */
  readonly disqualifiedAt: Map<string, number>;
  readonly admissions: { competitor: string; after: number | null; by: 'R' | 'J' | 'D' }[];
  readonly orderChanges: Map<number, OrderEntry>;
  signedOff: boolean;
}

/**
 * Reads a journal in order. An entry that was held takes effect where the referee ruled that it counts, not where it
 * came in, so that the last decision about a trial is the one in force.
 */
export function gather(journal: readonly JournalItem[], activity: Activity): Gathered {
  const gathered: Gathered = {
    drafts: new Map(),
    notStarted: new Set(),
    disqualifiedAt: new Map(),
    admissions: [],
    orderChanges: new Map(),
    signedOff: false,
  };
  const byId = new Map<string, number>();
  journal.forEach((item, at) => byId.set(item.entry.id, at));
  journal.forEach((item, at) => {
    if (!activity.inEffect[at]) return;
    const { entry } = item;
    if (entry.kind === 'ruling') rule(gathered, journal, byId, entry.entry, at, activity);
    else takeIn(gathered, entry, at + 1, at + 1, false);
  });
  return gathered;
}

function rule(
  gathered: Gathered,
  journal: readonly JournalItem[],
  byId: ReadonlyMap<string, number>,
  target: string,
  at: number,
  activity: Activity,
): void {
  const ruling = activity.rulings.get(target);
  const targetAt = byId.get(target);
  if (ruling?.at !== at || targetAt === undefined || activity.reversed.has(target)) return;
  const item = journal[targetAt]!;
  const trial = gathered.drafts.get(target);
  if (needsRuling(item)) {
    if (ruling.decision === 'count') takeIn(gathered, item.entry, targetAt + 1, at + 1, true);
  } else if (trial && trial.judgement.protested !== null) {
    trial.judgement = ruleProtest(trial.judgement, trial.judgement.protested, ruling.decision);
  } else if (trial && ruling.decision === 'dismiss') {
    trial.fate = 'dismissed';
  }
}

/** A protested failure becomes valid with the mark that was held, or stays a failure and is no longer open. */
function ruleProtest(judgement: Judgement, mark: number, decision: 'count' | 'dismiss'): Judgement {
  return decision === 'count'
    ? { ...judgement, outcome: 'valid', mark, foul: null, protested: null }
    : { ...judgement, protested: null };
}

function takeIn(
  gathered: Gathered,
  entry: Entry,
  sequence: number,
  entered: number,
  byRuling: boolean,
): void {
  switch (entry.kind) {
    case 'attempt':
      addAttempt(gathered, entry, sequence, entered, byRuling);
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
    case 'start':
      if (entry.status === 'DNS') gathered.notStarted.add(entry.competitor);
      else gathered.notStarted.delete(entry.competitor);
      return;
    case 'disqualification':
      gathered.disqualifiedAt.set(entry.competitor, sequence);
      return;
    case 'reinstatement':
      gathered.disqualifiedAt.delete(entry.competitor);
      return;
    case 'admission':
      gathered.admissions.push({ competitor: entry.competitor, after: entry.after, by: entry.admittedBy });
      return;
    case 'order':
      gathered.orderChanges.set(entry.round, entry);
      return;
    case 'sign-off':
    case 'reopening':
      gathered.signedOff = entry.kind === 'sign-off';
      return;
    case 'ruling':
    case 'reversal':
      return;
  }
}

function addAttempt(
  gathered: Gathered,
  entry: Extract<Entry, { kind: 'attempt' }>,
  sequence: number,
  entered: number,
  byRuling: boolean,
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
  return { outcome, mark, wind, foul, protested, implementGrams };
}

/** A correction says what the trial was; wind and implement that it leaves out stay as they were known. */
function corrected(before: Judgement, correction: CorrectionEntry): Judgement {
  const after = judgementOf(correction);
  return {
    ...after,
    wind: after.wind ?? (after.outcome === 'valid' || after.outcome === 'foul' ? before.wind : null),
    implementGrams: after.implementGrams ?? before.implementGrams,
  };
}
