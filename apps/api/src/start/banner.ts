import type { POSTS } from '../platform/identity/grant.js';
import type { DemoPerson } from './demo-people.js';
import type { FirstAdministrator } from './first-administrator.js';

export interface Running {
  readonly url: string;
  /** Null: no explorer is served. */
  readonly explorerUrl: string | null;
  /** Null: the desk was not built. */
  readonly deskUrl: string | null;
  /** Null: it was not built. */
  readonly officeUrl: string | null;
  /** Null: it was not built. */
  readonly notebookUrl: string | null;
  /** The port that was asked for, if another process has it. */
  readonly takenPort: number | null;
  readonly tokens: Readonly<Record<(typeof POSTS)[number], string>> | null;
  /** Of the demonstration. */
  readonly people: readonly DemoPerson[] | null;
  /** Made by this start; null: there was an administrator. */
  readonly firstAdministrator: FirstAdministrator | null;
}

/** What a person at a terminal wants to know once the server answers. */
export function banner(running: Running): string {
  const { url, explorerUrl, deskUrl, officeUrl, notebookUrl, takenPort, tokens, people, firstAdministrator } =
    running;
  const lines = ['', `Sectorline answers at ${url}/graphql`];
  if (takenPort !== null)
    lines.push(`(Port ${takenPort} is taken by another program, so this is the next free one.)`);
  if (explorerUrl !== null) lines.push('', 'Explorer, with a query to begin with:', `  ${explorerUrl}`);
  if (deskUrl !== null)
    lines.push('', 'Desk, where officials record, for the competition that is going on:', `  ${deskUrl}`);
  if (officeUrl !== null)
    lines.push('', 'Office, where director and referee decide and sign:', `  ${officeUrl}`);
  if (notebookUrl !== null)
    lines.push('', `Notebook, where a coach writes and reads${coachHint(people)}:`, `  ${notebookUrl}`);
  lines.push('', 'Pages for everybody, live:', `  ${url}/`);
  if (tokens !== null) {
    lines.push('', 'Tokens of the demo meet, for the header "Authorization: Bearer …":');
    for (const [role, token] of Object.entries(tokens)) lines.push(`  ${role.padEnd(8)}  ${token}`);
  }
  if (people !== null) {
    lines.push('', 'People of the demo, with passwords that hold until the next start:');
    for (const { loginName, password } of people) lines.push(`  ${loginName.padEnd(14)}  ${password}`);
  }
  if (firstAdministrator !== null) lines.push('', ...administratorLines(firstAdministrator));
  return `${[...lines, '', 'Stop with Ctrl+C.', ''].join('\n')}\n`;
}

/** What a coach writes says who wrote it, so a person signs in; no token of a post does. */
function coachHint(people: Running['people']): string {
  const coach = people?.find(({ loginName }) => loginName.endsWith('.coach'));
  return coach ? ` (sign in as ${coach.loginName}, below)` : '';
}

/** Shown once: only the hash of the code is kept. */
export function administratorLines({ loginName, code }: FirstAdministrator): string[] {
  return [
    'The first administrator, shown this once:',
    `  login name     ${loginName}`,
    `  one-time code  ${code}`,
    'Choose a password with it (mutation passwordSetUp) within seven days. If it is lost: npm run token.',
  ];
}
