/** English, the key set of every language: what every page with a sign-in by name says. */
export const en = {
  signOut: 'Sign out',
  'signIn.name': 'Login name',
  'signIn.password': 'Password',
  'signIn.orToken': 'Or with the token of a post, or its link:',
  'signIn.withToken': 'Sign in with the token',
  'signIn.wrong': 'That does not fit, or does not hold any more. Ask whoever gave it to you.',
  'said.rule': 'Rule: {rule}',
  reading: 'Reading…',
} as const;

export type AccountKey = keyof typeof en;
export type AccountLabels = Readonly<Record<AccountKey, string>>;
