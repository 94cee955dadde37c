import type { OfficeLabels } from './en.js';

export const de: OfficeLabels = {
  office: 'Wettkampfbüro',
  'section.meet': 'Veranstaltung',
  signOut: 'Abmelden',
  'signIn.title': 'Im Wettkampfbüro anmelden',
  'signIn.name': 'Anmeldename',
  'signIn.password': 'Passwort',
  'signIn.orToken': 'Oder mit dem Token eines Postens, oder dessen Link:',
  'signIn.withToken': 'Mit dem Token anmelden',
  'signIn.wrong': 'Das passt nicht oder gilt nicht mehr. Bitte die Wettkampfleitung fragen.',
  'link.asOf': 'Stand {time}',
  'link.away': 'Kein Netz. Stand {time}; bis es wieder da ist, kann hier nichts entschieden werden.',
  'meet.choose': 'Welche Veranstaltung?',
  'meet.none': 'Sie arbeiten zurzeit bei keiner Veranstaltung.',
  'meet.report': 'Melden um {time}',
  'meet.starts': 'Beginn {time}',
  'meet.remaining': 'noch {count} Versuche nach jetzigem Stand',
  'times.told': 'Allen mitgeteilt: {reason}',
  'said.rule': 'Regel: {rule}',
  reading: 'Wird gelesen…',
};
