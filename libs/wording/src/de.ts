import type { ReasonWords } from './en.js';

export const de: ReasonWords = {
  'standing.none': 'Noch kein gültiger Versuch',
  'status.NM': 'ohne gültigen Versuch',
  'status.DQ': 'disqualifiziert',
  'status.DNS': 'nicht angetreten',
  'status.GUEST': 'außer Konkurrenz',
  'reason.best': 'Bestweite {own}',
  'reason.against': 'Bestweite {own} gegen {other}',
  'reason.level': 'gleich mit {level}; dann {own} gegen {other}',
  'reason.noFurther': 'gleich mit {level}; keine weitere Weite gegen {other}',
  'reason.shared': 'gleich mit {level}; nichts trennt',
  'reason.undecidable': 'gleich mit {level}; ein gültiger Versuch wurde nicht gemessen',
  'reason.unmeasured': 'gültig, nicht gemessen',
  'reason.height': '{own} übersprungen',
  'reason.heightAgainst': '{own} gegen {other} übersprungen',
  'reason.failuresAt': 'beide {height}; Fehlversuche dort {own} gegen {other}',
  'reason.failures': 'beide {height}; Fehlversuche insgesamt {own} gegen {other}',
  'reason.jumpOff': 'nach dem Stichkampf',
  'reason.sharedHeight': 'gleich bei {height} und in den Fehlversuchen',
};
