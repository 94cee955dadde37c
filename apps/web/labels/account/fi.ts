import type { AccountLabels } from './en.js';

export const fi: AccountLabels = {
  signOut: 'Kirjaudu ulos',
  'signIn.name': 'Käyttäjätunnus',
  'signIn.password': 'Salasana',
  'signIn.orToken': 'Tai tehtävän tunnisteella tai sen linkillä:',
  'signIn.withToken': 'Kirjaudu tunnisteella',
  'signIn.wrong': 'Tieto ei täsmää tai ei ole enää voimassa. Kysy siltä, joka sen antoi.',
  'said.rule': 'Sääntö: {rule}',
  reading: 'Luetaan…',
};
