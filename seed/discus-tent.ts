import type { Client } from './client.js';
import { idOf } from './ids.js';
import type { DemoCompetition, Line } from './competition.js';
import { CLUBS, PEOPLE, type ClubName } from './people.js';

interface Discus {
  readonly label: string;
  /** None: of the pool of the meet. */
  readonly club: ClubName | null;
  readonly weighs: number;
  readonly diameter: number;
}

const [TARNWICK, SALTMARSH, ELDER_VALE, QUARRY_LANE] = CLUBS;

/** One is too light: it is kept back, and the club brings another. */
const DISCUSES: readonly Discus[] = [
  { label: 'Tarnwick 1', club: TARNWICK, weighs: 994, diameter: 181 },
  { label: 'Tarnwick 2', club: TARNWICK, weighs: 1004, diameter: 181 },
  { label: 'Saltmarsh A', club: SALTMARSH, weighs: 1001, diameter: 180 },
  { label: 'Elder Vale', club: ELDER_VALE, weighs: 1008, diameter: 182 },
  { label: 'Quarry Lane 3', club: QUARRY_LANE, weighs: 1002, diameter: 181 },
  { label: 'Heron Field pool', club: null, weighs: 1003, diameter: 181 },
];

const LEAST_MASS = 1000;
const NAME = 'Discus tent';

/** Whoever is on the start list, with the id of the competitor. */
export interface Reporting {
  readonly line: Line;
  readonly competitorId: string;
}

/**
 * What happens in the tent before the first throw: discuses are registered, weighed and measured, and everybody
 * reports. Gives by name the discus that each throws: of the club, else of the pool.
 */
export async function openDiscusTent(
  official: Client,
  meetId: string,
  { title }: DemoCompetition,
  reporting: readonly Reporting[],
): Promise<ReadonlyMap<string, string>> {
  const clubs = await clubIds(official);
  const passed = new Map<ClubName | null, string>();
  for (const discus of DISCUSES) {
    const implementId = await inspected(official, meetId, discus, clubs);
    if (discus.weighs >= LEAST_MASS) passed.set(discus.club, implementId);
  }
  for (const one of reporting) await report(official, title, one);
  return new Map(reporting.map(({ line: { who } }) => [who, passed.get(PEOPLE[who]?.club ?? null)!]));
}

async function clubIds(official: Client): Promise<ReadonlyMap<string, string>> {
  interface Page {
    readonly edges: readonly { readonly node: { readonly id: string; readonly name: string } }[];
  }
  const page = await official.send<Page>(`{ clubs(first: 100) { edges { node { id name } } } }`, 'clubs', {});
  return new Map(page.edges.map(({ node }) => [node.name, node.id]));
}

async function inspected(
  official: Client,
  meetId: string,
  { label, club, weighs, diameter }: Discus,
  clubs: ReadonlyMap<string, string>,
): Promise<string> {
  const id = idOf(`${NAME}: ${label}`);
  const clubId = club === null ? null : clubs.get(club);
  const discus = { id, meetId, event: 'DISCUS', grams: LEAST_MASS, label, clubId };
  await official.call('implementRegister', discus, 'implement { status }');
  const isLight = weighs < LEAST_MASS;
  const look = {
    ...{ id: idOf(`${NAME}: ${label} weighed`), meetId, implementId: id, grams: weighs },
    dimensions: [{ what: 'DIAMETER', mm: diameter }],
    isKeptBack: isLight,
    note: isLight ? 'the club brings another one' : null,
  };
  await official.call('implementInspect', look, 'inspection { outcome }');
  return id;
}

async function report(
  official: Client,
  title: string,
  { line: { who }, competitorId }: Reporting,
): Promise<void> {
  const entry = { id: idOf(`${title}: ${who} reports`), competitorId, isPresent: true };
  await official.call('competitorCheckIn', entry, 'notices');
}
