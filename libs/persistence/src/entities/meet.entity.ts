import { Check, Column, Entity, ForeignKey, Index, PrimaryColumn } from 'typeorm';
import type { NameDisplay, RuleSetCode } from '../rows.js';
import { OPTIONAL_INSTANT } from './instant.js';

@Entity('meet')
@Index('meet_by_date', ['organisationId', 'startsOn', 'id'])
@ForeignKey('organisation', ['organisationId'], ['id'], { name: 'meet_organisation_fkey' })
@Check('meet_venue_length', `length(venue) <= 200`)
@Check('meet_dates_in_order', `starts_on <= ends_on`)
@Check('meet_dates_range', `starts_on >= '1900-01-01' AND ends_on <= '2200-01-01'`)
export class Meet {
  @PrimaryColumn('uuid', { primaryKeyConstraintName: 'meet_pkey' })
  organisationId: string;

  @PrimaryColumn('uuid', { primaryKeyConstraintName: 'meet_pkey' })
  id: string;

  @Column('text')
  name: string;

  @Column('text')
  venue: string;

  @Column('date')
  startsOn: string;

  @Column('date')
  endsOn: string;

  @Column('text')
  timeZone: string;

  @Column('text')
  rules: RuleSetCode;

  @Column('text')
  edition: string;

  @Column('text', { default: 'initials' })
  minorsDisplay: NameDisplay;

  @Column('boolean', { default: false })
  needsSecondPerson: boolean;

  @Column(OPTIONAL_INSTANT)
  publishedAt: string | null;
}
