import type { TechniqueEvent, Variant } from './technique-event.js';

/** What carries the body: both feet, the one on the free-arm (block) or throwing-arm (throw) side, or nothing. */
export type Support = 'double' | 'block' | 'throw' | 'none' | 'any';

/** Moments at which phases meet. Sides are those of the throw: for a right-hander throw is right and block is left. */
export const INSTANTS = {
  START: 'start',
  MBS: 'furthest backswing',
  TSO: '{throw} foot off the ground',
  BSO: '{block} foot off the ground',
  TSD: '{throw} foot down',
  BSD: '{block} foot down',
  REL: 'release',
  END: 'balance regained',
  LOW: 'low point of the hammer',
  HIGH: 'high point of the hammer',
  WITHDRAWN: 'implement withdrawn',
  CURVE: 'start of the curve',
  PENULTIMATE: 'last step but one down',
  TD: 'take-off foot down',
  KNEE: 'take-off knee bent most',
  TO: 'take-off',
  HOP_TD: 'down after the hop',
  STEP_TD: 'down after the step',
  BAR: 'highest over the bar',
  LANDED: 'landed',
} as const;
export type Instant = keyof typeof INSTANTS;

export interface Phase {
  readonly code: string;
  /** From 0 in the order of the throw: what is seen late may have begun early. */
  readonly order: number;
  readonly name: string;
  readonly from: Instant;
  readonly to: Instant;
  readonly support: Support;
  /** Seconds, of elite throwers; `null` where no figure is at hand. Never a target for a child. */
  readonly eliteSeconds: {
    readonly low: number;
    readonly high: number | null;
    readonly basis: string;
  } | null;
}

type Row = readonly [
  code: string,
  name: string,
  from: Instant,
  to: Instant,
  support: Support,
  low?: number,
  high?: number,
];

function phases(rows: readonly Row[], basis = 'memory'): readonly Phase[] {
  return rows.map(([code, name, from, to, support, low, high], order) => ({
    code,
    order,
    name,
    from,
    to,
    support,
    eliteSeconds: low === undefined ? null : { low, high: high ?? null, basis },
  }));
}

const LECTURE = 'a published lecture on the mechanics of the discus throw';

/** Discus: five or six phases between six instants, as in the literature on elite throws (Leigh and others). */
const DISCUS = phases(
  [
    ['P0', 'backswing', 'START', 'MBS', 'double'],
    ['P1', 'first double support', 'MBS', 'TSO', 'double', 0.6],
    ['P2', 'first single support', 'TSO', 'BSO', 'block', 0.45, 0.55],
    ['P3', 'flight', 'BSO', 'TSD', 'none', 0.08, 0.12],
    ['P4', 'second single support', 'TSD', 'BSD', 'throw', 0.17, 0.22],
    ['P5', 'delivery', 'BSD', 'REL', 'double', 0.15, 0.15],
    ['P6', 'release and recovery', 'REL', 'END', 'any'],
  ],
  LECTURE,
);

const SHOT_ROTATIONAL = phases([
  ['P0', 'start', 'START', 'MBS', 'double'],
  ['P1', 'first double support', 'MBS', 'TSO', 'double'],
  ['P2', 'first single support', 'TSO', 'BSO', 'block'],
  ['P3', 'flight', 'BSO', 'TSD', 'none'],
  ['P4', 'second single support', 'TSD', 'BSD', 'throw', 0.15, 0.25],
  ['P5', 'delivery', 'BSD', 'REL', 'double', 0.2, 0.25],
  ['P6', 'release and recovery', 'REL', 'END', 'any'],
]);

/** Coded like the rotational put where the body does the same, so that one fault has one phase in both. */
const SHOT_GLIDE = phases([
  ['P0', 'low position', 'START', 'MBS', 'throw'],
  ['P1', 'start and drive', 'MBS', 'TSO', 'throw'],
  ['P3', 'glide', 'TSO', 'TSD', 'none'],
  ['P4', 'between the feet', 'TSD', 'BSD', 'throw', 0.1, 0.15],
  ['P5', 'delivery', 'BSD', 'REL', 'double', 0.22, 0.3],
  ['P6', 'release and recovery', 'REL', 'END', 'any'],
]);

