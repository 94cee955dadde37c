import { Check, Column, Entity, ForeignKey, Index, PrimaryColumn, Unique } from 'typeorm';
import type { Authority, JournalBody, JournalKind, StoredVerdict } from '../rows.js';
import { OPTIONAL_INSTANT, SET_BY_CLOCK } from './instant.js';

/** What somebody did or decided, for good: rows are added and never changed. */
@Entity('journal_entry')
@Unique('journal_entry_id_unique', ['entryId', 'organisationId'])
@ForeignKey('competition', ['organisationId', 'competitionId'], ['organisationId', 'id'], {
  name: 'journal_entry_competition_fkey',
})
// It includes columns, which only the migration can say.
@Index('journal_entry_trials', { synchronize: false })
@Index('journal_entry_others', ['competitionId', 'sequence'], { where: 'trial IS NULL' })
@Check('journal_entry_sequence_range', `sequence >= 1`)
@Check('journal_entry_body_of_kind', `body ->> 'kind' = kind`)
@Check('journal_entry_verdict_agrees', `(verdict ->> 'standing' = standing) IS TRUE`)
export class JournalEntry {
  @PrimaryColumn('uuid', { primaryKeyConstraintName: 'journal_entry_pkey' })
  organisationId: string;

  @PrimaryColumn('uuid', { primaryKeyConstraintName: 'journal_entry_pkey' })
  competitionId: string;

  @PrimaryColumn('integer', { primaryKeyConstraintName: 'journal_entry_pkey' })
  sequence: number;

  @Column('uuid')
  entryId: string;

  @Column('text')
  kind: JournalKind;

  @Column('jsonb')
  body: JournalBody;

  @Column('text')
  standing: StoredVerdict['standing'];

  @Column('jsonb')
  verdict: StoredVerdict;

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

  @Column('text')
  fingerprint: string;

  /** Of an accepted trial, for those who read whole meets. Written by the database. */
  @Column('text', { nullable: true, select: false })
  trial: string | null;
}
