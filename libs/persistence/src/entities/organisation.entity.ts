import { Column, Entity, PrimaryColumn } from 'typeorm';

/** Who keeps the record: a club, a school, a federation. Everything else belongs to one. */
@Entity('organisation')
export class Organisation {
  @PrimaryColumn('uuid', { primaryKeyConstraintName: 'organisation_pkey' })
  id: string;

  @Column('text')
  name: string;
}
