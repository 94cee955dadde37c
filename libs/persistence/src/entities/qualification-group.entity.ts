import { Check, Column, Entity, ForeignKey, PrimaryColumn, Unique } from 'typeorm';

/** A competition as one group of a qualification; it is a group of no other. */
@Entity('qualification_group')
@Unique('qualification_group_once', ['competitionId', 'organisationId'])
@ForeignKey('qualification', ['organisationId', 'qualificationId'], ['organisationId', 'id'], {
  name: 'qualification_group_qualification_fkey',
})
@ForeignKey('competition', ['organisationId', 'competitionId'], ['organisationId', 'id'], {
  name: 'qualification_group_competition_fkey',
})
@Check('qualification_group_position_range', `position >= 1`)
export class QualificationGroup {
  @PrimaryColumn('uuid', { primaryKeyConstraintName: 'qualification_group_pkey' })
  organisationId: string;

  @PrimaryColumn('uuid', { primaryKeyConstraintName: 'qualification_group_pkey' })
  qualificationId: string;

  @PrimaryColumn('integer', { primaryKeyConstraintName: 'qualification_group_pkey' })
  position: number;

  @Column('uuid')
  competitionId: string;
}
