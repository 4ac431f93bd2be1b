// What the panel of a shot lets be heard, rendered by the browser itself into samples instead of a loudspeaker.
import { build } from 'esbuild';

export const RATE = 48_000;

/** Samples of each sign, and of the tick over `seconds`; in a page of its own. */
export async function heard(context, seconds) {
  const { outputFiles: [script] } = await build({
    stdin: { contents: "export { Sound } from './client/plan/view/sound.ts'; export * as tones from './client/shoot/view/tones.ts';", resolveDir: process.cwd() },
    bundle: true, format: 'iife', globalName: 'heard', write: false,
  });
  const page = await context.newPage();
  try {
    await page.evaluate(script.text.replace(/^"use strict";\s*var heard = /, 'globalThis.heard = '));
    return await page.evaluate(async ([rate, long]) => {
      const { Sound, tones } = globalThis.heard;
      /** In the place of the one that plays: it renders what was asked of it. */
      const rendered = async (length, ask) => {
        const made = [];
        globalThis.AudioContext = class extends OfflineAudioContext {
          constructor() { super(1, length * rate, rate); made.push(this); }
          resume() { return Promise.resolve(); }
        };
        ask(new Sound());
        return [...(await made[0].startRendering()).getChannelData(0)];
      };
      const found = { tick: await rendered(long, (sound) => sound.begin()) };
      for (const [name, sign] of Object.entries(tones)) found[name] = await rendered(3, (sound) => { sound.begin(); sound.end(); sound.say(sign); });
      return found;
    }, [RATE, seconds]);
  } finally {
    await page.close();
  }
}

/** Where something begins to be heard after it was quiet for `quiet` seconds, s. */
export function onsets(samples, quiet = 0.03) {
  const found = [];
  let last = -Infinity;
  samples.forEach((v, i) => {
    if (Math.abs(v) < 0.002) return;
    if (i - last > quiet * RATE) found.push(i / RATE);
    last = i;
  });
  return found;
}

/** Hz, by how often the samples rise through nothing between two times. */
export function pitch(samples, from, to) {
  let [first, last, n] = [0, 0, -1];
  for (let i = Math.round(from * RATE) + 1; i < Math.round(to * RATE); i++) {
    if (!(samples[i - 1] < 0 && samples[i] >= 0)) continue;
    const at = i - samples[i] / (samples[i] - samples[i - 1]);
    if (n < 0) first = at;
    last = at;
    n++;
  }
  return (n * RATE) / (last - first);
}

/** A sound file of one channel, to be listened to: RIFF, 16 bit. */
export function wav(samples) {
  const file = Buffer.alloc(44 + 2 * samples.length);
  file.write('RIFF', 0);
  file.writeUInt32LE(36 + 2 * samples.length, 4);
  file.write('WAVEfmt ', 8);
  [[16, 16, 4], [20, 1, 2], [22, 1, 2], [24, RATE, 4], [28, 2 * RATE, 4], [32, 2, 2], [34, 16, 2], [40, 2 * samples.length, 4]].forEach(([at, value, bytes]) => file.writeUIntLE(value, at, bytes));
  file.write('data', 36);
  samples.forEach((v, i) => file.writeInt16LE(Math.round(32767 * Math.max(-1, Math.min(1, v))), 44 + 2 * i));
  return file;
}
