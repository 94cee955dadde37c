import { Check, Column, Entity, ForeignKey, Index, PrimaryColumn } from 'typeorm';
import type { SessionEnd } from '../access-rows.js';
import { OPTIONAL_INSTANT, SET_BY_CLOCK } from './instant.js';

/** A person signed in on one device, until signed out. `generation`: how many refresh tokens it has handed out. */
@Entity('login_session')
@Index('login_session_by_person', ['personId', 'organisationId'])
@ForeignKey('person', ['organisationId', 'personId'], ['organisationId', 'id'], {
  name: 'login_session_person_fkey',
})
@Check('login_session_generation_range', `generation >= 1`)
@Check(
  'login_session_end_known',
  `ended_because IN ('signed-out', 'everywhere', 'reuse', 'password', 'closed')`,
)
@Check('login_session_end_explained', `(ended_at IS NULL) = (ended_because IS NULL)`)
export class LoginSession {
  @PrimaryColumn('uuid', { primaryKeyConstraintName: 'login_session_pkey' })
  organisationId: string;

  @PrimaryColumn('uuid', { primaryKeyConstraintName: 'login_session_pkey' })
  id: string;

  @Column('uuid')
  personId: string;

  @Column('text', { nullable: true })
  label: string | null;

  @Column('integer', { default: 1 })
  generation: number;

  @Column(SET_BY_CLOCK)
  madeAt: string;

  @Column(OPTIONAL_INSTANT)
  endedAt: string | null;

  @Column('text', { nullable: true })
  endedBecause: SessionEnd | null;
}
