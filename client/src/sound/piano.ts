import { Limiter } from "tone/build/esm/component/dynamics/Limiter.js";
import { Context } from "tone/build/esm/core/context/Context.js";
import "tone/build/esm/core/context/Destination.js";
import { Gain } from "tone/build/esm/core/context/Gain.js";
import { ToneAudioBuffer } from "tone/build/esm/core/context/ToneAudioBuffer.js";
import { setContext } from "tone/build/esm/core/Global.js";
import { ToneBufferSource } from "tone/build/esm/source/buffer/ToneBufferSource.js";
import { AudioClock } from "./clock";
import type { Keys } from "./playing";
import { AHEAD, DAMPING, levelOf, onsetOf, rateOf, recordedFor, STOP, TAP_LEVEL, tapOf, TAPS } from "./recordings";

const ADDRESS = "/piano/v10/";

/** The recorded piano, and the clock that all else goes by. */
export class Piano extends AudioClock implements Keys {
  readonly ahead = AHEAD;
  // Its own timers serve; the page lets no worker be made of text.
  private readonly context = new Context({ context: this.native, clockSource: "timeout", lookAhead: 0, updateInterval: 0.5 });
  private readonly recordings = new Map<number, Promise<ToneAudioBuffer>>();
  private readonly ready = new Map<number, { buffer: ToneAudioBuffer; onset: number }>();
  private readonly limiter: Limiter;
  private bus: Gain;
  private readonly high: ToneAudioBuffer;
  private readonly low: ToneAudioBuffer;

  constructor() {
    super(new AudioContext({ latencyHint: "interactive" }));
    setContext(this.context);
    this.limiter = new Limiter(-1).toDestination();
    this.bus = new Gain(1).connect(this.limiter);
    this.high = ToneAudioBuffer.fromArray(tapOf(TAPS.first, this.native.sampleRate));
    this.low = ToneAudioBuffer.fromArray(tapOf(TAPS.other, this.native.sampleRate));
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
          this.ready.set(key, { buffer, onset: onsetOf(buffer.getChannelData(0), buffer.sampleRate) });
        } catch (fault) {
          this.recordings.delete(key);
          throw fault;
        }
      }),
    );
  }

  strike(key: number, velocity: number, _hand: string, at: number, _length: number, rings: number): void {
    const recording = this.ready.get(recordedFor(key));
    if (recording) {
      const source = new ToneBufferSource({ url: recording.buffer, playbackRate: rateOf(key), fadeOut: DAMPING, curve: "exponential" });
      source.connect(this.bus);
      source.start(at, recording.onset, rings, levelOf(velocity));
    }
  }

  // What rings is told with each stroke.
  pedal(): void {}

  click(isFirst: boolean, at: number): void {
    new ToneBufferSource({ url: isFirst ? this.high : this.low }).connect(this.bus).start(at, 0, undefined, TAP_LEVEL);
  }

  silence(): void {
    const old = this.bus;
    old.gain.rampTo(0, STOP);
    this.bus = new Gain(1).connect(this.limiter);
    setTimeout(() => old.disconnect(), STOP * 2000);
  }
}
