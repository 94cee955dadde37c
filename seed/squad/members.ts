/** What is true of one fault of one thrower: the written model that the throws are drawn from. */
export interface TrueFault {
  readonly code: string;
  /** Share of throws with it, at the beginning and at the end of the two seasons. */
  readonly share: readonly [number, number];
  /** What a throw with it is shorter by, as a part of the mark: 0.05 is five per cent. */
  readonly costs: number;
  /** Fouls per throw more with it. */
  readonly fouls: number;
}

export interface Member {
  readonly given: string;
  readonly family: string;
  readonly born: string;
  readonly hand: 'LEFT' | 'RIGHT';
  readonly grams: number;
  readonly stage: 'FIRST_WEEKS' | 'BASICS' | 'DEVELOPING' | 'ADVANCED';
  /** Middle mark of a clean full turn at the beginning and at the end, in centimetres. */
  readonly level: readonly [number, number];
  /** Spread of days and of throws, as a part of the mark. */
  readonly spread: readonly [number, number];
  readonly fouls: number;
  readonly faults: readonly TrueFault[];
}

const late = (share: readonly [number, number], costs: number): TrueFault => {
  return { code: 'DT-14', share, costs, fouls: 0 };
};
/** Seen often, and worth nothing: whoever finds an effect has found chance. */
const gaze: TrueFault = { code: 'DT-06', share: [0.4, 0.35], costs: 0, fouls: 0 };
/** Nothing for distance, much for fouls. */
const balance: TrueFault = { code: 'DT-31', share: [0.35, 0.3], costs: 0, fouls: 0.3 };
const early: TrueFault = { code: 'DT-04', share: [0.5, 0.4], costs: 0.035, fouls: 0 };
/** Rare: two seasons are too few for it. */
const rare: TrueFault = { code: 'DT-12', share: [0.01, 0.01], costs: 0.05, fouls: 0.1 };
/** Of the throwing arm: never pushed for those who grow. */
const arm: TrueFault = { code: 'DT-20', share: [0.4, 0.4], costs: 0.04, fouls: 0 };

const child = { grams: 750, stage: 'BASICS', spread: [0.03, 0.06], fouls: 0.12 } as const;
const junior = { grams: 1000, stage: 'DEVELOPING', spread: [0.02, 0.045], fouls: 0.15 } as const;
const senior = { grams: 1000, stage: 'ADVANCED', spread: [0.015, 0.03], fouls: 0.12 } as const;

export const SQUAD: readonly Member[] = [
  {
    given: 'Bryony',
    family: 'Applemoor',
    born: '2014-03-09',
    hand: 'RIGHT',
    ...child,
    level: [1650, 2050],
    faults: [late([0.6, 0.4], 0.04), gaze],
  },
  {
    given: 'Thea',
    family: 'Cloverdyke',
    born: '2013-11-21',
    hand: 'RIGHT',
    ...child,
    level: [1820, 2240],
    faults: [late([0.5, 0.35], 0.04), balance],
  },
  {
    given: 'Imke',
    family: 'Dunfallow',
    born: '2009-06-17',
    hand: 'RIGHT',
    ...junior,
    level: [3050, 3400],
    faults: [late([0.6, 0.4], 0.05), gaze, arm],
  },
  {
    given: 'Roisin',
    family: 'Eldergrove',
    born: '2009-10-02',
    hand: 'RIGHT',
    ...junior,
    level: [3240, 3520],
    faults: [late([0.5, 0.4], 0.05), gaze, balance],
  },
  {
    given: 'Katla',
    family: 'Fernbarrow',
    born: '2010-02-25',
    hand: 'RIGHT',
    ...junior,
    level: [2880, 3310],
    faults: [late([0.55, 0.35], 0.045), early, gaze],
  },
  {
    given: 'Verity',
    family: 'Greenholt',
    born: '1999-08-13',
    hand: 'RIGHT',
    ...senior,
    level: [4520, 4700],
    faults: [late([0.45, 0.3], 0.045), gaze, rare],
  },
  {
    given: 'Ottoline',
    family: 'Hartsedge',
    born: '1996-12-30',
    hand: 'RIGHT',
    ...senior,
    level: [4810, 4850],
    faults: [early, gaze, balance],
  },
  {
    given: 'Senna',
    family: 'Ivelstone',
    born: '2002-05-05',
    hand: 'LEFT',
    ...senior,
    level: [4330, 4620],
    faults: [late([0.5, 0.35], 0.05), early, gaze],
  },
];

/** How the squad's people are called in ids. */
export function nameOf({ given, family }: Member): string {
  return `${given} ${family}`;
}

/** What the coach looks at in every throw of an athlete; one point less is looked at only when it is noticed. */
export function scopeOf({ faults }: Member): readonly string[] {
  return faults.map(({ code }) => code);
}
