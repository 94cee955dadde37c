import type { NamedChance } from './chance.js';
import type { Member } from './members.js';

/** A throw as the model has it: what was there, and what came of it. */
export interface ModelThrow {
  readonly present: readonly string[];
  readonly isFoul: boolean;
  readonly markCm: number;
}

/** Days of the two seasons, as parts of their whole. */
export function between([first, last]: readonly [number, number], at: number): number {
  return first + (last - first) * at;
}

/** How much a day is better or worse than the days around it. */
export function dayOf({ spread }: Member, chance: NamedChance): number {
  return spread[0] * chance.normal();
}

/**
 * One full turn: the level of the time, the day, what each fault costs, and chance, multiplied; a foul by the thrower's
 * own rate and what each fault adds to it. Marks and fouls depend on nothing else.
 * @param at from 0, the beginning of the first season, to 1, the end of the second
 * @param day of `dayOf`
 */
export function throwOnce(member: Member, at: number, day: number, chance: NamedChance): ModelThrow {
  const present = member.faults.filter(({ share }) => chance.happens(between(share, at)));
  const loss = present.reduce((sum, { costs }) => sum + Math.log(1 - costs), 0);
  const log = Math.log(between(member.level, at)) + day + loss + member.spread[1] * chance.normal();
  const fouls = present.reduce((sum, one) => sum + one.fouls, member.fouls);
  return {
    present: present.map(({ code }) => code),
    isFoul: chance.happens(fouls),
    markCm: Math.round(Math.exp(log)),
  };
}

export function metres(markCm: number): string {
  return `${Math.floor(markCm / 100)}.${String(markCm % 100).padStart(2, '0')}`;
}
