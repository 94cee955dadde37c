import type { InAllLanguages } from './in-all-languages.js';

/** What stands in and around a table. `{name}` stands for what is put in. */
export const TABLE = {
  place: ['Place', 'Platz', 'Place', 'Puesto', 'Sija'],
  competitor: ['Competitor', 'Name', 'Concurrent', 'Nombre', 'Nimi'],
  trials: ['Trials', 'Versuche', 'Essais', 'Intentos', 'Yritykset'],
  best: ['Best', 'Bestes', 'Meilleur', 'Mejor', 'Paras'],
  round: ['Round {n}', 'Durchgang {n}', 'Essai {n}', 'Ronda {n}', 'Kierros {n}'],
  bar: ['Bar at {height}', 'Latte auf {height}', 'Barre à {height}', 'Listón a {height}', 'Rima {height}'],
  jumpOff: ['Jump-off', 'Stichkampf', 'Barrage', 'Desempate', 'Uusinta'],
  up: ['Up now', 'An der Reihe', 'À l’essai', 'En turno', 'Vuorossa'],
  next: ['Next', 'Danach', 'Suivant', 'Siguiente', 'Seuraava'],
  then: ['Then', 'Dann', 'Ensuite', 'Después', 'Sitten'],
  entered: ['{n} entered', '{n} gemeldet', '{n} inscrits', '{n} inscritos', '{n} ilmoittautunutta'],
  competitions: ['Competitions', 'Wettbewerbe', 'Concours', 'Pruebas', 'Lajit'],
  time: ['Time', 'Zeit', 'Heure', 'Hora', 'Aika'],
  clubTable: [
    'Club table',
    'Vereinswertung',
    'Classement des clubs',
    'Clasificación de clubes',
    'Seurojen pisteet',
  ],
  club: ['Club', 'Verein', 'Club', 'Club', 'Seura'],
  points: ['Points', 'Punkte', 'Points', 'Puntos', 'Pisteet'],
  provisional: [
    'Not signed yet: {list}.',
    'Noch nicht unterschrieben: {list}.',
    'Pas encore signé : {list}.',
    'Aún sin firmar: {list}.',
    'Allekirjoittamatta: {list}.',
  ],
  noResults: [
    'No results yet.',
    'Noch keine Ergebnisse.',
    'Pas encore de résultats.',
    'Aún no hay resultados.',
    'Ei vielä tuloksia.',
  ],
} as const satisfies Record<string, InAllLanguages>;
