import type { Unit } from '../quantities/mark.js';
import type { Findings } from './findings.js';
import { comparePlaces, type Place } from './place.js';

const NAMES: Readonly<Record<Unit, string>> = { cm: 'metres', qin: 'feet and inches' };

/** Sees to it that a sheet is in one unit throughout: that of the first mark or height that stands in it. */
export class UnitWatch {
  private readonly seen: Readonly<Record<Unit, Place[]>> = { cm: [], qin: [] };

  note(place: Place, unit: Unit): void {
    this.seen[unit].push(place);
  }

  /** Whether marks of both units were noted, so that they cannot be compared. */
  get isMixed(): boolean {
    return this.seen.cm.length > 0 && this.seen.qin.length > 0;
  }

  /** Reports what is in another unit; the unit of the sheet. Without any mark it is the metric one. */
  settle(findings: Findings): Unit {
    const [metric, imperial] = [firstOf(this.seen.cm), firstOf(this.seen.qin)];
    const unit = imperial && (!metric || comparePlaces(imperial, metric) < 0) ? 'qin' : 'cm';
    const other = unit === 'cm' ? 'qin' : 'cm';
    for (const place of this.seen[other]) {
      findings.report(place, 'UNIT', `Write this in ${NAMES[unit]}, as the first mark of the sheet is.`);
    }
    return unit;
  }
}

function firstOf(places: readonly Place[]): Place | undefined {
  let first = places[0];
  for (const place of places) {
    if (first && comparePlaces(place, first) < 0) first = place;
  }
  return first;
}
