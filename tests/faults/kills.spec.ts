import { recount } from '#rules';
import { join } from 'node:path';
import { readGlobalId } from '../../apps/api/src/platform/inputs/global-id.js';
import { referenceResult } from '../reference/result.js';
import { onConnection, runDirectory } from '../support/database.js';
import { seriesOf } from '../support/planned-trials.js';
import { clusterOf, embeddedOf, installedPrograms, type MortalServer } from './databases.js';
import type { Story } from './devices.js';
import { killWhileRecording, type Outcome, type Recorded, type Victim } from './run.js';

const IS_LONG = process.env['LONG'] === '1';
/** As many as an afternoon of four competitions; fewer where it has to be quick. */
const ENTRIES = IS_LONG ? 2_016 : 480;
const RESENT_SHARE = 0.05;
const SEED = 7_305;
const PATIENCE_MS = 900_000;

/** In the long run everything is killed seven times; otherwise each server in another way. */
function victimsOf(quick: readonly Victim[]): readonly Victim[] {
  const round = ['database', 'api', 'both'] as const;
  return IS_LONG ? Array.from({ length: 21 }, (_, at) => round[at % round.length]!) : quick;
}

let directories = 0;
function newDirectory(): string {
  directories += 1;
  return join(runDirectory(), `faults-${process.pid}-${directories}`);
}

interface StoredEntry {
  readonly sequence: number;
  readonly id: string;
  readonly standing: string;
}

async function storedIn({ circle }: Recorded, server: MortalServer): Promise<StoredEntry[]> {
  const { uuid } = readGlobalId(circle.competition.id)!;
  return onConnection(await server.storeUrl(), async (client) => {
    const { rows } = await client.query<StoredEntry>(
      `SELECT sequence, entry_id AS id, standing FROM journal_entry WHERE competition_id = $1 ORDER BY sequence`,
      [uuid],
    );
    return rows;
  });
}

/** What is stored and should not be, or should be and is not; in words. */
async function faultsIn(recorded: Recorded, server: MortalServer): Promise<string[]> {
  const stored = await storedIn(recorded, server);
  const idAt = new Map(stored.map(({ sequence, id }) => [sequence, id]));
  const { trials, story } = recorded;
  return [
    ...stored.filter(({ sequence }, at) => sequence !== at + 1).map(({ id }) => `${id} has a gap before it`),
    ...story.acknowledged
      .filter(({ sequence, entryId }) => idAt.get(sequence) !== entryId)
      .map(({ entryId }) => `${entryId} was acknowledged and is lost`),
    ...stored.filter(({ standing }) => standing !== 'accepted').map(({ id }) => `${id} came twice`),
    ...(stored.length === trials.length ? [] : [`${stored.length} entries for ${trials.length} trials`]),
  ];
}

/** The sheet is what was sent, and it counts to the result that is shown, twice. */
async function expectWholeTable({ circle, trials }: Recorded): Promise<void> {
  const { competition } = await circle.api.data(
    `query ($id: ID!) { competition(id: $id) { sheet result } }`,
    { id: circle.competition.id },
    circle.director,
  );
  const { sheet, result } = competition;
  const series = Object.fromEntries(sheet.competitors.map((one: any) => [one.bib, one.series]));
  expect(series).toEqual(seriesOf(trials));
  expect(JSON.parse(JSON.stringify(recount(JSON.stringify(sheet))))).toEqual(result);
  expect(result).toMatchObject(referenceResult(sheet) as object);
}

function killed(
  victims: readonly Victim[],
  serverOf: (dataDirectory: string) => Promise<MortalServer>,
): void {
  let server: MortalServer;
  let outcome: Outcome;

  beforeAll(async () => {
    const dataDirectory = newDirectory();
    server = await serverOf(dataDirectory);
    outcome = await killWhileRecording({
      ...{ server, dataDirectory, victims, entries: ENTRIES },
      ...{ resentShare: RESENT_SHARE, seed: SEED },
    });
  }, PATIENCE_MS);

  afterAll(async () => {
    await outcome?.api.stop();
    await server?.stop();
  }, PATIENCE_MS);

  const sum = (of: (story: Story) => number): number =>
    outcome.competitions.reduce((all, { story }) => all + of(story), 0);

  it('nothing that was acknowledged is lost, nothing is doubled, and the sequence has no gap', async () => {
    expect(sum(({ acknowledged }) => acknowledged.length)).toBe(ENTRIES);
    for (const recorded of outcome.competitions) expect(await faultsIn(recorded, server)).toEqual([]);
  });

  it('every table equals the recount of what was sent', async () => {
    for (const recorded of outcome.competitions) await expectWholeTable(recorded);
  });

  it('a device hears that the database is away, or nothing; and that its entry had been recorded before', () => {
    expect(outcome.competitions.flatMap(({ story }) => story.unexpected)).toEqual([]);
    expect(sum(({ unanswered }) => unanswered)).toBeGreaterThan(0);
    expect(sum(({ unavailable }) => unavailable)).toBeGreaterThan(0);
    expect(sum(({ replays }) => replays)).toBeGreaterThan(0);
  });

  it('the API outlives its database, and answers again in the same process', () => {
    expect(outcome.survived).toBe(victims.filter((victim) => victim === 'database').length);
  });

  it('this would be found out if it were not so: a new id for every send doubles trials', async () => {
    const faults = await faultsIn(outcome.control, server);
    expect(faults.filter((fault) => fault.endsWith('came twice')).length).toBeGreaterThan(0);
    expect(faults).toContainEqual(expect.stringMatching(/^\d+ entries for \d+ trials$/));
  });
}

const during = `while ${ENTRIES} entries are sent`;

describe(`killing ${during}, on the embedded PostgreSQL`, () => {
  killed(victimsOf(['database', 'api']), (dataDirectory) => Promise.resolve(embeddedOf(dataDirectory)));
});

describe(`killing ${during}, on an installed PostgreSQL`, () => {
  const programs = installedPrograms();
  if (programs !== null) {
    killed(victimsOf(['database', 'both']), () => clusterOf(programs, newDirectory()));
    return;
  }
  it('is not there to be tried', () => {
    const words =
      'NOT TRIED: no PostgreSQL is installed in /usr/lib/postgresql (Debian: apt-get install postgresql).';
    process.stderr.write(`\n${words}\n\n`);
    if (process.env['CI']) throw new Error(words);
  });
});
