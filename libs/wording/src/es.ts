import type { ReasonWords } from './en.js';

export const es: ReasonWords = {
  'standing.none': 'Aún sin marca válida',
  'status.NM': 'sin marca',
  'status.DQ': 'descalificado',
  'status.DNS': 'no se presentó',
  'status.GUEST': 'fuera de concurso',
  'reason.best': 'mejor {own}',
  'reason.against': 'mejor {own} contra {other}',
  'reason.level': 'igualados en {level}; después {own} contra {other}',
  'reason.noFurther': 'igualados en {level}; sin otra marca contra {other}',
  'reason.shared': 'igualados en {level}; nada los separa',
  'reason.undecidable': 'igualados en {level}; un intento válido no se midió',
  'reason.unmeasured': 'válido, no medido',
  'reason.height': '{own} superado',
  'reason.heightAgainst': '{own} contra {other}',
  'reason.failuresAt': 'ambos {height}; fallos en ella {own} contra {other}',
  'reason.failures': 'ambos {height}; fallos en total {own} contra {other}',
  'reason.jumpOff': 'tras el desempate',
  'reason.sharedHeight': 'igualados en {height} y en fallos',
};
