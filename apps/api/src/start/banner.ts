import type { POSTS } from '../platform/identity/grant.js';

export interface Running {
  readonly url: string;
  /** Null: no explorer is served. */
  readonly explorerUrl: string | null;
  /** Null: the desk was not built. */
  readonly deskUrl: string | null;
  /** The port that was asked for, if another process has it. */
  readonly takenPort: number | null;
  readonly tokens: Readonly<Record<(typeof POSTS)[number], string>> | null;
}

/** What a person at a terminal wants to know once the server answers. */
export function banner({ url, explorerUrl, deskUrl, takenPort, tokens }: Running): string {
  const lines = ['', `Sectorline answers at ${url}/graphql`];
  if (takenPort !== null)
    lines.push(`(Port ${takenPort} is taken by another program, so this is the next free one.)`);
  if (explorerUrl !== null) lines.push('', 'Explorer, with a query to begin with:', `  ${explorerUrl}`);
  if (deskUrl !== null)
    lines.push('', 'Desk, where officials record, for the competition that is going on:', `  ${deskUrl}`);
  if (tokens !== null) {
    lines.push('', 'Tokens of the demo meet, for the header "Authorization: Bearer …":');
    for (const [role, token] of Object.entries(tokens)) lines.push(`  ${role.padEnd(8)}  ${token}`);
  }
  return `${[...lines, '', 'Stop with Ctrl+C.', ''].join('\n')}\n`;
}
