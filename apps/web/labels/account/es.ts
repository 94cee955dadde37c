import type { AccountLabels } from './en.js';

export const es: AccountLabels = {
  signOut: 'Cerrar sesión',
  'signIn.name': 'Nombre de usuario',
  'signIn.password': 'Contraseña',
  'signIn.orToken': 'O con el código de un puesto, o su enlace:',
  'signIn.withToken': 'Entrar con el código',
  'signIn.wrong': 'No coincide o ya no es válido. Pregunte a quien se lo dio.',
  'said.rule': 'Regla: {rule}',
  reading: 'Leyendo…',
};
