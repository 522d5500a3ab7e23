import { keyboards, listenTo } from "../sound/midiIn";
import type { Played } from "./midiFile";

const HIGH = 1400; // hertz: the first beat of a bar
const LOW = 1000;
const AHEAD = 0.15; // seconds in which clicks are laid ahead
const START = 0.3;

export interface Recording {
  /** Ends it. @returns what was played. */
  end: () => Played[];
}

/** Records every MIDI keyboard that is connected, to a click; the first bar is counted in.
 * @param onNote Called with how many keys were struck so far. */
export async function record(beatsPerMinute: number, beats: number, onNote: (count: number) => void): Promise<Recording> {
  if ((await keyboards()).length === 0) throw new NoKeyboard();
  const audio = new AudioContext();
  await audio.resume();
  const begin = audio.currentTime + START;
  const pageBegin = performance.now() + START * 1000;
  const period = 60 / beatsPerMinute;
  let beat = 0;
  const lay = () => {
    for (; begin + beat * period < audio.currentTime + AHEAD; beat++) click(audio, begin + beat * period, beat % beats === 0 ? HIGH : LOW);
  };
  lay();
  const timer = setInterval(lay, 40);
  const played: Played[] = [];
  const down = new Map<number, Played>();
  const release = (key: number, at: number) => {
    const note = down.get(key);
    if (note) note.until = at;
    down.delete(key);
  };
  const leave = listenTo(undefined, ({ moment, key, velocity }) => {
    if (key === undefined) return;
    const at = (moment - pageBegin) / 1000;
    release(key, at);
    if (!velocity) return;
    const note = { key, velocity, at, until: Infinity };
    down.set(key, note);
    played.push(note);
    onNote(played.length);
  });
  return {
    end() {
      clearInterval(timer);
      const now = (performance.now() - pageBegin) / 1000;
      for (const key of [...down.keys()]) release(key, now);
      leave();
      void audio.close();
      return fromFirstBar(played, period * beats);
    },
  };
}

/** No MIDI keyboard is connected. */
export class NoKeyboard extends Error {}

// Without a pick-up the bar of the count-in is left out.
function fromFirstBar(played: Played[], bar: number): Played[] {
  const EARLY = bar / 16;
  const isAfter = played.every((note) => note.at >= bar - EARLY);
  return played.map((note) => ({ ...note, at: note.at - (isAfter ? bar : 0), until: note.until - (isAfter ? bar : 0) }));
}

function click(audio: AudioContext, at: number, pitch: number): void {
  const tone = audio.createOscillator();
  const loudness = audio.createGain();
  tone.frequency.value = pitch;
  loudness.gain.setValueAtTime(0.25, at);
  loudness.gain.exponentialRampToValueAtTime(0.001, at + 0.05);
  tone.connect(loudness).connect(audio.destination);
  tone.start(at);
  tone.stop(at + 0.06);
}
