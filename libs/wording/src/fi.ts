import type { ReasonWords } from './en.js';

export const fi: ReasonWords = {
  'standing.none': 'Ei vielä hyväksyttyä tulosta',
  'status.NM': 'ei tulosta',
  'status.DQ': 'hylätty kilpailusta',
  'status.DNS': 'ei startannut',
  'status.GUEST': 'kilpailun ulkopuolella',
  'reason.best': 'paras {own}',
  'reason.against': 'paras {own}, edellä {other}',
  'reason.level': 'tasan {level}; sitten {own}, edellä {other}',
  'reason.noFurther': 'tasan {level}; ei muuta tulosta, edellä {other}',
  'reason.shared': 'tasan {level}; mikään ei erota',
  'reason.undecidable': 'tasan {level}; yhtä hyväksyttyä ei mitattu',
  'reason.unmeasured': 'hyväksytty, ei mitattu',
  'reason.height': 'ylitti {own}',
  'reason.heightAgainst': 'ylitti {own}, edellä {other}',
  'reason.failuresAt': 'molemmat {height}; pudotuksia siinä {own}, edellä {other}',
  'reason.failures': 'molemmat {height}; pudotuksia yhteensä {own}, edellä {other}',
  'reason.jumpOff': 'uusinnan jälkeen',
  'reason.sharedHeight': 'tasan {height} ja pudotuksissa',
};
