import {
  compareInTime,
  decisionKey,
  formatMark,
  listKey,
  recognise,
  recognitionSentence,
  recordTerms,
  windStanding,
  type Performance,
  type Recognition,
  type RecordBook,
} from '#rules';
import type { LoadedCompetition } from '../platform/competition/loaded.js';
import type { Identity } from '../platform/identity/identity.js';
import { globalId } from '../platform/inputs/global-id.js';
import type { RecordClaim } from './claims.types.js';
import { bookOf, type Evidence, type Evident } from './evidence.js';
import { listHead } from './lists-view.js';
import { holderName, maySeeBests } from './record-names.js';
import { dashed } from './record-words.js';

/** What the marks of a competition were when they were made, in order of time; only of one attempt, if it is named. */
export function claimsView(
  { row }: Pick<LoadedCompetition, 'row'>,
  evidence: Evidence,
  viewer: Identity,
  attempt: string | null = null,
): RecordClaim[] {
  const book = bookOf(evidence, recordTerms(row.rules, row.edition));
  const own = [...evidence.marks.values()].filter(
    ({ performance: { id, competition } }) => competition === row.id && (attempt === null || id === attempt),
  );
  return own
    .toSorted((a, b) => compareInTime(a.performance, b.performance))
    .flatMap((mark) => claimsOf(book, evidence, mark, viewer));
}

function claimsOf(book: RecordBook, evidence: Evidence, mark: Evident, viewer: Identity): RecordClaim[] {
  const { performance } = mark;
  const expected = expectedGrams(mark);
  const claims = recognise(book, performance).map((one) => claimView({ book, evidence, mark, viewer }, one));
  const missed =
    expected === null || expected === performance.implementGrams
      ? []
      : recognise(book, { ...performance, implementGrams: expected }).map((one) =>
          missedView({ book, evidence, mark, viewer }, one, expected),
        );
  return [...claims, ...missed].filter(
    ({ kind }) => kind === 'club-record' || kind === 'meet-record' || maySeeBests(mark, viewer),
  );
}

/** The mass of the implement of the competitor's category; `null`: not known, or nothing is thrown. */
function expectedGrams({ origin }: Evident): number | null {
  if (origin.kind !== 'attempt') return null;
  return origin.line.competitor.implementGrams ?? origin.row.implementGrams;
}

interface Claimed {
  readonly book: RecordBook;
  readonly evidence: Evidence;
  readonly mark: Evident;
  readonly viewer: Identity;
}

function claimView(claimed: Claimed, recognition: Recognition): RecordClaim {
  const { book, mark } = claimed;
  const { performance } = mark;
  const { list, wind, outstanding } = recognition;
  const decision = book.decisions.get(decisionKey(list.kind, performance.id)) ?? null;
  const whyNot =
    decision === 'refused'
      ? 'The referee declined it.'
      : wind === 'over the limit' || wind === 'not measured'
        ? `Wind ${wind}.`
        : null;
  return {
    ...shared(claimed, recognition),
    counts: whyNot === null && outstanding.length === 0,
    whyNot,
    outstanding: whyNot === null ? outstanding.map(dashed) : [],
    sentence:
      decision === 'refused'
        ? `${formatMark(performance.mark, performance.unit)} was declined as a ${list.kind}`
        : recognitionSentence(recognition, performance),
    isBeaten: isBeaten(book, recognition, performance),
    decision,
  };
}

/** What it would have been with the implement of the category. */
function missedView(claimed: Claimed, recognition: Recognition, expected: number): RecordClaim {
  const { performance } = claimed.mark;
  const whyNot = `Thrown with ${performance.implementGrams} g; the list is of ${expected} g.`;
  const mark = formatMark(performance.mark, performance.unit);
  return {
    ...shared(claimed, recognition),
    implementGrams: expected,
    counts: false,
    whyNot,
    outstanding: [],
    sentence: `${mark} with another implement: no ${recognition.list.kind}`,
    isBeaten: false,
    decision: null,
  };
}

function shared(
  { evidence, mark, viewer }: Claimed,
  { list, relation, before, wind }: Recognition,
): Omit<RecordClaim, 'counts' | 'whyNot' | 'outstanding' | 'sentence' | 'isBeaten' | 'decision'> {
  const { performance, origin } = mark;
  if (origin.kind !== 'attempt') throw new Error('A starting mark claims nothing.');
  const { competitor } = origin.line;
  return {
    ...listHead(list, list.kind === 'club record' ? (evidence.clubNames.get(list.of) ?? null) : meetOf(list)),
    relation,
    mark: formatMark(performance.mark, performance.unit),
    before: before === null ? null : formatMark(before, performance.unit),
    wind: dashed(wind),
    attempt: performance.id,
    competitor: globalId('Competitor', competitor.id),
    bib: competitor.bib,
    name: holderName(mark, viewer) ?? `#${competitor.bib}`,
    implementGrams: performance.implementGrams,
  };
}

function meetOf({ kind, of }: Recognition['list']): string | null {
  return kind === 'meet record' ? of : null;
}

/** By a mark made since that the wind allows and the referee did not decline. */
function isBeaten(book: RecordBook, { list }: Recognition, { mark }: Performance): boolean {
  const inList = book.entries.get(listKey(list))?.performances.values() ?? [];
  return [...inList].some(
    (one) =>
      one.mark > mark &&
      windStanding(one, book.terms.windLimitTenths) === 'legal' &&
      book.decisions.get(decisionKey(list.kind, one.id)) !== 'refused',
  );
}
