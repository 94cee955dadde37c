import type { ProtestGround, ProtestRules, ProtestWindow } from '../rule-sets/protest-rules.js';

/**
 * `in time`: also where the result was not announced yet, so that no time runs. `late`: after its time. `not taken`: the
 * rule set takes no protest on this ground. All are kept; what follows from it the referee decides.
 */
export type Timeliness = 'in time' | 'late' | 'not taken';

const MINUTE_MS = 60_000;

/** Until when protests on a ground may be made; `null`: no time runs. Milliseconds since the epoch. */
export function windowUntil(
  { windows }: ProtestRules,
  ground: ProtestGround,
  announcedAt: number | null,
): number | null {
  const { value } = windows[ground];
  return announcedAt === null || typeof value !== 'number' ? null : announcedAt + value * MINUTE_MS;
}

/** The last moment counts. */
export function timelinessOf(
  rules: ProtestRules,
  ground: ProtestGround,
  announcedAt: number | null,
  lodgedAt: number,
): Timeliness {
  const window: ProtestWindow = rules.windows[ground].value;
  if (window === 'never') return 'not taken';
  const until = windowUntil(rules, ground, announcedAt);
  return until !== null && lodgedAt > until ? 'late' : 'in time';
}

/** An appeal, from when the decision was told. */
export function appealTimeliness({ appealMinutes }: ProtestRules, decidedAt: number, at: number): Timeliness {
  const { value } = appealMinutes;
  return value !== null && at > decidedAt + value * MINUTE_MS ? 'late' : 'in time';
}
