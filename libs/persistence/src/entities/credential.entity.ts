import { Check, Column, Entity, ForeignKey, PrimaryColumn } from 'typeorm';
import { OPTIONAL_INSTANT, SET_BY_CLOCK } from './instant.js';

/** What proves that somebody is a person: hashes alone, and overwritten, since an old one helps nobody but a thief. */
@Entity('credential')
@ForeignKey('person', ['organisationId', 'personId'], ['organisationId', 'id'], {
  name: 'credential_person_fkey',
})
@Check('credential_password_hashed', `password_hash LIKE '$argon2id$%' AND length(password_hash) <= 200`)
@Check('credential_setup_expires', `(setup_hash IS NULL) = (setup_expires_at IS NULL)`)
export class Credential {
  @PrimaryColumn('uuid', { primaryKeyConstraintName: 'credential_pkey' })
  organisationId: string;

  @PrimaryColumn('uuid', { primaryKeyConstraintName: 'credential_pkey' })
  personId: string;

  @Column('text', { nullable: true })
  passwordHash: string | null;

  @Column('text', { nullable: true })
  setupHash: string | null;

  @Column(OPTIONAL_INSTANT)
  setupExpiresAt: string | null;

  @Column(SET_BY_CLOCK)
  changedAt: string;
}
