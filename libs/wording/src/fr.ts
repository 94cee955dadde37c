import type { ReasonWords } from './en.js';

export const fr: ReasonWords = {
  'standing.none': 'Pas encore de marque valable',
  'status.NM': 'sans marque',
  'status.DQ': 'disqualifié',
  'status.DNS': 'non partant',
  'status.GUEST': 'hors concours',
  'reason.best': 'meilleure marque {own}',
  'reason.against': 'meilleure marque {own} contre {other}',
  'reason.level': 'à égalité à {level} ; puis {own} contre {other}',
  'reason.noFurther': 'à égalité à {level} ; pas d’autre marque contre {other}',
  'reason.shared': 'à égalité à {level} ; rien ne départage',
  'reason.undecidable': 'à égalité à {level} ; un essai valable n’a pas été mesuré',
  'reason.unmeasured': 'valable, non mesuré',
  'reason.height': '{own} franchi',
  'reason.heightAgainst': '{own} franchi contre {other}',
  'reason.failuresAt': 'tous deux {height} ; échecs à cette hauteur {own} contre {other}',
  'reason.failures': 'tous deux {height} ; échecs en tout {own} contre {other}',
  'reason.jumpOff': 'après le barrage',
  'reason.sharedHeight': 'à égalité à {height} et aux échecs',
};
