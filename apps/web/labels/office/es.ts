import type { OfficeLabels } from './en.js';

export const es: OfficeLabels = {
  office: 'Secretaría',
  'section.meet': 'Competición',
  signOut: 'Cerrar sesión',
  'signIn.title': 'Entrar en la secretaría',
  'signIn.name': 'Nombre de usuario',
  'signIn.password': 'Contraseña',
  'signIn.orToken': 'O con el código de un puesto, o su enlace:',
  'signIn.withToken': 'Entrar con el código',
  'signIn.wrong': 'No coincide o ya no es válido. Pregunte a la dirección de la competición.',
  'link.asOf': 'A las {time}',
  'link.away': 'Sin red. Situación de las {time}; hasta que vuelva no se puede decidir nada aquí.',
  'meet.choose': '¿Qué competición?',
  'meet.none': 'Ahora no trabaja en ninguna competición.',
  'meet.report': 'Presentarse a las {time}',
  'meet.starts': 'Empieza a las {time}',
  'meet.remaining': 'quedan {count} intentos por ahora',
  'times.told': 'Comunicado a todos: {reason}',
  'said.rule': 'Regla: {rule}',
  reading: 'Leyendo…',
};
