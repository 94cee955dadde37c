import { Check, Column, Entity, ForeignKey, PrimaryColumn, Unique } from 'typeorm';
import { OPTIONAL_INSTANT, SET_BY_CLOCK } from './instant.js';

/** Somebody who may sign in. Accounts are closed, never removed: the journal names them. */
@Entity('person')
@Unique('person_login_name_unique', ['loginName', 'organisationId'])
@ForeignKey('organisation', ['organisationId'], ['id'], { name: 'person_organisation_fkey' })
@Check('person_closed_by_somebody', `(closed_by IS NULL) = (closed_at IS NULL)`)
export class Person {
  @PrimaryColumn('uuid', { primaryKeyConstraintName: 'person_pkey' })
  organisationId: string;

  @PrimaryColumn('uuid', { primaryKeyConstraintName: 'person_pkey' })
  id: string;

  @Column('text')
  loginName: string;

  @Column('text')
  displayName: string;

  @Column('boolean', { default: false })
  isDemo: boolean;

  @Column('text')
  madeBy: string;

  @Column(SET_BY_CLOCK)
  madeAt: string;

  @Column('text', { nullable: true })
  closedBy: string | null;

  @Column(OPTIONAL_INSTANT)
  closedAt: string | null;
}
