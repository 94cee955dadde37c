import {
  formatMark,
  listKey,
  recordHistory,
  recordLine,
  type Performance,
  type RecordBook,
  type RecordLine,
  type RecordList as List,
} from '#rules';
import type { Identity } from '../platform/identity/identity.js';
import { globalId } from '../platform/inputs/global-id.js';
import { competitionObject } from '../platform/objects/competition.type.js';
import { bookOf, windText, type Evidence } from './evidence.js';
import { holderName } from './record-names.js';
import { dashed } from './record-words.js';
import type { RecordList, RecordMark } from './records.types.js';

/** Which lists are shown, to whom. */
export interface ListsShown {
  readonly evidence: Evidence;
  readonly terms: Parameters<typeof bookOf>[1];
  readonly viewer: Identity;
  readonly isShown: (list: List) => boolean;
  /** The name of whose lists they are; `null`: an athlete's. */
  readonly name: string | null;
}

/** The lists in order of kind, event and category. Those in which nothing stands any more are left out. */
export function listsView({ evidence, terms, viewer, isShown, name }: ListsShown): RecordList[] {
  const book = bookOf(evidence, terms);
  const lists = [...book.entries.values()].map(({ list }) => list).filter(isShown);
  const markView = markViewer(evidence, viewer);
  return lists
    .toSorted((a, b) => (sortKey(a) < sortKey(b) ? -1 : 1))
    .flatMap((list) => {
      const line = recordLine(book, list);
      return line && standsSomething(line) ? [listView(book, line, name, markView)] : [];
    });
}

function standsSomething({ best, wouldBe, windAssisted }: RecordLine): boolean {
  return best.length + wouldBe.length + windAssisted.length > 0;
}

function sortKey({ kind, comparison, sex, age, indoor, season }: List): string {
  return JSON.stringify([kind, comparison, sex, age, indoor, season]);
}

function listView(
  book: RecordBook,
  { list, best, wouldBe, windAssisted }: RecordLine,
  name: string | null,
  markView: (performance: Performance) => RecordMark,
): RecordList {
  const { event, unit, implementGrams } = someIn(book, list);
  return {
    ...listHead(list, name),
    event,
    unit,
    implementGrams: list.comparison === `${event}/${unit}` ? null : implementGrams,
    modelFrom: list.comparison.split('/')[3] ?? null,
    best: best.map(markView),
    wouldBe: wouldBe.map(markView),
    windAssisted: windAssisted.map(markView),
    history: recordHistory(book, list).map(({ performance, relation, until }) => ({
      mark: markView(performance),
      relation,
      until,
    })),
  };
}

/** What a list and a claim to it have alike. */
export function listHead(
  { kind, sex, age, season, indoor }: List,
  name: string | null,
): Pick<RecordList, 'kind' | 'of' | 'sex' | 'age' | 'season' | 'isIndoor'> {
  return { kind: dashed(kind), of: name, sex, age, season, isIndoor: indoor };
}

/** Any mark of the list: all have its event, unit and implement. */
function someIn(book: RecordBook, list: List): Performance {
  const [first] = book.entries.get(listKey(list))!.performances.values();
  return first!;
}

const FROM_ELSEWHERE = {
  ...{
    competition: null,
    competitor: null,
    attempt: null,
    startingMark: null,
    pastResult: null,
    source: null,
  },
} as const;

function markViewer(evidence: Evidence, viewer: Identity): (performance: Performance) => RecordMark {
  return (performance) => {
    const evident = evidence.marks.get(performance.id)!;
    const { origin } = evident;
    const club = performance.club === null ? null : (evidence.clubNames.get(performance.club) ?? null);
    const shared = {
      mark: formatMark(performance.mark, performance.unit),
      wind: performance.wind === 'pending' ? null : windText(performance),
      isIndoor: performance.indoor,
      implementGrams: performance.implementGrams,
      onDate: performance.onDate,
      holder: holderName(evident, viewer),
    };
    if (origin.kind === 'starting mark') {
      const { id: startingMark, place } = origin.row;
      return { ...shared, ...FROM_ELSEWHERE, club, startingMark, place };
    }
    if (origin.kind === 'past result') {
      const { id: pastResult, meetName: place, source } = origin.row;
      return { ...shared, ...FROM_ELSEWHERE, club, pastResult, place, source };
    }
    const { row, meet, line } = origin;
    return {
      ...shared,
      club: line.club,
      competition: competitionObject(row),
      competitor: globalId('Competitor', line.competitor.id),
      attempt: performance.id,
      ...{ startingMark: null, pastResult: null, source: null },
      place: meet.venue === '' ? null : meet.venue,
    };
  };
}
