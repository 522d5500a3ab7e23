import { AudioClock } from "../sound/clock";
import type { Keys } from "../sound/playing";
import { AHEAD, DAMPING, levelOf, onsetOf, rateOf, recordedFor, STOP, TAP_LEVEL, tapOf, TAPS } from "../sound/recordings";
import { decode } from "./vorbis";

const FELT = 0.07; // seconds in which the felt lets a third of the sound through
const LIMIT = { threshold: -1, knee: 0, ratio: 20, attack: 0.003, release: 0.01 }; // decibels and seconds

/** The recorded piano out of the file itself. */
export class PocketPiano extends AudioClock implements Keys {
  readonly ahead = AHEAD;
  private readonly ready = new Map<number, { buffer: AudioBuffer; onset: number }>();
  private readonly limiter: DynamicsCompressorNode;
  private bus: GainNode;
  private readonly high: AudioBuffer;
  private readonly low: AudioBuffer;

  constructor() {
    super(new AudioContext({ latencyHint: "interactive" }));
    this.limiter = new DynamicsCompressorNode(this.native, LIMIT);
    this.limiter.connect(this.native.destination);
    this.bus = this.newBus();
    this.high = this.bufferOf([tapOf(TAPS.first, this.native.sampleRate)], this.native.sampleRate);
    this.low = this.bufferOf([tapOf(TAPS.other, this.native.sampleRate)], this.native.sampleRate);
  }

  async load(keys: Iterable<number>): Promise<void> {
    // One after the other, so that a small device has one of them in pieces at a time.
    for (const key of new Set([...keys].map(recordedFor))) {
      if (!this.ready.has(key)) {
        const buffer = await this.recordingOf(key);
        this.ready.set(key, { buffer, onset: onsetOf(buffer.getChannelData(0), buffer.sampleRate) });
      }
    }
  }

  strike(key: number, velocity: number, _hand: string, at: number, _length: number, rings: number): void {
    const recording = this.ready.get(recordedFor(key));
    if (recording) {
      const source = new AudioBufferSourceNode(this.native, { buffer: recording.buffer, playbackRate: rateOf(key) });
      const gain = new GainNode(this.native, { gain: levelOf(velocity) });
      gain.gain.setTargetAtTime(0, at + rings, FELT);
      source.connect(gain).connect(this.bus);
      source.start(at, recording.onset);
      source.stop(at + rings + DAMPING);
      source.onended = () => gain.disconnect();
    }
  }

  // What rings is told with each stroke.
  pedal(): void {}

  click(isFirst: boolean, at: number): void {
    const source = new AudioBufferSourceNode(this.native, { buffer: isFirst ? this.high : this.low });
    source.connect(new GainNode(this.native, { gain: TAP_LEVEL })).connect(this.bus);
    source.start(at);
  }

  silence(): void {
    const old = this.bus;
    old.gain.setTargetAtTime(0, this.time, STOP / 3);
    this.bus = this.newBus();
    setTimeout(() => old.disconnect(), STOP * 2000);
  }

  private newBus(): GainNode {
    const bus = new GainNode(this.native);
    bus.connect(this.limiter);
    return bus;
  }

  private async recordingOf(key: number): Promise<AudioBuffer> {
    const bytes = bytesOf(document.querySelector(`script[data-key="${key}"]`)!.textContent!);
    try {
      // It takes what it is given, so it gets a copy.
      return await this.native.decodeAudioData(bytes.slice().buffer);
    } catch {
      const { channels, rate } = await decode(bytes);
      return this.bufferOf(channels, rate);
    }
  }

  private bufferOf(channels: Float32Array<ArrayBuffer>[], rate: number): AudioBuffer {
    const buffer = new AudioBuffer({ length: channels[0]!.length, numberOfChannels: channels.length, sampleRate: rate });
    channels.forEach((samples, i) => buffer.copyToChannel(samples, i));
    return buffer;
  }
}

const bytesOf = (base64: string) => Uint8Array.from(atob(base64.trim()), (letter) => letter.charCodeAt(0));
