import type { AccountLabels } from './en.js';

export const de: AccountLabels = {
  signOut: 'Abmelden',
  'signIn.name': 'Anmeldename',
  'signIn.password': 'Passwort',
  'signIn.orToken': 'Oder mit dem Token eines Postens, oder dessen Link:',
  'signIn.withToken': 'Mit dem Token anmelden',
  'signIn.wrong': 'Das passt nicht oder gilt nicht mehr. Bitte fragen, wer es ausgegeben hat.',
  'said.rule': 'Regel: {rule}',
  reading: 'Wird gelesen…',
};
