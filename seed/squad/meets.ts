import { Client } from '../client.js';
import { idOf } from '../ids.js';
import { NamedChance } from './chance.js';
import { nameOf } from './members.js';
import { dayOf, metres, throwOnce } from './model.js';
import { noteOf, type InSquad } from './practice.js';

/** Evenings of the club at which the squad threw for results. */
export const EVENINGS = [
  { name: 'Heron Field spring evening 2025', onDate: '2025-05-06' },
  { name: 'Heron Field summer evening 2025', onDate: '2025-07-15' },
  { name: 'Heron Field spring evening 2026', onDate: '2026-05-05' },
  { name: 'Heron Field summer evening 2026', onDate: '2026-07-14' },
] as const;

const ROUNDS = 6;
/** What most throwers do better or worse when it counts: two per cent less. */
const WHEN_IT_COUNTS = Math.log(0.98);

/** An evening with a competition for each implement, recorded trial by trial and seen by the coach. */
export async function throwAtEvening(
  { admin, coach, baseUrl }: { readonly admin: Client; readonly coach: Client; readonly baseUrl: string },
  { name, onDate }: (typeof EVENINGS)[number],
  at: number,
  squad: readonly InSquad[],
): Promise<void> {
  const day = { startsOn: onDate, timeZone: 'Europe/London', rules: 'WA', venue: 'Heron Field' };
  const { meet } = await admin.call<{ meet: { id: string } }>(
    'meetCreate',
    { id: idOf(name), name, ...day },
    'meet { id }',
  );
  const director = await tokenOf(admin, baseUrl, 'DIRECTOR', meet.id);
  for (const grams of [...new Set(squad.map(({ member }) => member.grams))]) {
    const those = squad.filter(({ member }) => member.grams === grams);
    await compete({ director, coach }, { meetId: meet.id, name, onDate, grams }, at, those);
  }
  await director.call('meetPublish', { meetId: meet.id }, 'meet { id }');
}

async function tokenOf(admin: Client, baseUrl: string, role: string, on: string): Promise<Client> {
  const issued = await admin.call<{ token: string }>(
    'tokenIssue',
    { role, on, label: 'Club evening' },
    'token',
  );
  return new Client(baseUrl, issued.token);
}

interface Evening {
  readonly meetId: string;
  readonly name: string;
  readonly onDate: string;
  readonly grams: number;
}

async function compete(
  { director, coach }: { readonly director: Client; readonly coach: Client },
  { meetId, name, onDate, grams }: Evening,
  at: number,
  squad: readonly InSquad[],
): Promise<void> {
  const title = `Discus ${grams} g`;
  const whole = `${name}, ${title}`;
  const wanted = {
    ...{ id: idOf(whole), meetId, title, event: 'DISCUS', unit: 'CM', implementGrams: grams },
    plan: { rounds: ROUNDS, cuts: [] },
  };
  const { competition } = await director.call<{ competition: { id: string } }>(
    'competitionCreate',
    wanted,
    'competition { id }',
  );
  const competitionId = competition.id;
  const lines: { readonly competitorId: string; readonly one: InSquad; readonly series: Series }[] = [];
  for (const [index, one] of squad.entries()) {
    const entry = { id: idOf(`${whole}: ${nameOf(one.member)}`), competitionId, athleteId: one.athleteId };
    const bib = String(index + 1);
    const { competitor } = await director.call<{ competitor: { id: string } }>(
      'competitorEnter',
      { ...entry, bib },
      'competitor { id }',
    );
    lines.push({ competitorId: competitor.id, one, series: seriesOf(one, whole, at) });
  }
  for (let round = 1; round <= ROUNDS; round += 1) {
    for (const { competitorId, one, series } of lines) {
      const { isFoul, markCm } = series[round - 1]!;
      const entryId = idOf(`${whole}: ${nameOf(one.member)}, round ${round}`);
      const judged = isFoul ? { outcome: 'FOUL', foul: 'RIM' } : { outcome: 'VALID', mark: metres(markCm) };
      await director.call(
        'attemptRecord',
        { competitionId, entryId, competitorId, round, ...judged },
        'entry { id }',
      );
    }
  }
  for (const { competitorId, one, series } of lines) {
    const seen = series.map(({ present }, index) => ({
      ...noteOf(
        `${whole}: ${nameOf(one.member)}, look ${index + 1}`,
        `${onDate}T18:00:00Z`,
        one.member,
        present,
      ),
      trial: { competitionId, competitorId, round: index + 1 },
    }));
    await coach.call(
      'observationsLog',
      { athleteId: one.athleteId, observations: seen },
      'results { status }',
    );
  }
}

type Series = readonly ReturnType<typeof throwOnce>[];

function seriesOf({ member }: InSquad, whole: string, at: number): Series {
  const chance = new NamedChance(`${nameOf(member)} at ${whole}`);
  const day = dayOf(member, chance) + WHEN_IT_COUNTS;
  return Array.from({ length: ROUNDS }, () => throwOnce(member, at, day, chance));
}
