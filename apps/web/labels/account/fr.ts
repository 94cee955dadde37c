import type { AccountLabels } from './en.js';

export const fr: AccountLabels = {
  signOut: 'Se déconnecter',
  'signIn.name': 'Identifiant',
  'signIn.password': 'Mot de passe',
  'signIn.orToken': 'Ou avec le jeton d’un poste, ou son lien :',
  'signIn.withToken': 'Se connecter avec le jeton',
  'signIn.wrong': 'Cela ne convient pas, ou n’est plus valable. Demandez à la personne qui vous l’a donné.',
  'said.rule': 'Règle : {rule}',
  reading: 'Lecture…',
};
