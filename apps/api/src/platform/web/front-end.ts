import { createHash } from 'node:crypto';
import type { WebFile, WebFiles } from './web-files.js';

/** The element that other sites embed, as it is served here. */
export interface ServedElement {
  /** With its version. */
  readonly address: string;
  /** For the attribute `integrity`: a browser then runs this very file and no other. */
  readonly integrity: string;
}

/** Where the element lies; its version is the folder in it. */
export const ELEMENT_ADDRESS = /^\/element\/[\d.]+\/[\w-]+\.js$/;

/** What was built for browsers and is served beside the API. */
export class FrontEnd {
  /** Null: it was not built. */
  readonly element: ServedElement | null;

  constructor(files: WebFiles) {
    const found = [...files].find(([address]) => ELEMENT_ADDRESS.test(address));
    this.element = found ? { address: found[0], integrity: integrityOf(found[1]) } : null;
  }
}

function integrityOf({ plain }: WebFile): string {
  return `sha384-${createHash('sha384').update(plain).digest('base64')}`;
}
