import type { ComponentType } from 'preact';
import type { OfficeKey } from '../labels/office/en.js';
import type { Office } from './office.js';
import { MeetScreen } from './screens/MeetScreen.jsx';

/** A part of the office with an address of its own (`#/key`). A new one is a line here. */
export interface Section {
  readonly key: string;
  readonly label: OfficeKey;
  readonly Screen: ComponentType;
  /** Reached from elsewhere, so not among the sections at the side. */
  readonly isWithin?: true;
  /** For whom it is; absent: for everybody who works here. */
  readonly isFor?: (office: Office) => boolean;
}

export const SECTIONS: readonly Section[] = [{ key: 'meet', label: 'section.meet', Screen: MeetScreen }];
