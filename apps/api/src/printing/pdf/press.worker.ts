import type { PrintedDocument } from '../printed-document.js';
import { pdfOf, type Setting } from './pdf-document.js';

export interface Job {
  readonly document: PrintedDocument;
  readonly setting: Setting;
}

/** Sets one document, in a thread of its own: reading the fonts alone takes longer than recording many trials. */
export default function press({ document, setting }: Job): Promise<Uint8Array> {
  return pdfOf(document, setting);
}
