import { hash, verify, type Options } from '@node-rs/argon2';
import { createHash, randomBytes } from 'node:crypto';

/**
 * Argon2id with 19 MiB, two passes and one lane: OWASP Password Storage Cheat Sheet, "Argon2id", one of its equally
 * strong settings. Argon2id is the library's default algorithm.
 */
const ARGON2ID: Options = { memoryCost: 19_456, timeCost: 2, parallelism: 1 };

/**
 * Code points of a password. NIST SP 800-63B (2017) section 5.1.1.2 asks for eight at least and that 64 are allowed; its
 * later drafts would rather have fifteen. Ten is our choice, with tries held to five a minute.
 */
export const PASSWORD_LENGTH = { least: 10, most: 200 } as const;

/** At most so many hashes are made at a time: each takes 19 MiB and a thread that others wait for. */
const AT_ONCE = 2;

/** Hashes passwords and compares them, in the same time whether there is anything to compare with or not. */
export class Passwords {
  private readonly waiting: (() => void)[] = [];
  private running = 0;
  private decoy: Promise<string> | null = null;

  hash(password: string): Promise<string> {
    return this.inTurn(() => hash(prepared(password), ARGON2ID));
  }

  /** False also when there is no hash: after as much work as a comparison takes. */
  async matches(password: string, stored: string | null): Promise<boolean> {
    this.decoy ??= hash(randomBytes(24), ARGON2ID);
    const against = stored ?? (await this.decoy);
    const isRight = await this.inTurn(() => verify(against, prepared(password)));
    return isRight && stored !== null;
  }

  private async inTurn<T>(work: () => Promise<T>): Promise<T> {
    if (this.running >= AT_ONCE) await new Promise<void>((resolve) => this.waiting.push(resolve));
    else this.running += 1;
    try {
      return await work();
    } finally {
      const next = this.waiting.shift();
      if (next) next();
      else this.running -= 1;
    }
  }
}

/** Unicode in one form, so that the same keys give the same password on every device (NIST SP 800-63B 5.1.1.2). */
function prepared(password: string): string {
  return password.normalize('NFKC');
}

/**
 * What is wrong with a password, as a sentence; null: nothing. Length and the login name are looked at, no mixture of
 * kinds of characters is asked for (NIST SP 800-63B section 5.1.1.2). No list of leaked passwords is looked at.
 */
export function passwordProblem(password: string, loginName: string): string | null {
  const text = prepared(password);
  const length = [...text].length;
  if (length < PASSWORD_LENGTH.least) {
    return `The password has ${length} characters and needs at least ${PASSWORD_LENGTH.least}.`;
  }
  if (length > PASSWORD_LENGTH.most) return `The password has more than ${PASSWORD_LENGTH.most} characters.`;
  if (new Set(text).size < 3) return 'The password repeats one or two characters.';
  const name = loginName.split('@')[0]!;
  const lower = text.toLowerCase();
  if (lower.includes(name) || loginName.includes(lower)) return 'The password contains the login name.';
  return null;
}

/** Without letters and digits that are taken for one another. */
const CODE_LETTERS = 'ABCDEFGHJKMNPQRSTVWXYZ23456789';
const CODE_LENGTH = 20;

/** A one-time code of 20 letters and digits, some 98 bits, in groups to be read out: `K7QM2-…`. */
export function makeCode(): string {
  const letters: string[] = [];
  while (letters.length < CODE_LENGTH) {
    for (const byte of randomBytes(CODE_LENGTH)) {
      // Bytes beyond the last whole alphabet would make its first letters likelier.
      if (byte < 240 && letters.length < CODE_LENGTH) letters.push(CODE_LETTERS[byte % CODE_LETTERS.length]!);
    }
  }
  return (letters.join('').match(/.{5}/g) ?? []).join('-');
}

/** SHA-256 in hexadecimal digits: enough for secrets that were drawn at random, whatever is written between. */
export function hashOfCode(code: string): string {
  return hashOfSecret(code.toUpperCase().replaceAll(/[^A-Z0-9]/g, ''));
}

export function hashOfSecret(secret: string): string {
  return createHash('sha256').update(secret).digest('hex');
}
