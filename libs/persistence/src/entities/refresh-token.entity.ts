import { Check, Column, Entity, ForeignKey, PrimaryColumn, Unique } from 'typeorm';
import { SET_BY_CLOCK } from './instant.js';

/** The hash of a refresh token. One whose generation is not the session's own has been used. */
@Entity('refresh_token')
@Unique('refresh_token_one_a_generation', ['sessionId', 'generation', 'organisationId'])
@ForeignKey('login_session', ['organisationId', 'sessionId'], ['organisationId', 'id'], {
  name: 'refresh_token_session_fkey',
})
@Check('refresh_token_generation_range', `generation >= 1`)
export class RefreshToken {
  @PrimaryColumn('uuid', { primaryKeyConstraintName: 'refresh_token_pkey' })
  organisationId: string;

  @PrimaryColumn('text', { primaryKeyConstraintName: 'refresh_token_pkey' })
  hash: string;

  @Column('uuid')
  sessionId: string;

  @Column('integer')
  generation: number;

  @Column(SET_BY_CLOCK)
  madeAt: string;

  @Column('timestamptz')
  expiresAt: string;
}
