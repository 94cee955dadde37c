/** English, the key set of every language. `{name}` stands for what is put in. */
export const en = {
  office: 'Office',
  'section.meet': 'Meet',
  signOut: 'Sign out',
  'signIn.title': 'Sign in to the office',
  'signIn.name': 'Login name',
  'signIn.password': 'Password',
  'signIn.orToken': 'Or with the token of a post, or its link:',
  'signIn.withToken': 'Sign in with the token',
  'signIn.wrong': 'That does not fit, or does not hold any more. Ask the meet director.',
  'link.asOf': 'As of {time}',
  'link.away': 'No network. This is as of {time}; nothing can be decided here until it is back.',
  'meet.choose': 'Which meet?',
  'meet.none': 'You work at no meet at the moment.',
  'meet.report': 'Report at {time}',
  'meet.starts': 'Starts at {time}',
  'meet.remaining': '{count} trials to come as it stands',
  'times.told': 'Told to everybody: {reason}',
  'said.rule': 'Rule: {rule}',
  reading: 'Reading…',
} as const;

export type OfficeKey = keyof typeof en;
export type OfficeLabels = Readonly<Record<OfficeKey, string>>;
