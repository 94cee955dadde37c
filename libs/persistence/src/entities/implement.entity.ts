import { Check, Column, Entity, ForeignKey, Index, PrimaryColumn } from 'typeorm';
import type { Authority } from '../rows.js';
import type { ThrowEventCode } from '#rules';
import { SET_BY_CLOCK } from './instant.js';

/** An implement on the register. Nothing of it changes but its label. */
@Entity('implement')
@Index('implement_by_label', ['organisationId', 'event', 'label', 'id'])
@Index('implement_by_meet', ['meetId', 'organisationId'])
@Index('implement_by_club', ['clubId', 'organisationId'])
@Index('implement_by_athlete', ['athleteId', 'organisationId'])
@ForeignKey('meet', ['organisationId', 'meetId'], ['organisationId', 'id'], { name: 'implement_meet_fkey' })
@ForeignKey('club', ['organisationId', 'clubId'], ['organisationId', 'id'], { name: 'implement_club_fkey' })
@ForeignKey('athlete', ['organisationId', 'athleteId'], ['organisationId', 'id'], {
  name: 'implement_athlete_fkey',
})
@Check('implement_thrown', `event IN ('discus', 'shot', 'hammer', 'javelin', 'weight')`)
@Check('implement_one_owner', `club_id IS NULL OR athlete_id IS NULL`)
export class Implement {
  @PrimaryColumn('uuid', { primaryKeyConstraintName: 'implement_pkey' })
  organisationId: string;

  @PrimaryColumn('uuid', { primaryKeyConstraintName: 'implement_pkey' })
  id: string;

  @Column('uuid')
  meetId: string;

  @Column('text')
  event: ThrowEventCode;

  @Column('integer')
  grams: number;

  @Column('text')
  label: string;

  @Column('uuid', { nullable: true })
  clubId: string | null;

  @Column('uuid', { nullable: true })
  athleteId: string | null;

  @Column('text')
  authority: Authority;

  @Column('text')
  registeredBy: string;

  @Column(SET_BY_CLOCK)
  registeredAt: string;
}
