import { randomUUID } from 'node:crypto';
import {
  countRows,
  countVertical,
  HOLD_TEXTS,
  targetsOf,
  type AnyEntry,
  type HoldCode,
  type Question,
  type ResultRow,
  type RulingDecision,
} from '#rules';
import { decideIn, type Folded } from '../platform/competition/kinds.js';
import type { LoadedCompetition } from '../platform/competition/loaded.js';
import { globalId } from '../platform/inputs/global-id.js';
import { competitionObject } from '../platform/objects/competition.type.js';
import type { MeetQuestion, PlaceChange, RulingEffect } from './oversight.types.js';

type Standing = ReadonlyMap<string, { readonly place: number | null; readonly mark: string | null }>;

/** What waits for the referee in a competition, with what each answer would change. */
export function questionsIn(loaded: LoadedCompetition): MeetQuestion[] {
  const entries = new Map<string, AnyEntry>(loaded.state.journal.map(({ entry }) => [entry.id, entry]));
  return loaded.state.questions.map((question) => questionObject(loaded, question, entries));
}

function questionObject(
  loaded: LoadedCompetition,
  { entry: id, about, hold }: Question,
  entries: ReadonlyMap<string, AnyEntry>,
): MeetQuestion {
  const asked = entries.get(id)!;
  const { id: _id, by: _by, actor: _actor, ...body } = asked;
  const line = lineOf(loaded, competitorOf(asked, entries));
  return {
    competition: competitionObject(loaded.row),
    entry: id,
    about,
    holdCode: hold,
    ...wordsOf(hold),
    competitor: line ? globalId('Competitor', line.competitor.id) : null,
    bib: line?.competitor.bib ?? null,
    name: line ? (line.name ?? line.displayName) : null,
    body,
    ifCounted: effectOf(loaded, id, 'count'),
    ifDismissed: effectOf(loaded, id, 'dismiss'),
  };
}

function wordsOf(hold: HoldCode | null): Pick<MeetQuestion, 'message' | 'remedy'> {
  if (hold === null) return { message: null, remedy: null };
  const { message, remedy } = HOLD_TEXTS[hold];
  return { message, remedy };
}

/** What changes a trial names no competitor; the trial does. */
function competitorOf(entry: AnyEntry, entries: ReadonlyMap<string, AnyEntry>): string | null {
  if ('competitor' in entry) return entry.competitor;
  const target = entries.get(targetsOf(entry).ids[0] ?? '');
  return target && 'competitor' in target ? target.competitor : null;
}

function lineOf({ roster }: LoadedCompetition, competitorId: string | null) {
  return roster.find(({ competitor }) => competitor.id === competitorId) ?? null;
}

/** Decides it on a state that nobody keeps, and compares. */
function effectOf(loaded: LoadedCompetition, entry: string, decision: RulingDecision): RulingEffect {
  const ruling = { id: randomUUID(), by: 'referee', actor: '', kind: 'ruling' } as const;
  const { after, verdict } = decideIn(loaded, { ...ruling, entry, decision, reason: '-' });
  if (verdict.standing === 'refused') {
    const { message, remedy } = verdict.refusal;
    return { obstacle: `${message} ${remedy}`, changes: [] };
  }
  const [before, then] = [standingOf(loaded), standingOf(after)];
  return { obstacle: null, changes: changesBetween(loaded, before, then) };
}

function standingOf(folded: Folded): Standing {
  if (folded.kind === 'vertical') return standingIn(countVertical(folded.state.card).results);
  return standingIn(countRows(folded.state.card).map(({ row }) => row));
}

function standingIn(rows: readonly Pick<ResultRow, 'bib' | 'place' | 'mark'>[]): Standing {
  return new Map(rows.map(({ bib, place, mark }) => [bib, { place, mark }]));
}

function changesBetween({ roster }: LoadedCompetition, before: Standing, after: Standing): PlaceChange[] {
  return roster.flatMap((line) => {
    const { id, bib } = line.competitor;
    const [was, is] = [before.get(bib), after.get(bib)];
    if (was?.place === is?.place && was?.mark === is?.mark) return [];
    return {
      ...{ competitor: globalId('Competitor', id), bib, name: line.name ?? line.displayName },
      ...{ placeBefore: was?.place ?? null, placeAfter: is?.place ?? null },
      ...{ markBefore: was?.mark ?? null, markAfter: is?.mark ?? null },
    };
  });
}
