import { Check, Column, Entity, ForeignKey, Index, PrimaryColumn } from 'typeorm';
import { INSTANT } from './instant.js';
import { WrittenColumns } from './written.js';

/** When a result was announced, and what of the journal it was. */
@Entity('result_posting')
@Index('result_posting_by_competition', ['competitionId', 'organisationId'])
@ForeignKey('competition', ['organisationId', 'competitionId'], ['organisationId', 'id'], {
  name: 'result_posting_competition_fkey',
})
@Check('result_posting_sequence_range', `sequence >= 0`)
@Check('result_posting_place_given', `btrim(place) <> '' AND length(place) <= 200`)
export class ResultPosting extends WrittenColumns {
  @PrimaryColumn('uuid', { primaryKeyConstraintName: 'result_posting_pkey' })
  organisationId: string;

  @PrimaryColumn('uuid', { primaryKeyConstraintName: 'result_posting_pkey' })
  id: string;

  @Column('uuid')
  competitionId: string;

  @Column('integer')
  sequence: number;

  @Column(INSTANT)
  postedAt: string;

  @Column('text', { nullable: true })
  place: string | null;

  @Column('text', { nullable: true })
  incomplete: string | null;
}
