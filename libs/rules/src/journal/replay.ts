import { needsRuling, type Activity } from './activity.js';
import type { AnyEntry } from './any-entry.js';
import type { RulingDecision } from './entry.js';
import type { Fate, Question, JournalItem } from './journal-item.js';
import type { HoldCode } from './verdict.js';

/** When and how an entry takes effect. */
export interface Moment {
  /** Its own position in the journal, from 1. */
  readonly sequence: number;
  /** The position from which it counts: its own, or that of the ruling that let it. */
  readonly entered: number;
  readonly byRuling: boolean;
  /** Whether it was held, for something missing, when it came in. */
  readonly waited: boolean;
}

/** What reads a journal in the order in which entries take effect. */
export interface JournalReader<E extends AnyEntry> {
  readonly takeIn: (entry: E, moment: Moment) => void;
  /** A decision about a trial that was taken in: on a protest, or to set it aside. */
  readonly rule: (trial: string, decision: RulingDecision) => void;
}

/**
 * Reads a journal in order. An entry that was held takes effect where the referee ruled that it counts, not where it
 * came in, so that the last decision about a trial is the one in force. What is ruled about a held trial that was let
 * in and then asked about again answers that question.
 */
export function replay<E extends AnyEntry>(
  journal: readonly JournalItem<E>[],
  activity: Activity,
  reader: JournalReader<E>,
): void {
  const positionOf = positionsIn(journal);
  journal.forEach(({ entry, hold }, at) => {
    if (!activity.inEffect[at]) return;
    if (entry.kind !== 'ruling') {
      reader.takeIn(entry, { sequence: at + 1, entered: at + 1, byRuling: false, waited: hold !== null });
      return;
    }
    const targetAt = positionOf(entry.entry);
    if (targetAt === undefined || activity.reversed.has(entry.entry)) return;
    const target = journal[targetAt]!;
    const letIn = (): void => {
      const moment = { sequence: targetAt + 1, entered: at + 1, byRuling: true, waited: false };
      reader.takeIn(target.entry, moment);
    };
    const admittedAt = activity.admissions.get(entry.entry);
    if (admittedAt === at) letIn();
    const ruling = activity.rulings.get(entry.entry);
    if (ruling?.at !== at) return;
    if (!needsRuling(target) || admittedAt !== undefined) reader.rule(entry.entry, ruling.decision);
    else if (ruling.decision === 'count') letIn();
  });
}

/** What may make a trial that counts a question. */
export interface TrialInQuestion {
  readonly fate: Fate;
  readonly underProtest: boolean;
  /** The position in the journal, from 1, from which its implement is in question; `null`: it is not. */
  readonly implementQueriedAt: number | null;
}

/** Where an entry stands. Most journals have no ruling, so nothing is looked up before the first question. */
function positionsIn(journal: readonly JournalItem<AnyEntry>[]): (id: string) => number | undefined {
  let byId: Map<string, number> | null = null;
  return (id) => {
    byId ??= new Map(journal.map((item, at) => [item.entry.id, at]));
    return byId.get(id);
  };
}

/** What waits for a referee, in the order of the journal: held entries not ruled on, and open protests. */
export function questionsOf(
  journal: readonly JournalItem<AnyEntry>[],
  activity: Activity,
  trials: ReadonlyMap<string, TrialInQuestion>,
  outside: ReadonlyMap<string, HoldCode>,
): Question[] {
  const questions: Question[] = [];
  for (const item of journal) {
    const entry = item.entry.id;
    if (activity.reversed.has(entry)) continue;
    const trial = trials.get(entry);
    if (needsRuling(item) && !activity.rulings.has(entry)) {
      questions.push({ entry, about: 'held', hold: item.hold });
    } else if (trial?.fate === 'counts') {
      const hold = outside.get(entry) ?? null;
      if (hold) {
        questions.push({ entry, about: 'held', hold });
        continue;
      }
      if (trial.underProtest) questions.push({ entry, about: 'protest', hold });
      if (isOpen(trial.implementQueriedAt, activity.rulings.get(entry)))
        questions.push({ entry, about: 'implement', hold });
    }
  }
  return questions;
}

/** A ruling answers what came into question before it. */
function isOpen(queriedAt: number | null, ruling: { readonly at: number } | undefined): boolean {
  return queriedAt !== null && !(ruling && ruling.at >= queriedAt);
}
