import { BUILT_IN_EDITION, BUILT_IN_FAULTS } from './built-in.js';
import type { FaultDefinition } from './fault-definition.js';
import { phasesOf } from './phases.js';
import { isTaught, type Stage } from './stage.js';
import type { TechniqueEvent, Variant } from './technique-event.js';

/** What happened to a code after it came into use. */
export type CodeChange =
  | { readonly kind: 'retired'; readonly code: string }
  /** Read as the other code from now on, also what was noted before. */
  | { readonly kind: 'merged'; readonly code: string; readonly into: string }
  /** Retired; what was noted stays on it, new notes go to its parts. */
  | { readonly kind: 'split'; readonly code: string; readonly into: readonly string[] };

/** The built-in faults with a club's own beside them. A value: every change makes a new one. */
export interface Vocabulary {
  readonly edition: string;
  readonly builtIn: readonly FaultDefinition[];
  readonly own: readonly FaultDefinition[];
  readonly changes: readonly CodeChange[];
  /** Built-in codes that the club does not want to be offered. They stay readable. */
  readonly hidden: readonly string[];
}

export function newVocabulary(): Vocabulary {
  return { edition: BUILT_IN_EDITION, builtIn: BUILT_IN_FAULTS, own: [], changes: [], hidden: [] };
}

export function definitionOf(vocabulary: Vocabulary, code: string): FaultDefinition | null {
  const all = [...vocabulary.builtIn, ...vocabulary.own];
  return all.find((definition) => definition.code === code) ?? null;
}

/** Whether new notes may use a code. */
export function isActive({ changes }: Vocabulary, code: string): boolean {
  return changes.every((change) => change.code !== code);
}

/** Under which code a note is read: the one it was merged into, as far as that goes; else its own. */
export function readAs({ changes }: Vocabulary, code: string): string {
  let current = code;
  for (let steps = 0; steps <= changes.length; steps++) {
    const merged = changes.find((change) => change.kind === 'merged' && change.code === current);
    if (merged?.kind !== 'merged') return current;
    current = merged.into;
  }
  return current;
}

/** Every code that is read as this one, itself first. */
export function codesReadAs(vocabulary: Vocabulary, code: string): readonly string[] {
  const merged = vocabulary.changes.filter((change) => change.kind === 'merged').map((change) => change.code);
  return [code, ...merged.filter((other) => other !== code && readAs(vocabulary, other) === code)];
}

export interface Offer {
  readonly event: TechniqueEvent;
  readonly variant?: Variant;
  readonly stage: Stage;
}

/** What a coach is offered for a throw, in the order of the throw, and what is "not taught yet". */
export interface Offered {
  readonly taught: readonly FaultDefinition[];
  readonly notTaughtYet: readonly FaultDefinition[];
}

export function offered(vocabulary: Vocabulary, { event, variant, stage }: Offer): Offered {
  const phases = phasesOf(event, variant).map(({ code }) => code);
  const fits = ({ code, event: of, phase, variants }: FaultDefinition): boolean =>
    of === event &&
    phases.includes(phase) &&
    (variants === undefined || variant === undefined || variants.includes(variant)) &&
    isActive(vocabulary, code) &&
    !vocabulary.hidden.includes(code);
  const inOrder = [...vocabulary.builtIn, ...vocabulary.own]
    .filter(fits)
    .sort((a, b) => phases.indexOf(a.phase) - phases.indexOf(b.phase) || (a.code < b.code ? -1 : 1));
  return {
    taught: inOrder.filter(({ relevantFrom }) => isTaught(relevantFrom, stage)),
    notTaughtYet: inOrder.filter(({ relevantFrom }) => !isTaught(relevantFrom, stage)),
  };
}
