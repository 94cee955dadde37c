import type { OfficeLabels } from './en.js';

export const fi: OfficeLabels = {
  office: 'Kilpailutoimisto',
  'section.meet': 'Kilpailut',
  signOut: 'Kirjaudu ulos',
  'signIn.title': 'Kirjaudu kilpailutoimistoon',
  'signIn.name': 'Käyttäjätunnus',
  'signIn.password': 'Salasana',
  'signIn.orToken': 'Tai tehtävän tunnisteella tai sen linkillä:',
  'signIn.withToken': 'Kirjaudu tunnisteella',
  'signIn.wrong': 'Tieto ei täsmää tai ei ole enää voimassa. Kysy kilpailunjohtajalta.',
  'link.asOf': 'Tilanne {time}',
  'link.away': 'Ei verkkoa. Tilanne {time}; mitään ei voi päättää täällä ennen kuin verkko palaa.',
  'meet.choose': 'Mitkä kilpailut?',
  'meet.none': 'Et työskentele tällä hetkellä missään kilpailuissa.',
  'meet.report': 'Ilmoittautuminen {time}',
  'meet.starts': 'Alkaa {time}',
  'meet.remaining': 'jäljellä {count} suoritusta tilanteen mukaan',
  'times.told': 'Kerrottu kaikille: {reason}',
  'said.rule': 'Sääntö: {rule}',
  reading: 'Luetaan…',
};
