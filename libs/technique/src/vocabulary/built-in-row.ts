import { INJURY_CAUTION, type FaultDefinition } from './fault-definition.js';
import type { TechniqueEvent } from './technique-event.js';

/** A built-in fault as its table writes it: what most have is left out. */
export type BuiltInRow = Omit<FaultDefinition, 'event' | 'nearFouls' | 'caution' | 'owner' | 'basis'> &
  Partial<Pick<FaultDefinition, 'nearFouls' | 'basis'>> & { readonly injuryCaution?: boolean };

export function builtIn(event: TechniqueEvent, rows: readonly BuiltInRow[]): readonly FaultDefinition[] {
  return rows.map(({ injuryCaution = false, nearFouls = false, basis = 'memory', ...row }) => ({
    ...row,
    event,
    nearFouls,
    basis,
    caution: injuryCaution ? INJURY_CAUTION : null,
    owner: 'built-in',
  }));
}
