import { Client } from './client.js';
import { idOf } from './ids.js';
import { COMPETITIONS, DISCUS, MEET, type DemoCompetition, type Line } from './meet.js';
import { CLUBS, PEOPLE } from './people.js';

export const DEMO = {
  meetId: idOf(MEET.name),
  runningCompetitionId: idOf(DISCUS.title),
};

/**
 * Enters the demonstration meet through the API: the director sets it up, officials record, the referee signs.
 * Whatever is there already stays; so a load that was cut short is run again. The meet is published last.
 */
export async function loadDemo(baseUrl: string, adminToken: string): Promise<void> {
  const admin = new Client(baseUrl, adminToken);
  const { meet } = await admin.call<{ meet: { id: string } }>(
    'meetCreate',
    { id: DEMO.meetId, ...MEET },
    'meet { id }',
  );
  const post = async (role: string, on: string, label: string): Promise<Client> => {
    const { token } = await admin.call<{ token: string }>('tokenIssue', { role, on, label }, 'token');
    return new Client(baseUrl, token);
  };
  const director = await post('DIRECTOR', meet.id, 'Meet director');
  const athletes = await enterPeople(director);
  for (const [index, competition] of COMPETITIONS.entries()) {
    const made = await setUp(director, meet.id, competition, athletes, index);
    const official = await post('OFFICIAL', made, `Tablet, ${competition.title}`);
    await run(official, made, competition);
    if (competition.signedOff) await signOff(await post('REFEREE', meet.id, 'Referee'), made, competition);
  }
  await director.call('meetPublish', { meetId: meet.id }, 'meet { id }');
}

/** Clubs and athletes; gives the athletes' ids by name. */
async function enterPeople(director: Client): Promise<ReadonlyMap<string, string>> {
  const clubs = new Map<string, string>();
  for (const name of CLUBS) {
    const { club } = await director.call<{ club: { id: string } }>(
      'clubCreate',
      { id: idOf(name), name },
      'club { id }',
    );
    clubs.set(name, club.id);
  }
  const athletes = new Map<string, string>();
  for (const [name, { given, family, sex, born, club }] of Object.entries(PEOPLE)) {
    const input = {
      id: idOf(name),
      givenName: given,
      familyName: family,
      sex,
      birthDate: born,
      clubId: club === null ? null : clubs.get(club),
    };
    const { athlete } = await director.call<{ athlete: { id: string } }>(
      'athleteCreate',
      input,
      'athlete { id }',
    );
    athletes.set(name, athlete.id);
  }
  return athletes;
}

/** The competition with its start list; gives its id. Bibs count on from one competition to the next. */
async function setUp(
  director: Client,
  meetId: string,
  { title, input, lines }: DemoCompetition,
  athletes: ReadonlyMap<string, string>,
  index: number,
): Promise<string> {
  const { competition } = await director.call<{ competition: { id: string } }>(
    'competitionCreate',
    { id: idOf(title), meetId, title, ...input },
    'competition { id }',
  );
  for (const [at, { who, flight }] of lines.entries()) {
    const entry = {
      id: idOf(`${title}: ${who}`),
      competitionId: competition.id,
      athleteId: athletes.get(who),
      bib: String(100 * (index + 1) + at + 1),
      flight: flight ?? null,
    };
    await director.call('competitorEnter', entry, 'competitor { id }');
  }
  return competition.id;
}

interface Up {
  readonly competitor: string;
  readonly bib: string;
  readonly round: number;
}

/** Records as an official does: whoever is called throws or jumps, until the card says no more. */
async function run(official: Client, competitionId: string, competition: DemoCompetition): Promise<void> {
  const list = await startListOf(official, competitionId);
  for (const line of competition.lines) {
    if (line.didNotStart) await markAbsent(official, competitionId, competition, line, list);
  }
  for (;;) {
    const up = await whoIsUp(official, competitionId);
    const line = up && competition.lines[list.findIndex(({ id }) => id === up.competitor)];
    const cell = up ? line?.cells[up.round - 1] : undefined;
    if (!up || !line || cell === undefined) return;
    const input = {
      competitionId,
      entryId: idOf(`${competition.title}: ${line.who}, round ${up.round}`),
      competitorId: up.competitor,
      round: up.round,
      ...attemptOf(cell),
    };
    await official.call('attemptRecord', input, 'entry { standing }');
  }
}

async function startListOf(official: Client, id: string): Promise<readonly { readonly id: string }[]> {
  const query = `query ($id: ID!) { competition(id: $id) { startList { id } } }`;
  const { startList } = await official.send<{ startList: { id: string }[] }>(query, 'competition', { id });
  return startList;
}

async function whoIsUp(official: Client, id: string): Promise<Up | null> {
  const query = `query ($id: ID!) { competition(id: $id) { progress { up { competitor bib round } } } }`;
  const { progress } = await official.send<{ progress: { up: Up | null } }>(query, 'competition', { id });
  return progress.up;
}

async function markAbsent(
  official: Client,
  competitionId: string,
  { title, lines }: DemoCompetition,
  line: Line,
  list: readonly { readonly id: string }[],
): Promise<void> {
  const input = {
    competitionId,
    entryId: idOf(`${title}: ${line.who} does not start`),
    competitorId: list[lines.indexOf(line)]?.id,
    status: 'DNS',
  };
  await official.call('competitorStartSet', input, 'entry { standing }');
}

const OUTCOMES: Readonly<Record<string, string>> = { X: 'FOUL', '-': 'PASS', r: 'RETIRED', O: 'UNMEASURED' };

/** `58.10`, `6.48 +1.1`, `X RIM`, `-`, `r` as the input of an attempt. */
function attemptOf(cell: string): object {
  const [written = '', detail] = cell.split(' ');
  const outcome = OUTCOMES[written] ?? 'VALID';
  if (outcome === 'VALID') return { outcome, mark: written, wind: detail ?? null };
  return { outcome, foul: detail ?? null };
}

async function signOff(referee: Client, id: string, { title }: DemoCompetition): Promise<void> {
  const query = `query ($id: ID!) { competition(id: $id) { version status } }`;
  const { version, status } = await referee.send<{ version: number; status: string }>(query, 'competition', {
    id,
  });
  if (status === 'OFFICIAL') return;
  const input = { competitionId: id, entryId: idOf(`${title}: signed`), expectedVersion: version };
  await referee.call('competitionSignOff', input, 'entry { standing }');
}
