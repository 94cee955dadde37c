import { createHash } from 'node:crypto';

/** A source of chance that is made of a name: the same name draws the same numbers on every machine. */
export class NamedChance {
  private drawn = 0;

  constructor(private readonly name: string) {}

  /** From 0 up to 1, 1 left out. */
  uniform(): number {
    this.drawn += 1;
    const hash = createHash('sha256').update(`${this.name} ${this.drawn}`).digest();
    return hash.readUInt32BE(0) / 2 ** 32;
  }

  happens(share: number): boolean {
    return this.uniform() < share;
  }

  /** Standard normal (Box and Muller). */
  normal(): number {
    const radius = Math.sqrt(-2 * Math.log(1 - this.uniform()));
    return radius * Math.cos(2 * Math.PI * this.uniform());
  }
}
