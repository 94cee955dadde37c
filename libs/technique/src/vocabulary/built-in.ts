import { builtIn } from './built-in-row.js';
import type { FaultDefinition } from './fault-definition.js';
import { DISCUS_DELIVERY } from './faults/discus-delivery.js';
import { DISCUS_MIDDLE } from './faults/discus-middle.js';
import { DISCUS_START } from './faults/discus-start.js';
import { HAMMER } from './faults/hammer.js';
import { HIGH_JUMP } from './faults/high-jump.js';
import { LONG_JUMP, TRIPLE_JUMP } from './faults/horizontal-jumps.js';
import { JAVELIN } from './faults/javelin.js';
import { SHOT } from './faults/shot.js';

/**
 * Which state of the built-in faults a vocabulary started from. Definitions may be worded better under a new edition;
 * codes keep their meaning and never go away.
 */
export const BUILT_IN_EDITION = '2026';

export const BUILT_IN_FAULTS: readonly FaultDefinition[] = [
  ...builtIn('discus', [...DISCUS_START, ...DISCUS_MIDDLE, ...DISCUS_DELIVERY]),
  ...builtIn('shot', SHOT),
  ...builtIn('hammer', HAMMER),
  ...builtIn('javelin', JAVELIN),
  ...builtIn('long-jump', LONG_JUMP),
  ...builtIn('triple-jump', TRIPLE_JUMP),
  ...builtIn('high-jump', HIGH_JUMP),
];
