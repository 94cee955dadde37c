/**
 * Deals a field out to groups of equal strength and size. The members are taken best first in tiers of one for each
 * group, forwards and backwards in turn (1 2 3, 3 2 1, …), so that every group has one of each tier.
 *
 * `clubs`: whom to keep apart, aligned with the ranking; `null` stands alone. Clubmates are spread as evenly as can
 * be: of a club with c members every group gets c / groups, rounded down or up. That never conflicts with the tiers
 * (a bipartite graph can be coloured along its edges with as many colours as its largest degree: König, 1916); where
 * the place in turn is taken by a clubmate, members of a tier change groups along such a path.
 *
 * @returns the group of each member, from 0, aligned with the ranking.
 */
export function dealOut(clubs: readonly (string | null)[], groups: number): number[] {
  const squads = squadsOf(clubs, groups);
  const tables: Tables = { tiers: new Map(), squads: new Map() };
  const links = clubs.map(
    (_, rank): Link => ({ rank, tier: Math.floor(rank / groups), squad: squads[rank]! }),
  );
  for (const link of links) {
    const turn = link.rank % groups;
    const inTurn = link.tier % 2 === 0 ? turn : groups - 1 - turn;
    seat(tables, link, groupFor(tables, link, inTurn, groups));
  }
  const dealt = new Array<number>(clubs.length).fill(0);
  for (const seats of tables.tiers.values()) for (const [group, { rank }] of seats) dealt[rank] = group;
  return dealt;
}

/** One member: an edge between the tier and the squad, whose members all go to different groups. */
interface Link {
  readonly rank: number;
  readonly tier: number;
  readonly squad: number;
}

/** Who sits in a group, by tier and by squad. */
type Seats = Map<number, Link>;
interface Tables {
  readonly tiers: Map<number, Seats>;
  readonly squads: Map<number, Seats>;
}

/** A club in squads of one for each group, the best first; who has no club is a squad alone. */
function squadsOf(clubs: readonly (string | null)[], groups: number): number[] {
  const latest = new Map<string, { squad: number; size: number }>();
  let squads = 0;
  return clubs.map((club) => {
    if (club === null) return squads++;
    const open = latest.get(club);
    if (open && open.size < groups) {
      open.size++;
      return open.squad;
    }
    latest.set(club, { squad: squads, size: 1 });
    return squads++;
  });
}

function groupFor(tables: Tables, link: Link, inTurn: number, groups: number): number {
  const all = [inTurn, ...Array.from({ length: groups }, (_, group) => group)];
  const tier = seatsAt(tables.tiers, link.tier);
  const squad = seatsAt(tables.squads, link.squad);
  const free = all.find((group) => !tier.has(group) && !squad.has(group));
  if (free !== undefined) return free;
  const freeInSquad = all.find((group) => !squad.has(group))!;
  const freeInTier = all.find((group) => !tier.has(group))!;
  exchange(tables, link.tier, freeInSquad, freeInTier);
  return freeInSquad;
}

/** Frees a group in a tier: along the path of members who sit in it and in the other, all change to the other one. */
function exchange(tables: Tables, tier: number, group: number, other: number): void {
  const path: Link[] = [];
  for (
    let link = seatsAt(tables.tiers, tier).get(group), next = other;
    link;
    next = next === other ? group : other
  ) {
    path.push(link);
    // Even steps lead from a tier to a squad, odd ones from a squad to a tier.
    const seats =
      path.length % 2 === 1 ? seatsAt(tables.squads, link.squad) : seatsAt(tables.tiers, link.tier);
    link = seats.get(next);
  }
  path.forEach((link, step) => unseat(tables, link, step % 2 === 0 ? group : other));
  path.forEach((link, step) => seat(tables, link, step % 2 === 0 ? other : group));
}

function seat(tables: Tables, link: Link, group: number): void {
  seatsAt(tables.tiers, link.tier).set(group, link);
  seatsAt(tables.squads, link.squad).set(group, link);
}

function unseat(tables: Tables, link: Link, group: number): void {
  seatsAt(tables.tiers, link.tier).delete(group);
  seatsAt(tables.squads, link.squad).delete(group);
}

function seatsAt(tables: Map<number, Seats>, at: number): Seats {
  const seats = tables.get(at) ?? new Map<number, Link>();
  tables.set(at, seats);
  return seats;
}
