import { Check, Column, Entity, ForeignKey, PrimaryColumn } from 'typeorm';
import { SET_BY_CLOCK } from './instant.js';

/** A day at which somebody practised. */
@Entity('practice_session')
@ForeignKey('person', ['organisationId', 'keptBy'], ['organisationId', 'id'], {
  name: 'practice_session_kept_by_fkey',
})
@Check('practice_session_date_range', `on_date BETWEEN '1900-01-01' AND '2200-01-01'`)
export class PracticeSession {
  @PrimaryColumn('uuid', { primaryKeyConstraintName: 'practice_session_pkey' })
  organisationId: string;

  @PrimaryColumn('uuid', { primaryKeyConstraintName: 'practice_session_pkey' })
  id: string;

  @Column('date')
  onDate: string;

  @Column('text', { nullable: true })
  place: string | null;

  @Column('text', { nullable: true })
  note: string | null;

  @Column('uuid')
  keptBy: string;

  @Column(SET_BY_CLOCK)
  recordedAt: string;
}
