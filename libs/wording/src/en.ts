/** English, the key set of every language. `{name}` stands for what is put in. */
export const en = {
  'standing.none': 'No valid mark yet',
  'status.NM': 'no mark',
  'status.DQ': 'disqualified',
  'status.DNS': 'did not start',
  'status.GUEST': 'guest',
  'reason.best': 'best {own}',
  'reason.against': 'best {own} against {other}',
  'reason.level': 'level on {level}; then {own} against {other}',
  'reason.noFurther': 'level on {level}; no further mark against {other}',
  'reason.shared': 'level on {level}; nothing separates',
  'reason.undecidable': 'level on {level}; a valid trial was not measured',
  'reason.unmeasured': 'valid, not measured',
  'reason.height': 'cleared {own}',
  'reason.heightAgainst': 'cleared {own} against {other}',
  'reason.failuresAt': 'both {height}; failures there {own} against {other}',
  'reason.failures': 'both {height}; failures in all {own} against {other}',
  'reason.jumpOff': 'after the jump-off',
  'reason.sharedHeight': 'level on {height} and on failures',
} as const;

export type ReasonKey = keyof typeof en;
export type ReasonWords = Readonly<Record<ReasonKey, string>>;
