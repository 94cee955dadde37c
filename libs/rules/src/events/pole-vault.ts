import { verticalJump } from './event-rules.js';

export const poleVault = verticalJump({ code: 'pole-vault', plausible: { minCm: 50, maxCm: 650 } });
