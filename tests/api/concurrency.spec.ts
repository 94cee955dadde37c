import { recount } from '#rules';
import { referenceResult } from '../reference/result.js';
import { startApi, type TestApi } from '../support/api.js';
import { Circle } from '../support/at-the-circle.js';
import { attemptOf, discusSheet } from '../support/circle.js';
import { numbersFrom, plannedTrials, seriesOf, type PlannedTrial } from '../support/planned-trials.js';
import { onConnection } from '../support/database.js';

const OFFICIALS = 16;
const COMPETITORS = 250;
const ROUNDS = 6;
const RESENT_SHARE = 0.05;
const SEED = 20_260_613;

const PLAN = { rounds: ROUNDS, cuts: [], reorderAfter: [] };
const RECORD = `mutation ($input: AttemptRecordInput!) { attemptRecord(input: $input) {
  entry { id sequence standing } isReplay competition { version } userErrors { code message }
} }`;

let api: TestApi;
beforeAll(async () => {
  api = await startApi();
});
afterAll(() => api.close());

interface Sent {
  readonly trial: PlannedTrial;
  readonly entryId: string;
  readonly answers: readonly any[];
}

/** What one official does: his own competitors, round by round, now and then sending the same again. */
async function officiate(circle: Circle, token: string, trials: readonly PlannedTrial[], next: () => number) {
  const sent: Sent[] = [];
  for (const trial of trials) {
    const entryId = crypto.randomUUID();
    const input = {
      competitionId: circle.competition.id,
      competitorId: circle.competition.competitors[trial.bib],
      entryId,
      round: trial.round,
      ...attemptOf(trial.cell),
    };
    const send = async (): Promise<any> => (await api.data(RECORD, { input }, token)).attemptRecord;
    const fate = next();
    // Half of the resends go out at once with the first, as after a click too many; half after its answer.
    const answers = fate < RESENT_SHARE / 2 ? await Promise.all([send(), send()]) : [await send()];
    if (fate >= RESENT_SHARE / 2 && fate < RESENT_SHARE) answers.push(await send());
    sent.push({ trial, entryId, answers });
  }
  return sent;
}

describe(`${OFFICIALS} officials at one competition of ${COMPETITORS} over ${ROUNDS} rounds at once`, () => {
  const trials = plannedTrials(COMPETITORS, ROUNDS, SEED);
  let circle: Circle;
  let sent: Sent[];

  beforeAll(async () => {
    circle = await Circle.open(api, discusSheet(COMPETITORS, { plan: PLAN }));
    const tokens = await Promise.all(
      Array.from({ length: OFFICIALS }, () => api.token('official', circle.competition.id)),
    );
    const work = tokens.map((token, official) => {
      const own = trials.filter(({ bib }) => Number(bib) % OFFICIALS === official);
      return officiate(circle, token, own, numbersFrom(SEED + official));
    });
    sent = (await Promise.all(work)).flat();
  }, 300_000);

  it('none of them sees an error or a refusal', () => {
    expect(sent).toHaveLength(COMPETITORS * ROUNDS);
    const wrong = sent.filter(({ answers }) =>
      answers.some((answer) => answer.userErrors.length > 0 || answer.entry.standing !== 'ACCEPTED'),
    );
    expect(wrong).toEqual([]);
  });

  it('what is sent again is answered as a replay, with the same entry', () => {
    const again = sent.filter(({ answers }) => answers.length > 1);
    expect(again.length).toBeGreaterThan((COMPETITORS * ROUNDS * RESENT_SHARE) / 2);
    for (const { answers } of again) {
      expect(answers.filter(({ isReplay }) => !isReplay)).toHaveLength(1);
      expect(answers[1].entry).toEqual(answers[0].entry);
    }
    const once = sent.filter(({ answers }) => answers.length === 1);
    expect(once.filter(({ answers }) => answers[0].isReplay)).toEqual([]);
  });

  it('the sequence has no gap, and every acknowledged entry stands where its answer said', async () => {
    const journal = await circle.journal();
    expect(journal.map(({ sequence }) => sequence)).toEqual(trials.map((_, at) => at + 1));
    const acknowledged = sent.map(({ entryId, answers }) => [answers[0].entry.sequence, entryId] as const);
    const stored = journal.map(({ sequence, id }) => [sequence, id]);
    expect(acknowledged.sort(([a], [b]) => a - b)).toEqual(stored);
    const { rows } = await onConnection(api.databaseUrl, (client) =>
      client.query(
        'SELECT last_sequence, count(*)::int AS entries FROM competition, journal_entry GROUP BY 1',
      ),
    );
    expect(rows).toEqual([{ last_sequence: trials.length, entries: trials.length }]);
  });

  it('the version rises with each entry', () => {
    const firsts = sent.map(({ answers }) => answers.find(({ isReplay }) => !isReplay));
    const bySequence = firsts.sort((a, b) => a.entry.sequence - b.entry.sequence);
    const versions: number[] = bySequence.map(({ competition }) => competition.version);
    const fallen = versions.filter((version, at) => at > 0 && version <= versions[at - 1]!);
    expect(fallen).toEqual([]);
  });

  it('the table equals the recount of its sheet, and a second count written by another hand', async () => {
    const { competition } = await api.data(
      `query ($id: ID!) { competition(id: $id) {
         sheet result table { rows { bib place mark decidedBy } } } }`,
      { id: circle.competition.id },
      circle.director,
    );
    const { sheet, result, table } = competition;
    const series = Object.fromEntries(sheet.competitors.map((one: any) => [one.bib, one.series]));
    expect(series).toEqual(seriesOf(trials));
    expect(JSON.parse(JSON.stringify(recount(JSON.stringify(sheet))))).toEqual(result);
    expect(result).toMatchObject(referenceResult(sheet) as object);
    const rows = result.results.map(({ bib, place, mark, decidedBy }: any) => ({
      bib,
      place,
      mark,
      decidedBy,
    }));
    expect(table.rows).toEqual(rows);
  });
});
