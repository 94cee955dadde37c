import type { Severity } from '../faults/assessed.js';

/** It says how far off something was, never how short or foul the throw: else its effect would be counted twice. */
const WORDS: Readonly<Record<Severity, { readonly name: string; readonly about: string }>> = {
  0: { name: 'not there', about: 'Looked at, and not there.' },
  1: { name: 'slight', about: 'Only in slow motion, with nothing to see of it later in the throw.' },
  2: { name: 'clear', about: 'Seen at full speed; something later in the throw makes up for it.' },
  3: { name: 'breaks the throw', about: 'Balance or the delivery is lost.' },
};

export function severityWords(severity: Severity): { readonly name: string; readonly about: string } {
  return WORDS[severity];
}
