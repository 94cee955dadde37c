import type { EventCode } from './codes.js';
import type { FoulCode } from './fouls.js';

/** In which events a foul can occur and by which rule of World Athletics' Technical Rules. */
export interface FoulRule {
  readonly events: readonly EventCode[];
  readonly rule: string;
  /** `read`: in the current numbering; `read in part`: an older or secondary text; `memory`: recalled. */
  readonly basis: 'read' | 'read in part' | 'memory';
}

export interface Foul {
  /** What happened, as a plain sentence. */
  readonly sentence: string;
  /** More than one where the events have rules of their own. */
  readonly rules: readonly FoulRule[];
}

const CIRCLE_THROWS = ['discus', 'shot', 'hammer', 'weight'] as const;
const THROWS = [...CIRCLE_THROWS, 'javelin'] as const;
const HORIZONTAL_JUMPS = ['long-jump', 'triple-jump'] as const;
const ALL = [...THROWS, ...HORIZONTAL_JUMPS, 'high-jump', 'pole-vault'] as const;

/**
 * Every foul in words, with its rule. Rule numbers in the current numbering are from memory except where `basis`
 * says otherwise; the book in force and the referee decide.
 */
export const FOULS: Readonly<Record<FoulCode, Foul>> = {
  TIME: foul('The trial was not started in the time allowed.', [ALL, 'TR25.17', 'read in part']),
  AID: foul('A forbidden aid was used.', [[...THROWS, 'pole-vault'], 'TR32.4-32.5', 'memory']),
  IMPLEMENT: foul('The implement was not checked and approved.', [
    [...THROWS, 'pole-vault'],
    'TR32.2',
    'memory',
  ]),
  RIM: foul('The top of the rim or the ground outside the circle was touched.', [
    CIRCLE_THROWS,
    'TR32.14.2',
    'read in part',
  ]),
  BOARD: foul('The stop board was touched elsewhere than on its inner side.', [
    ['shot'],
    'TR32.14.3',
    'memory',
  ]),
  LINE: foul('A line of the runway or the ground outside it was touched.', [
    ['javelin'],
    'TR32.14.4',
    'memory',
  ]),
  RELEASE: foul('The shot was not put from the shoulder with one hand.', [
    ['shot'],
    'TR33.1',
    'read in part',
  ]),
  DELIVERY: foul('The javelin was not held at the grip or not thrown over the shoulder or upper arm.', [
    ['javelin'],
    'TR38.1.1',
    'read in part',
  ]),
  TURN: foul('The back was fully turned to the arc before the javelin was released.', [
    ['javelin'],
    'TR38.1.3',
    'read in part',
  ]),
  TIP: foul('The metal head was not the first part of the javelin to strike the ground.', [
    ['javelin'],
    'TR38.1.2',
    'read in part',
  ]),
  SECTOR: foul('The implement first struck the ground on or outside a sector line.', [
    THROWS,
    'TR32.16',
    'read in part',
  ]),
  CAGE: foul('The implement touched the cage and the throw does not count for that reason.', [
    ['discus', 'hammer', 'weight'],
    'TR32.14 note',
    'memory',
  ]),
  EARLY: foul('The circle or the runway was left before the implement had landed.', [
    THROWS,
    'TR32.17',
    'read in part',
  ]),
  EXIT: foul('The circle or the runway was not left behind its line.', [THROWS, 'TR32.17', 'read in part']),
  PLANE: foul('The vertical plane of the take-off line was broken.', [
    HORIZONTAL_JUMPS,
    'TR30.1.1',
    'read in part',
  ]),
  SIDE: foul('The take-off was outside an end of the board.', [HORIZONTAL_JUMPS, 'TR30.1.2', 'read in part']),
  SOMERSAULT: foul('A somersault was used.', [HORIZONTAL_JUMPS, 'TR30.1.3', 'read in part']),
  GROUND: foul('The ground outside the pit was touched between take-off and landing.', [
    HORIZONTAL_JUMPS,
    'TR30.1.4',
    'read in part',
  ]),
  LANDSIDE: foul(
    'In landing the ground outside the pit was touched nearer the line than the nearest break.',
    [HORIZONTAL_JUMPS, 'TR30.1.5', 'read in part'],
  ),
  PITEXIT: foul('The pit was left with the first step nearer the line than the nearest break.', [
    HORIZONTAL_JUMPS,
    'TR30.1.6',
    'read in part',
  ]),
  SEQUENCE: foul('The order of hop, step and jump was not kept.', [
    ['triple-jump'],
    'TR31.1-31.2',
    'read in part',
  ]),
  BAR: foul(
    'The bar did not stay up.',
    [['high-jump'], 'TR27.2.1', 'read in part'],
    [['pole-vault'], 'TR28.2.1', 'read'],
  ),
  BARPLANE: foul(
    'The ground or the landing area beyond the plane was touched without clearing the bar.',
    [['high-jump'], 'TR27.2.2', 'read in part'],
    [['pole-vault'], 'TR28.2.2', 'read'],
  ),
  TWOFOOT: foul('The take-off was not from one foot.', [['high-jump'], 'TR27.1', 'read in part']),
  HANDS: foul('The lower hand was moved above the upper one, or the upper one higher.', [
    ['pole-vault'],
    'TR28.2.3',
    'read',
  ]),
  STEADY: foul('The bar was steadied or replaced with the hands.', [['pole-vault'], 'TR28.2.4', 'read']),
};

/** The fouls that can occur in an event, in the order of `FOUL_CODES`, each with its rule. */
export function foulsOf(event: EventCode): readonly (FoulRule & { readonly code: FoulCode })[] {
  return (Object.keys(FOULS) as FoulCode[]).flatMap((code) =>
    FOULS[code].rules.filter((rule) => rule.events.includes(event)).map((rule) => ({ ...rule, code })),
  );
}

function foul(
  sentence: string,
  ...rules: readonly (readonly [readonly EventCode[], string, FoulRule['basis']])[]
): Foul {
  return { sentence, rules: rules.map(([events, rule, basis]) => ({ events, rule, basis })) };
}
