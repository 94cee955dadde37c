import { createRequire } from 'node:module';

const resolve = createRequire(import.meta.url).resolve;
const FAMILY = '@expo-google-fonts/noto-sans';

/** Fonts that are embedded in every document, so that it looks the same everywhere. */
export const FONTS = {
  text: resolve(`${FAMILY}/400Regular/NotoSans_400Regular.ttf`),
  strong: resolve(`${FAMILY}/600SemiBold/NotoSans_600SemiBold.ttf`),
} as const;
