import type { OfficeLabels } from './en.js';

export const fr: OfficeLabels = {
  office: 'Secrétariat',
  'section.meet': 'Réunion',
  signOut: 'Se déconnecter',
  'signIn.title': 'Se connecter au secrétariat',
  'signIn.name': 'Identifiant',
  'signIn.password': 'Mot de passe',
  'signIn.orToken': 'Ou avec le jeton d’un poste, ou son lien :',
  'signIn.withToken': 'Se connecter avec le jeton',
  'signIn.wrong': 'Cela ne convient pas, ou n’est plus valable. Demandez à la direction de la réunion.',
  'link.asOf': 'Situation à {time}',
  'link.away': 'Pas de réseau. Situation à {time} ; rien ne peut être décidé ici avant son retour.',
  'meet.choose': 'Quelle réunion ?',
  'meet.none': 'Vous ne travaillez à aucune réunion en ce moment.',
  'meet.report': 'Présentation à {time}',
  'meet.starts': 'Début à {time}',
  'meet.remaining': 'encore {count} essais dans l’état actuel',
  'times.told': 'Annoncé à tous : {reason}',
  'said.rule': 'Règle : {rule}',
  reading: 'Lecture…',
};
