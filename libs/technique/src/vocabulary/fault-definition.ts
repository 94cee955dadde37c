import type { Instant } from './phases.js';
import type { Stage } from './stage.js';
import type { TechniqueEvent, Variant } from './technique-event.js';

export const SEGMENTS = [
  'HEAD',
  'TRUNK',
  'SHOULDER_LINE',
  'HIP_LINE',
  'THROW_ARM',
  'BLOCK_ARM',
  'THROW_LEG',
  'BLOCK_LEG',
  'WHOLE_BODY',
  'IMPLEMENT',
] as const;
export type Segment = (typeof SEGMENTS)[number];

export type Plane = 'sagittal' | 'frontal' | 'transverse' | 'timing';
export type View = 'side' | 'rear' | 'front' | 'above';

/**
 * Something that a throw can show. Texts are side-neutral: `{throw}` stands for the side of the throwing arm, `{block}`
 * for the other one; `sidedText` puts words in their place. A code is never re-used and its definition never removed.
 */
export interface FaultDefinition {
  /** `DT-04`; of a club `DT-X04`. */
  readonly code: string;
  readonly event: TechniqueEvent;
  readonly name: string;
  readonly looksLike: string;
  /** What coaches see with it; nothing that was shown to follow from it. */
  readonly mayGoWith: string;
  /** For children: what to try, said as something to do. */
  readonly point: string;
  readonly phase: string;
  readonly instant?: Instant;
  readonly segment: Segment;
  readonly plane: Plane;
  readonly view: View;
  /** What the coach's cue will be about. */
  readonly cue: string;
  /** Only in these variants; in all that have the phase where it is left out. */
  readonly variants?: readonly Variant[];
  /** Cannot be present in the same throw. */
  readonly opposite?: string;
  readonly relevantFrom: Stage;
  /** Plausibly goes with fouls. */
  readonly nearFouls: boolean;
  /** Shown wherever the fault is shown. */
  readonly caution: string | null;
  readonly owner: 'built-in' | 'own';
  /** Where the row is from: a coaches' survey, a public page, or the trade's own terms from memory. */
  readonly basis: 'memory' | 'survey' | 'page' | 'study' | 'own';
}

export const INJURY_CAUTION =
  'If the athlete reports pain, stop and refer to a qualified health professional. ' +
  'This is a technique note, not medical advice.';

/** Points about the throwing arm and the shoulders, which are never pushed for a growing athlete. */
export function isArmOrShoulder({ segment, caution }: FaultDefinition): boolean {
  return segment === 'THROW_ARM' || segment === 'SHOULDER_LINE' || caution !== null;
}
