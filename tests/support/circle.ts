import { randomUUID } from 'node:crypto';
import type { ApiClient } from './client.js';

/** A published meet of invented name, with tokens of those who work at it. */
export interface StaffedMeet {
  readonly id: string;
  readonly director: string;
  readonly referee: string;
}

export async function staffedMeet(api: ApiClient, input: object = {}): Promise<StaffedMeet> {
  const made = await api.data(
    `mutation ($input: MeetCreateInput!) { meetCreate(input: $input) { meet { id } userErrors { code message } } }`,
    {
      input: {
        name: 'Heron Field Open',
        venue: 'Heron Field',
        startsOn: '2026-06-13',
        timeZone: 'Europe/London',
        rules: 'WA',
        ...input,
      },
    },
    api.adminToken,
  );
  const { id } = made.meetCreate.meet;
  const director = await api.token('director', id);
  await api.data(
    `mutation ($input: MeetPublishInput!) { meetPublish(input: $input) { userErrors { code } } }`,
    { input: { meetId: id } },
    director,
  );
  return { id, director, referee: await api.token('referee', id) };
}

/** A competition with its official's token and the ids of its competitors by bib. */
export interface StaffedCompetition {
  readonly id: string;
  readonly official: string;
  readonly competitors: Readonly<Record<string, string>>;
}

/** Makes a competition from the start list of a sheet: everything but what happened. */
export async function staffedCompetition(
  api: ApiClient,
  meet: StaffedMeet,
  sheet: object = discusSheet(3),
  unit: 'CM' | 'QIN' = 'CM',
): Promise<StaffedCompetition> {
  const made = await api.data(
    `mutation ($input: SheetImportInput!) {
       sheetImport(input: $input) { competition { id startList { id bib } } userErrors { code message path } }
     }`,
    { input: { meetId: meet.id, title: 'Test', sheet, unit } },
    meet.director,
  );
  const { competition, userErrors } = made.sheetImport;
  if (!competition) throw new Error(JSON.stringify(userErrors));
  return {
    id: competition.id,
    official: await api.token('official', competition.id),
    competitors: Object.fromEntries(competition.startList.map((c: any) => [c.bib, c.id])),
  };
}

/** A discus final under the newest edition of the open rules, with competitors 1, 2, … */
export function discusSheet(count: number, changes: object = {}): object {
  const competitors = Array.from({ length: count }, (_, at) => ({ bib: String(at + 1) }));
  return { format: 'sectorline-sheet/1', rules: 'WA', event: 'discus', competitors, ...changes };
}

/** What a sheet's cell says, as input of attemptRecord. */
export function attemptOf(cell: string): object {
  const [written = '', wind] = cell.split(' ');
  const outcome = { X: 'FOUL', '-': 'PASS', r: 'RETIRED', O: 'UNMEASURED' }[written] ?? 'VALID';
  return { outcome, mark: outcome === 'VALID' ? written : null, wind: wind ?? null };
}

const ENTRY = `
  entry { id sequence standing notices hold { code message rule remedy cutChanges { afterRound wouldBeIn wouldBeOut } } }
  isReplay
  competition { version status }
  userErrors { code message path rule remedy ... on VersionConflict { currentVersion } }`;

/** Calls one mutation of the journal and gives its payload; the entry gets an id unless it has one. */
export async function enterInJournal(
  api: ApiClient,
  token: string | null,
  mutation: string,
  input: object,
): Promise<any> {
  const type = `${mutation[0]?.toUpperCase()}${mutation.slice(1)}Input`;
  const answer = await api.data(
    `mutation ($input: ${type}!) { ${mutation}(input: $input) { ${ENTRY} } }`,
    { input: { entryId: randomUUID(), ...input } },
    token,
  );
  return answer[mutation];
}
