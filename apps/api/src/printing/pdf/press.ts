import { Injectable } from '@nestjs/common';
import { Background } from '../../platform/background/background.js';
import type { Job } from './press.worker.js';

/** Makes PDFs beside the server. */
@Injectable()
export class Press extends Background<Job, Uint8Array> {
  constructor() {
    super(new URL('./press.worker', import.meta.url));
  }
}