/** Each turn is a double and a single support; the phases are those of any turn. */
const HAMMER = phases([
  ['SWINGS', 'swings', 'START', 'TSO', 'double'],
  ['SINGLE', 'single support of a turn', 'TSO', 'TSD', 'block'],
  ['DOUBLE', 'double support of a turn', 'TSD', 'TSO', 'double'],
  ['DELIVERY', 'delivery', 'TSD', 'REL', 'double'],
  ['RECOVERY', 'recovery', 'REL', 'END', 'any'],
]);

const JAVELIN = phases([
  ['APPROACH', 'approach', 'START', 'WITHDRAWN', 'any'],
  ['CROSS', 'cross steps', 'WITHDRAWN', 'TSO', 'any'],
  ['IMPULSE', 'impulse stride', 'TSO', 'TSD', 'none'],
  ['SINGLE', 'between the feet', 'TSD', 'BSD', 'throw'],
  ['DELIVERY', 'delivery', 'BSD', 'REL', 'double', 0.1, 0.15],
  ['RECOVERY', 'recovery', 'REL', 'END', 'any'],
]);

const LONG_JUMP = phases([
  ['APPROACH', 'approach', 'START', 'PENULTIMATE', 'any'],
  ['LAST-STEPS', 'last two steps', 'PENULTIMATE', 'TD', 'any'],
  ['TAKE-OFF', 'take-off', 'TD', 'TO', 'any', 0.11, 0.13],
  ['FLIGHT', 'flight', 'TO', 'LANDED', 'none'],
  ['LANDING', 'landing', 'LANDED', 'END', 'any'],
]);

const TRIPLE_JUMP = phases([
  ['APPROACH', 'approach', 'START', 'PENULTIMATE', 'any'],
  ['LAST-STEPS', 'last two steps', 'PENULTIMATE', 'TD', 'any'],
  ['TAKE-OFF', 'take-off', 'TD', 'TO', 'any'],
  ['HOP', 'hop', 'TO', 'HOP_TD', 'none'],
  ['STEP', 'step', 'HOP_TD', 'STEP_TD', 'none'],
  ['FLIGHT', 'jump', 'STEP_TD', 'LANDED', 'none'],
  ['LANDING', 'landing', 'LANDED', 'END', 'any'],
]);

const HIGH_JUMP = phases([
  ['APPROACH', 'straight approach', 'START', 'CURVE', 'any'],
  ['CURVE', 'curve', 'CURVE', 'PENULTIMATE', 'any'],
  ['LAST-STEPS', 'last two steps', 'PENULTIMATE', 'TD', 'any'],
  ['TAKE-OFF', 'take-off', 'TD', 'TO', 'any', 0.14, 0.18],
  ['CLEARANCE', 'over the bar', 'TO', 'BAR', 'none'],
  ['LANDING', 'landing', 'BAR', 'LANDED', 'none'],
]);

const DELIVERY_ONLY: ReadonlySet<string> = new Set(['P5', 'P6', 'DELIVERY', 'RECOVERY']);

/** The phases of an event in order, or of one variant of it: a standing throw has only delivery and recovery. */
export function phasesOf(event: TechniqueEvent, variant?: Variant): readonly Phase[] {
  const all = variant === 'glide' ? SHOT_GLIDE : WHOLE[event];
  const short = variant === 'standing' || variant === 'step-in' || variant === 'half-turn';
  return short ? all.filter(({ code }) => DELIVERY_ONLY.has(code)) : all;
}

const WHOLE: Readonly<Record<TechniqueEvent, readonly Phase[]>> = {
  discus: DISCUS,
  shot: SHOT_ROTATIONAL,
  hammer: HAMMER,
  javelin: JAVELIN,
  'long-jump': LONG_JUMP,
  'triple-jump': TRIPLE_JUMP,
  'high-jump': HIGH_JUMP,
};

/** Where a phase stands in its event; −1 for a code that the event does not have. */
export function phaseOrder(event: TechniqueEvent, phase: string): number {
  return WHOLE[event].find(({ code }) => code === phase)?.order ?? -1;
}
