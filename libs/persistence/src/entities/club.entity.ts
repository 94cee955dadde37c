import { Column, Entity, ForeignKey, PrimaryColumn, Unique } from 'typeorm';

@Entity('club')
@Unique('club_name_unique', ['organisationId', 'name'])
@ForeignKey('organisation', ['organisationId'], ['id'], { name: 'club_organisation_fkey' })
export class Club {
  @PrimaryColumn('uuid', { primaryKeyConstraintName: 'club_pkey' })
  organisationId: string;

  @PrimaryColumn('uuid', { primaryKeyConstraintName: 'club_pkey' })
  id: string;

  @Column('text')
  name: string;
}
