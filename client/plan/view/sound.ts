/** Tones and a tick each second, made on the spot: nothing is loaded. */
import type { Tone } from './tones.ts';

/** Of full scale: soft, in a quiet room. */
const [TICK, LOUD] = [0.04, 0.1];
/** A tone begins and ends within that time, s, so that it does not click. */
const SOFT = 0.015;
/** A tick: its pitch, Hz, and how fast it is gone, s. */
const [PITCH, GONE] = [1000, 0.004];

export class Sound {
  private context: AudioContext | undefined;
  private tick: AudioBufferSourceNode | undefined;

  /** A browser lets it be heard only after somebody has pressed something in the page. */
  begin(): void {
    this.context ??= new AudioContext();
    void this.context.resume();
    this.tick?.stop();
    this.tick = this.ticking(this.context);
  }

  say(tones: readonly Tone[]): void {
    const { context } = this;
    if (!context) return;
    const now = context.currentTime + 0.02;
    for (const { hz, at, lasts } of tones) {
      const [voice, volume] = [context.createOscillator(), context.createGain()];
      voice.frequency.value = hz;
      volume.gain.setValueAtTime(0, now + at);
      volume.gain.linearRampToValueAtTime(LOUD, now + at + SOFT);
      volume.gain.setValueAtTime(LOUD, now + at + lasts - SOFT);
      volume.gain.linearRampToValueAtTime(0, now + at + lasts);
      voice.connect(volume).connect(context.destination);
      voice.start(now + at);
      voice.stop(now + at + lasts);
    }
  }

  /** No tick any more; what has been said goes on to its end. */
  end(): void {
    this.tick?.stop();
    this.tick = undefined;
  }

  /** One second, over and over, by the clock of the loudspeaker: no timer of a window that nobody looks at is as even. */
  private ticking(context: AudioContext): AudioBufferSourceNode {
    const second = context.createBuffer(1, context.sampleRate, context.sampleRate);
    second.getChannelData(0).set(Array.from({ length: Math.round(10 * GONE * context.sampleRate) }, (_, i) => { const t = i / context.sampleRate; return TICK * Math.exp(-t / GONE) * Math.sin(2 * Math.PI * PITCH * t); }));
    const tick = context.createBufferSource();
    tick.buffer = second;
    tick.loop = true;
    tick.connect(context.destination);
    tick.start();
    return tick;
  }
}
