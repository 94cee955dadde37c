import { Column } from 'typeorm';
import type { Authority } from '../rows.js';
import { OPTIONAL_INSTANT, SET_BY_CLOCK } from './instant.js';

/** Who wrote a row down, when, and on what. */
export abstract class WrittenColumns {
  @Column('text')
  authority: Authority;

  @Column('text')
  actor: string;

  @Column('text', { nullable: true })
  device: string | null;

  @Column(OPTIONAL_INSTANT)
  deviceAt: string | null;

  @Column(SET_BY_CLOCK)
  recordedAt: string;
}
