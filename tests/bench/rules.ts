import {
  apply,
  countCard,
  editionsOf,
  openCompetition,
  parseMark,
  recount,
  resolvePlan,
  ruleSet,
  type CompetitionSetup,
  type CompetitionState,
  type Entry,
} from '#rules';
import { standingOf } from '../../libs/rules/src/ranking/standing.js';
import { discusSheet } from '../support/circle.js';
import { plannedTrials, seriesOf } from '../support/planned-trials.js';
import { absolute, type Measure } from './measure.js';
import { COMPETITORS, ROUNDS, SCALE } from './scale.js';

const PLAN = { rounds: ROUNDS, cuts: [], reorderAfter: [] };

function setupOf(): CompetitionSetup {
  const edition = editionsOf('WA').at(-1)!;
  const resolved = resolvePlan(ruleSet('WA', edition), 'final', PLAN);
  if (!resolved.ok) throw new Error('The plan makes no plan.');
  const competitors = Array.from({ length: COMPETITORS }, (_, at) => ({
    ...{ key: `k${at + 1}`, bib: String(at + 1), name: null, club: null, flight: null },
    ...{ guest: false, implementGrams: null },
  }));
  return {
    ...{ rules: 'WA', edition, event: 'discus', indoor: false, stage: 'final', qualifying: null },
    ...{ plan: resolved.plan, unit: 'cm', competitors },
  };
}

function entriesOf(seed: number): Entry[] {
  const outcomes: Record<string, 'foul' | 'pass'> = { X: 'foul', '-': 'pass' };
  return plannedTrials(COMPETITORS, ROUNDS, seed).map(({ bib, round, cell }, at) => ({
    ...{ id: `e${at}`, by: 'official', actor: 'a', kind: 'attempt', competitor: `k${bib}`, round },
    ...{ outcome: outcomes[cell] ?? 'valid', mark: parseMark(cell)?.value ?? null },
    ...{ wind: null, foul: null, protested: null, implementGrams: null },
  }));
}

/** A whole competition, entry by entry: its last state and the microseconds of one entry on average. */
function fold(
  setup: CompetitionSetup,
  entries: readonly Entry[],
): { state: CompetitionState; meanUs: number } {
  let state = openCompetition(setup);
  const from = performance.now();
  for (const entry of entries) {
    const applied = apply(state, entry);
    if (applied.verdict.standing !== 'accepted') throw new Error(JSON.stringify(applied.verdict));
    state = applied.state;
  }
  return { state, meanUs: ((performance.now() - from) * 1000) / entries.length };
}

/** One entry decided by the rules, on average over a competition of 24 with six rounds. No target: to be watched. */
export function measureFold(): Measure {
  const setup = setupOf();
  const times = Array.from({ length: 60 }, (_, seed) => fold(setup, entriesOf(seed)).meanUs);
  return absolute('fold', 'µs', times.slice(20), null);
}

/** Ranking 24 competitors with six trials each: the places and what decided them. */
export function measureRanking(): Measure {
  const times: number[] = [];
  const cards = Array.from({ length: 20 }, (_, seed) => fold(setupOf(), entriesOf(seed)).state.card);
  for (let run = 0; run < 120; run += 1) {
    const from = performance.now();
    for (const card of cards) standingOf(card);
    times.push(((performance.now() - from) * 1000) / cards.length);
  }
  return absolute('ranking', 'µs', times.slice(20), 50);
}

/** The same with every column of a result document: marks as text, winds, statuses, decisions in words. */
export function measureRows(): Measure {
  const times: number[] = [];
  const cards = Array.from({ length: 20 }, (_, seed) => fold(setupOf(), entriesOf(seed)).state.card);
  for (let run = 0; run < 120; run += 1) {
    const from = performance.now();
    for (const card of cards) countCard(card);
    times.push(((performance.now() - from) * 1000) / cards.length);
  }
  return absolute('document', 'µs', times.slice(20), null);
}

/** A thousand sheets as text, each another one, read, checked and counted in this process. */
export function measureRecount(): Measure {
  const texts = Array.from({ length: SCALE.sheets }, (_, seed) => {
    const series = seriesOf(plannedTrials(COMPETITORS, ROUNDS, seed));
    const competitors = Object.entries(series).map(([bib, cells]) => ({ bib, series: cells }));
    return JSON.stringify(discusSheet(COMPETITORS, { competitors, plan: PLAN }));
  });
  const times: number[] = [];
  for (let run = 0; run < 5; run += 1) {
    const from = performance.now();
    for (const text of texts) recount(text);
    times.push((performance.now() - from) / 1000);
  }
  const perThousand = times.map((seconds) => (seconds * 1000) / SCALE.sheets);
  // Cold: a person who counts sheets starts a process for it.
  return absolute('recount', 's', perThousand.slice(0, 1), 2);
}
