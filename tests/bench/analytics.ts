import { randomUUID } from 'node:crypto';
import { FULL_DRAWS, newVocabulary, type Observation } from '#technique';
import { analyse } from '../../apps/api/src/analytics/findings/analyse.js';
import { dateOf, type AnalysisTask, type KnownThrow } from '../../apps/api/src/analytics/findings/task.js';
import { NamedChance } from '../../seed/squad/chance.js';
import { call, signedInPerson } from '../support/accounts.js';
import { attemptOf, discusSheet, staffedCompetition } from '../support/circle.js';
import { noteOf, throwOf } from '../support/notebook.js';
import { plannedTrials } from '../support/planned-trials.js';
import { quantileOf, timeOf } from './latency.js';
import { absolute, type Measure } from './measure.js';
import { COMPETITORS, ROUNDS } from './scale.js';
import type { Stage } from './stage.js';

const IS_FULL = process.env['BENCH_FULL'] === '1';
const THROWS = 400;
const CODES = ['DT-04', 'DT-06', 'DT-12', 'DT-14', 'DT-20', 'DT-31'];
const BASE_MS = 300;
const PER_FAULT_MS = 200;

/** Four hundred throws that were all looked at for six faults, with all draws, in this process. */
export function measureAnalysis(): Measure {
  const task = taskOf();
  const times = Array.from({ length: IS_FULL ? 5 : 2 }, () => {
    const begun = performance.now();
    const found = analyse(task);
    if (found.kind !== 'whole' || found.faults.length !== CODES.length)
      throw new Error('The analysis is not whole.');
    return performance.now() - begun;
  });
  return absolute(
    `analysis, ${THROWS} throws, ${CODES.length} faults, cold`,
    'ms',
    times,
    BASE_MS + CODES.length * PER_FAULT_MS,
  );
}

function taskOf(): AnalysisTask {
  const chance = new NamedChance('bench');
  const observations: Observation[] = [];
  const throws = Array.from({ length: THROWS }, (_, index): KnownThrow => {
    const [series, round] = [Math.floor(index / 8), (index % 8) + 1];
    const id = `throw ${index}`;
    const present = CODES.filter(() => chance.happens(0.4));
    observations.push({
      ...{ id, throwId: id, observer: 'coach', observedAt: dateOf(19_000 + 7 * series), method: 'live' },
      ...{ markKnown: false, view: null, scope: { kind: 'codes', codes: CODES }, note: null },
      marks: present.map((code) => ({ code, severity: 2, sure: true, causedBy: null })),
    });
    const markCm = Math.round(3_200 * Math.exp(0.04 * chance.normal()) * 0.97 ** present.length);
    const isFoul = chance.happens(0.2);
    return {
      ...{
        id,
        athlete: 'a',
        thrownIn: series % 3 === 0 ? 'competition' : 'practice',
        occasion: `o${series}`,
      },
      ...{ occasionName: '', onDate: dateOf(19_000 + 7 * series), day: 19_000 + 7 * series, event: 'discus' },
      ...{ variant: 'full-turn', massG: 1000, round, outcome: isFoul ? 'foul' : 'valid' },
      ...{ markCm: isFoul ? null : markCm, measured: !isFoul, effortPercent: 95, voidedOnPurpose: false },
      ...{ annulled: false, styles: [], foul: null, windTenths: null },
    };
  });
  return {
    ...{
      throws,
      observations,
      vocabulary: newVocabulary(),
      event: 'discus',
      stage: 'advanced',
      growing: false,
    },
    ...{ child: false, focuses: [], draws: FULL_DRAWS, seed: ['bench'], today: throws.at(-1)!.onDate },
  };
}

const ANALYSIS = `query ($id: ID!) { notebookAthlete(athleteId: $id) { analysis(event: DISCUS) {
  ... on AthleteAnalysis { isFirstAnswer faults { code distance { percent p } } } } } }`;
