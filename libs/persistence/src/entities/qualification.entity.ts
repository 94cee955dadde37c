import { Column, Entity, ForeignKey, Index, PrimaryColumn, Unique } from 'typeorm';

/** Competitions that are the groups of one qualification, and the final that comes of them. */
@Entity('qualification')
@Index('qualification_by_meet', ['meetId', 'organisationId'])
@Unique('qualification_final_once', ['finalId', 'organisationId'])
@ForeignKey('meet', ['organisationId', 'meetId'], ['organisationId', 'id'], {
  name: 'qualification_meet_fkey',
})
@ForeignKey('competition', ['organisationId', 'finalId'], ['organisationId', 'id'], {
  name: 'qualification_final_fkey',
})
export class Qualification {
  @PrimaryColumn('uuid', { primaryKeyConstraintName: 'qualification_pkey' })
  organisationId: string;

  @PrimaryColumn('uuid', { primaryKeyConstraintName: 'qualification_pkey' })
  id: string;

  @Column('uuid')
  meetId: string;

  @Column('text')
  title: string;

  @Column('uuid', { nullable: true })
  finalId: string | null;
}
