import type { Activity } from '../journal/activity.js';
import { decide, noDecisions, type Decisions } from '../journal/decisions.js';
import type { RulingDecision } from '../journal/entry.js';
import type { Fate, JournalItem } from '../journal/journal-item.js';
import { replay, type Moment } from '../journal/replay.js';
import type {
  JumpEntry,
  JumpJudgement,
  JumpMoveEntry,
  JumpOffEntry,
  JumpOrderEntry,
  VerticalEntry,
} from './entry.js';

/** A jump while the journal is read: where it belongs and what it is so far. */
export interface JumpDraft {
  readonly id: string;
  readonly sequence: number;
  readonly kind: 'jump' | 'jump-off';
  competitor: string;
  height: number;
  trial: number;
  judgement: JumpJudgement;
  fate: Fate;
  /** Position in the journal from which it counts: its own, or that of the ruling that let it. */
  readonly entered: number;
  /** Whether it did not fit when it came in: then it counts only once the bar has reached its height. */
  readonly waited: boolean;
  /** How the uprights stood for the vaulter; `null`: nothing was asked for. */
  readonly behindZeroCm: number | null;
}

export interface BarSetting {
  readonly height: number;
  readonly leavesOut: readonly number[];
}

/** Everything the journal says that is not yet arranged by heights. */
export interface Gathered {
  readonly drafts: Map<string, JumpDraft>;
  readonly decisions: Decisions;
  /** In the order in which the bar was set. */
  readonly barSettings: BarSetting[];
  /** By competitor: what was last asked for. */
  readonly uprights: Map<string, number>;
  /** By {@link turnKey}; the last one for a trial at a height holds. */
  readonly orderChanges: Map<string, JumpOrderEntry>;
  /** Position in the journal; `null`: the jump-off was not declined. */
  declinedAt: number | null;
}

export function gather(journal: readonly JournalItem<VerticalEntry>[], activity: Activity): Gathered {
  const gathered: Gathered = {
    drafts: new Map(),
    decisions: noDecisions(),
    barSettings: [],
    uprights: new Map(),
    orderChanges: new Map(),
    declinedAt: null,
  };
  replay(journal, activity, {
    takeIn: (entry, moment) => takeIn(gathered, entry, moment),
    rule: (trial, decision) => change(gathered, trial, (draft) => rule(draft, decision)),
  });
  return gathered;
}

/** Names a trial at a height. */
export function turnKey({ height, trial }: { readonly height: number; readonly trial: number }): string {
  return `${height}/${trial}`;
}

/** A protested failure becomes a clearance, or stays a failure and is no longer open. */
function rule(draft: JumpDraft, decision: RulingDecision): void {
  if (draft.judgement.protested) draft.judgement = ruledProtest(draft.judgement, decision);
  else if (decision === 'dismiss') draft.fate = 'dismissed';
}

function ruledProtest(judgement: JumpJudgement, decision: RulingDecision): JumpJudgement {
  return decision === 'count' ? upheld(judgement) : { ...judgement, protested: false };
}

function upheld(judgement: JumpJudgement): JumpJudgement {
  return { ...judgement, outcome: 'cleared', foul: null, incident: null, protested: false };
}

function takeIn(gathered: Gathered, entry: VerticalEntry, moment: Moment): void {
  switch (entry.kind) {
    case 'jump':
    case 'jump-off':
      if (entry.outcome !== 'passed') gathered.decisions.away.delete(entry.competitor);
      addJump(gathered, entry, moment);
      return;
    case 'jump-correction':
      change(gathered, entry.attempt, (draft) => {
        draft.judgement = judgementOf(entry);
      });
      return;
    case 'jump-move':
      entry.moves.forEach((move) => change(gathered, move.attempt, (draft) => moveTo(draft, move)));
      return;
    case 'replacement':
      change(gathered, entry.attempt, (draft) => {
        draft.fate = 'struck';
      });
      return;
    case 'bar':
      gathered.barSettings.push({ height: entry.height, leavesOut: entry.leavesOut });
      return;
    case 'uprights':
      gathered.uprights.set(entry.competitor, entry.behindZeroCm);
      return;
    case 'jump-order':
      gathered.orderChanges.set(turnKey(entry), entry);
      return;
    case 'jump-off-declined':
      gathered.declinedAt = moment.entered;
      return;
    default:
      decide(gathered.decisions, entry, moment.sequence);
  }
}

function addJump(
  gathered: Gathered,
  entry: VerticalEntry & (JumpEntry | JumpOffEntry),
  moment: Moment,
): void {
  const { id, kind, competitor, height, trial } = entry;
  if (moment.byRuling) {
    for (const other of gathered.drafts.values()) {
      if (turnOf(other) === turnOf(entry) && other.fate === 'counts') other.fate = 'displaced';
    }
  }
  gathered.drafts.set(id, {
    id,
    sequence: moment.sequence,
    kind,
    competitor,
    height,
    trial,
    judgement: judgementOf(entry),
    fate: 'counts',
    entered: moment.entered,
    waited: moment.waited,
    behindZeroCm: gathered.uprights.get(competitor) ?? null,
  });
}

/**
 * Names the trial that a jump is: no two of one competitor may have the same name. A round of the jump-off is one
 * trial, whatever its height.
 */
export function turnOf({
  kind,
  competitor,
  height,
  trial,
}: Pick<JumpDraft, 'kind' | 'competitor' | 'height' | 'trial'>): string {
  return `${kind} ${kind === 'jump-off' ? '' : height}/${trial} ${competitor}`;
}

function moveTo(draft: JumpDraft, move: JumpMoveEntry['moves'][number]): void {
  draft.competitor = move.competitor;
  draft.height = move.height;
  draft.trial = move.trial;
}

function change(gathered: Gathered, attempt: string, edit: (draft: JumpDraft) => void): void {
  const draft = gathered.drafts.get(attempt);
  if (draft) edit(draft);
}

/** The judgement part of an entry, without what names and places it. */
export function judgementOf({ outcome, foul, incident, protested }: JumpJudgement): JumpJudgement {
  return { outcome, foul, incident, protested };
}

/** Jumps by what they have in common, each group in the given order. */
export function groupedBy<K>(
  drafts: readonly JumpDraft[],
  keyOf: (draft: JumpDraft) => K,
): Map<K, JumpDraft[]> {
  const groups = new Map<K, JumpDraft[]>();
  for (const draft of drafts) {
    const group = groups.get(keyOf(draft));
    if (group) group.push(draft);
    else groups.set(keyOf(draft), [draft]);
  }
  return groups;
}

/** The same journal with every open protest upheld; `null` when there is none. */
export function withProtestsUpheld(gathered: Gathered): Gathered | null {
  const drafts = new Map(gathered.drafts);
  let any = false;
  for (const draft of gathered.drafts.values()) {
    if (draft.fate !== 'counts' || !draft.judgement.protested) continue;
    any = true;
    drafts.set(draft.id, { ...draft, judgement: upheld(draft.judgement) });
  }
  return any ? { ...gathered, drafts } : null;
}
