import type { Settings } from '../keeping/database.js';

const TONE_HZ = 880;
const TONE_S = 0.3;

/** Makes itself felt and heard, if the official wants it to. */
export function warn({ vibrates, sounds }: Pick<Settings, 'vibrates' | 'sounds'>): void {
  if (vibrates && 'vibrate' in navigator) navigator.vibrate(300);
  if (!sounds) return;
  const audio = new AudioContext();
  const tone = audio.createOscillator();
  tone.frequency.value = TONE_HZ;
  tone.connect(audio.destination);
  tone.start();
  tone.stop(audio.currentTime + TONE_S);
  tone.onended = () => void audio.close();
}