const SQUAD = `{ squadOverview { athlete { name } lastThrowOn notAssessed { code } } }`;

/** What a coach of forty waits for, and what officials wait for while analyses are made. */
export async function measureSquad(stage: Stage): Promise<Measure[]> {
  const { coach, ids } = await squadOf(stage, IS_FULL ? 40 : 8);
  const { api } = stage;
  const cold = await timeOf(() => api.data(SQUAD, {}, coach));
  const ask = (id: string): Promise<any> => api.data(ANALYSIS, { id }, coach);
  // The threads start with the first analysis, and stay for a minute.
  await ask(ids.at(-1)!);
  await recordAll(stage);
  const alone = await recordAll(stage);
  const analyses = ids.slice(0, 20).map(ask);
  const beside = await recordAll(stage);
  await Promise.all(analyses);
  await ask(ids[0]!);
  const cached: number[] = [];
  for (let at = 0; at < 100; at += 1) cached.push(await timeOf(() => ask(ids[0]!)));
  return [
    absolute(`squad of ${ids.length}, cold`, 'ms', [cold], 3_000),
    absolute('analysis, cached, over HTTP', 'ms', cached, 5),
    absolute('recording alone', 'ms p99', [quantileOf(alone, 0.99)], null),
    absolute(`recording beside ${analyses.length} analyses`, 'ms p99', [quantileOf(beside, 0.99)], null),
    absolute(
      'recording beside analyses against alone',
      '×',
      [quantileOf(beside, 0.99) / quantileOf(alone, 0.99)],
      1.5,
    ),
  ];
}

async function squadOf({ api }: Stage, size: number): Promise<{ coach: string; ids: string[] }> {
  const ids: string[] = [];
  for (let at = 0; at < size; at += 1) {
    const born = { birthDate: '2000-01-01', sex: 'W', givenName: `Given${at}`, familyName: 'Bench' };
    const { athlete } = await call(api, 'athleteCreate', born, 'athlete { id }', api.adminToken);
    ids.push(athlete.id);
  }
  const { accessToken: coach } = await signedInPerson(
    api,
    ids.map((on) => ({ role: 'COACH', on })),
  );
  const chance = new NamedChance('squad of the bench');
  for (const onDate of ['2026-04-01', '2026-04-08', '2026-04-15', '2026-04-22', '2026-04-29']) {
    const { session } = await call(api, 'practiceSessionCreate', { onDate }, 'session { id }', coach);
    for (const athleteId of ids) {
      const throws = Array.from({ length: 10 }, (_, index) => {
        const present = CODES.filter(() => chance.happens(0.4));
        const marks = present.map((code) => ({ code, severity: 2 }));
        const mark = `${30 + Math.floor(5 * chance.uniform())}.${10 + Math.floor(80 * chance.uniform())}`;
        return throwOf(athleteId, { round: index + 1, mark, observation: noteOf({ scope: CODES, marks }) });
      });
      await call(api, 'throwsLog', { sessionId: session.id, throws }, 'results { status }', coach);
    }
  }
  return { coach, ids };
}

const RECORD = `mutation ($input: AttemptRecordInput!) { attemptRecord(input: $input) { entry { standing } userErrors { code } } }`;

/** One official, who records a whole competition; the milliseconds of each entry. */
async function recordAll({ api, meet }: Stage): Promise<number[]> {
  const plan = { rounds: ROUNDS, cuts: [], reorderAfter: [] };
  const { id, competitors } = await staffedCompetition(api, meet, discusSheet(COMPETITORS, { plan }));
  const times: number[] = [];
  for (const { bib, round, cell } of plannedTrials(COMPETITORS, ROUNDS, 1)) {
    const trial = { competitorId: competitors[bib], round, ...attemptOf(cell) };
    const input = { competitionId: id, entryId: randomUUID(), ...trial };
    times.push(await timeOf(() => api.data(RECORD, { input }, meet.director)));
  }
  return times;
}
