import { Limiter } from "tone/build/esm/component/dynamics/Limiter.js";
import { Context } from "tone/build/esm/core/context/Context.js";
import "tone/build/esm/core/context/Destination.js";
import { Gain } from "tone/build/esm/core/context/Gain.js";
import { ToneAudioBuffer } from "tone/build/esm/core/context/ToneAudioBuffer.js";
import { setContext } from "tone/build/esm/core/Global.js";
import { ToneBufferSource } from "tone/build/esm/source/buffer/ToneBufferSource.js";

/** Something that plays: the piano of this page, or an instrument. Times are those of the audio clock, in seconds. */
export interface Instrument {
  /** Seconds that strokes are handed on before they are due. */
  readonly ahead: number;
  strike(key: number, velocity: number, hand: string, at: number, length: number, rings: number): void;
  pedal(down: boolean, at: number): void;
  /** Stops all that sounds or was to sound. */
  silence(): void;
}

const ADDRESS = "/piano/v10/";
const LOWEST = 21;
const APART = 6; // every second of the recorded keys: half to load, and no note is stretched further than a minor third
const HIGHEST = 105;
const RECORDED_VELOCITY = 76; // of the recordings, as in the sound files
const LEVEL = 0.6;
const AHEAD = 1.2; // seconds, more than a page in the background sleeps
const DAMPING = 0.45; // seconds until the felt has stopped a string; it falls to a third in 70 ms, as in the sound files
const STOP = 0.03; // seconds

// Of the averaged clock: milliseconds that are a leap, the least weight of what is told, and the first tellings.
const LEAP = 50;
const SLOWLY = 0.01;
const ENOUGH = 8;
const BETWEEN = 12; // milliseconds

// A recording begins with some silence: the stroke is where it first reaches this share of its peak, kept from a millisecond
// before, as in the sound files.
const ONSET_SHARE = 0.03;
const BEFORE_ONSET = 0.001; // seconds

function onsetOf(buffer: ToneAudioBuffer): number {
  const rate = buffer.sampleRate;
  const first = buffer.getChannelData(0).subarray(0, rate / 2);
  const peak = first.reduce((most, sample) => Math.max(most, Math.abs(sample)), 0);
  return Math.max(0, first.findIndex((sample) => Math.abs(sample) >= ONSET_SHARE * peak) / rate - BEFORE_ONSET);
}

const recordedFor = (key: number) =>
  Math.min(HIGHEST, Math.max(LOWEST, LOWEST + APART * Math.round((key - LOWEST) / APART)));

/** The recorded piano, and the clock that all else goes by. */
export class Piano implements Instrument {
  readonly ahead = AHEAD;
  private readonly native = new AudioContext({ latencyHint: "interactive" });
  // Its own timers serve; the page lets no worker be made of text.
  private readonly context = new Context({ context: this.native, clockSource: "timeout", lookAhead: 0, updateInterval: 0.5 });
  private readonly recordings = new Map<number, Promise<ToneAudioBuffer>>();
  private readonly ready = new Map<number, { buffer: ToneAudioBuffer; onset: number }>();
  private readonly limiter: Limiter;
  private offset = NaN; // milliseconds
  private told = 0; // how often it was told without a leap
  private bus: Gain;
  private readonly high: ToneAudioBuffer;
  private readonly low: ToneAudioBuffer;

  constructor() {
    setContext(this.context);
    this.limiter = new Limiter(-1).toDestination();
    this.bus = new Gain(1).connect(this.limiter);
    this.high = this.clickOf(1760);
    this.low = this.clickOf(1175);
  }

  /** Fetches the recordings that some keys need. */
  async load(keys: Iterable<number>): Promise<void> {
    const wanted = new Set([...keys].map(recordedFor));
    await Promise.all(
      [...wanted].map(async (key) => {
        const loading = this.recordings.get(key) ?? ToneAudioBuffer.fromUrl(`${ADDRESS}${key}.ogg`);
        this.recordings.set(key, loading);
        try {
          const buffer = await loading;
          this.ready.set(key, { buffer, onset: onsetOf(buffer) });
        } catch (fault) {
          this.recordings.delete(key);
          throw fault;
        }
      }),
    );
  }

  /** Must follow a hand’s action, since browsers keep pages silent until then. */
  async wake(): Promise<void> {
    await this.native.resume();
    for (let i = 0; this.told < ENOUGH && i < ENOUGH; i++) {
      await new Promise((resolve) => setTimeout(resolve, BETWEEN));
      this.begun();
    }
  }

  get time(): number {
    return this.native.currentTime;
  }

  /** The moment, as the page counts (performance.now), at which a time of the audio clock reaches the ear. */
  heardAt(time: number): number {
    return this.begun() + time * 1000;
  }

  /** The time of the audio clock that is heard at a moment of the page. */
  heard(moment: number): number {
    return (moment - this.begun()) / 1000;
  }

  // The moment of the page at which the audio clock was nought, to the ear. The browser tells it anew with every buffer, some
  // milliseconds to and fro: it is averaged, but not over a leap.
  private begun(): number {
    const stamp = this.native.getOutputTimestamp?.();
    const told = stamp?.performanceTime && stamp.contextTime !== undefined
      ? stamp.performanceTime - stamp.contextTime * 1000
      : performance.now() - (this.native.currentTime - (this.native.outputLatency || this.native.baseLatency || 0)) * 1000;
    this.told = Math.abs(told - this.offset) < LEAP ? this.told + 1 : 1;
    this.offset = this.told === 1 ? told : this.offset + (told - this.offset) * Math.max(SLOWLY, 1 / this.told);
    return this.offset;
  }

  strike(key: number, velocity: number, _hand: string, at: number, _length: number, rings: number): void {
    const recorded = recordedFor(key);
    const recording = this.ready.get(recorded);
    if (recording) {
      const source = new ToneBufferSource({ url: recording.buffer, playbackRate: 2 ** ((key - recorded) / 12), fadeOut: DAMPING, curve: "exponential" });
      source.connect(this.bus);
      source.start(at, recording.onset, rings, LEVEL * (velocity / RECORDED_VELOCITY) ** 2);
    }
  }

  // What rings is told with each stroke.
  pedal(): void {}

  click(isFirst: boolean, at: number): void {
    new ToneBufferSource({ url: isFirst ? this.high : this.low }).connect(this.bus).start(at, 0, undefined, 0.4);
  }

  silence(): void {
    const old = this.bus;
    old.gain.rampTo(0, STOP);
    this.bus = new Gain(1).connect(this.limiter);
    setTimeout(() => old.disconnect(), STOP * 2000);
  }

  // A short tap with a pitch of its own.
  private clickOf(hertz: number): ToneAudioBuffer {
    const rate = this.native.sampleRate;
    const samples = Float32Array.from({ length: Math.round(rate * 0.04) }, (_, i) => Math.sin((2 * Math.PI * hertz * i) / rate) * Math.exp(-i / rate / 0.008));
    return ToneAudioBuffer.fromArray(samples);
  }
}
