import { readUuid } from '../scalars/uuid.js';

/** What instances tell one another: ids and a version, never content. Whoever hears it reads again. */
export type LiveMessage =
  | { readonly about: 'competition'; readonly id: string; readonly version: number }
  /** The rights, the sessions or the state of an account changed. */
  | { readonly about: 'person'; readonly organisationId: string; readonly id: string }
  /** A token or a device link holds no longer. */
  | { readonly about: 'revocation'; readonly id: string };

export function writeMessage(message: LiveMessage): string {
  return JSON.stringify(message);
}

/** Null: not a message of this version of the program, to be passed over. */
export function readMessage(text: string): LiveMessage | null {
  try {
    const message = JSON.parse(text) as LiveMessage;
    return isMessage(message) ? message : null;
  } catch {
    return null;
  }
}

function isMessage(message: LiveMessage | null): message is LiveMessage {
  if (!message || readUuid(message.id) === null) return false;
  switch (message.about) {
    case 'competition':
      return Number.isSafeInteger(message.version);
    case 'person':
      return readUuid(message.organisationId) !== null;
    case 'revocation':
      return true;
    default:
      return false;
  }
}
