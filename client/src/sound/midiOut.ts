import { WebMidi, type Output } from "webmidi";
import type { Instrument } from "./playing";

const SUSTAIN = 64;
const AHEAD = 0.4; // seconds: what was sent cannot be taken back, only ended
const SOON = 1; // milliseconds

/** The instruments that can be played on; asks for leave where the browser wants it. */
export async function instruments(): Promise<{ id: string; name: string }[]> {
  await WebMidi.enable();
  return WebMidi.outputs.map(({ id, name }) => ({ id, name }));
}

/** An instrument, by its id; undefined where it has gone. The right hand is on channel 1 and the left on 2, as in MIDI files.
 * @param heardAt The moment of the page at which a time of the audio clock is heard. */
export function instrument(id: string, heardAt: (time: number) => number): Instrument | undefined {
  const output = WebMidi.enabled ? WebMidi.getOutputById(id) : undefined;
  return output ? new MidiInstrument(output, heardAt) : undefined;
}

interface Sent {
  key: number;
  channel: number;
  on: number;
  off: number;
}

class MidiInstrument implements Instrument {
  readonly ahead = AHEAD;
  private sent: Sent[] = [];

  constructor(
    private readonly output: Output,
    private readonly heardAt: (time: number) => number,
  ) {}

  strike(key: number, velocity: number, hand: string, at: number, length: number): void {
    const note = { key, channel: hand === "left" ? 2 : 1, on: this.heardAt(at), off: this.heardAt(at + length) };
    this.output.channels[note.channel]!.sendNoteOn(key, { rawAttack: velocity, time: note.on });
    this.output.channels[note.channel]!.sendNoteOff(key, { time: note.off });
    this.sent = [...this.sent.filter((s) => s.off > performance.now()), note];
  }

  pedal(down: boolean, at: number): void {
    for (const channel of [1, 2]) {
      this.output.channels[channel]!.sendControlChange(SUSTAIN, down ? 127 : 0, { time: this.heardAt(at) });
    }
  }

  silence(): void {
    const now = performance.now();
    for (const { key, channel, on, off } of this.sent) {
      if (off > now) this.output.channels[channel]!.sendNoteOff(key, { time: Math.max(now, on) + SOON });
    }
    this.sent = [];
    for (const channel of [1, 2]) this.output.channels[channel]!.sendControlChange(SUSTAIN, 0);
  }
}
