import { WebMidi, type MessageEvent } from "webmidi";

const SUSTAIN = 64;
const DOWN = 64; // of 127: from here the pedal is down (MIDI 1.0)

/** What a keyboard told. */
export interface Told {
  /** As the page counts, in milliseconds. */
  moment: number;
  key?: number;
  /** 0: let go. */
  velocity?: number;
  pedal?: boolean;
}

/** The keyboards that are connected; asks for leave where the browser wants it. */
export async function keyboards(): Promise<{ id: string; name: string }[]> {
  await WebMidi.enable();
  return WebMidi.inputs.map(({ id, name }) => ({ id, name }));
}

/** Calls whenever a keyboard was connected or taken away. @returns what ends it. */
export function onKeyboards(change: () => void): () => void {
  WebMidi.addListener("portschanged", change);
  return () => WebMidi.removeListener("portschanged", change);
}

/** Listens to a keyboard, or to all of them. @returns what ends it. */
export function listenTo(id: string | undefined, onTold: (told: Told) => void): () => void {
  const inputs = WebMidi.inputs.filter((input) => id === undefined || input.id === id);
  const hear = (event: MessageEvent) => {
    const told = understood(event);
    if (told) onTold(told);
  };
  for (const input of inputs) input.addListener("midimessage", hear);
  return () => {
    for (const input of inputs) input.removeListener("midimessage", hear);
  };
}

function understood({ rawData, timestamp }: MessageEvent & { rawData?: Uint8Array }): Told | undefined {
  const [status = 0, first = 0, second = 0] = rawData ?? [];
  const moment = timestamp;
  switch (status & 0xf0) {
    case 0x90:
      return { moment, key: first, velocity: second };
    case 0x80:
      return { moment, key: first, velocity: 0 };
    case 0xb0:
      return first === SUSTAIN ? { moment, pedal: second >= DOWN } : undefined;
    default:
      return undefined;
  }
}
