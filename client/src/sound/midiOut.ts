import { WebMidi, type Output } from "webmidi";
import type { Instrument } from "./piano";

const SUSTAIN = 64;
const ALL_NOTES_OFF = 123;

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

class MidiInstrument implements Instrument {
  constructor(
    private readonly output: Output,
    private readonly heardAt: (time: number) => number,
  ) {}

  strike(key: number, velocity: number, hand: string, at: number, length: number): void {
    const channel = this.output.channels[hand === "left" ? 2 : 1]!;
    channel.sendNoteOn(key, { rawAttack: velocity, time: this.heardAt(at) });
    channel.sendNoteOff(key, { time: this.heardAt(at + length) });
  }

  pedal(down: boolean, at: number): void {
    for (const channel of [1, 2]) {
      this.output.channels[channel]!.sendControlChange(SUSTAIN, down ? 127 : 0, { time: this.heardAt(at) });
    }
  }

  silence(): void {
    this.output.clear();
    for (const channel of [1, 2]) {
      this.output.channels[channel]!.sendControlChange(ALL_NOTES_OFF, 0);
      this.output.channels[channel]!.sendControlChange(SUSTAIN, 0);
    }
  }
}
