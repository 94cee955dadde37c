/**
 * Conversion for display and lists only. Places and records hang on the unit in which a mark was measured.
 */
export interface ImperialStyle {
  /** To what step the converted mark is lowered. */
  readonly step: 'quarter' | 'inch';
  /** Heights and distances are lifted by different amounts before they are lowered. */
  readonly kind: 'vertical' | 'other';
  /** `list`: as statistics handbooks convert; `truncated`: as some scoreboards do. Absent: `list`. */
  readonly method?: 'list' | 'truncated';
}

/** Thousandths of a centimetre added by the list method before dividing by 2.54. */
const LIST_LIFT = { vertical: 200, other: 499 } as const;

/**
 * A metric mark in quarter inches. The list method adds 0.2 cm to a height and 0.499 cm to a distance, divides by
 * 2.54 and takes the lower quarter inch or inch. In integers, since in binary floating point 2.03 m would miss
 * 80 inches.
 */
export function toImperial(cm: number, style: ImperialStyle): number {
  const lift = style.method === 'truncated' ? 0 : LIST_LIFT[style.kind];
  // A quarter inch is 635 thousandths of a centimetre.
  const quarterInches = Math.floor((cm * 1000 + lift) / 635);
  return style.step === 'inch' ? quarterInches - (quarterInches % 4) : quarterInches;
}

/** An imperial mark in centimetres: 2.54 cm to the inch exactly, then the lower centimetre. */
export function toMetric(quarterInches: number): number {
  return Math.floor((quarterInches * 635) / 1000);
}
