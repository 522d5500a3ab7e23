/** A key that was struck: seconds from the first beat of the count-in. */
export interface Played {
  key: number;
  velocity: number;
  at: number;
  until: number;
}

const TICKS = 480; // a quarter note

/** A Standard MIDI File of what was played to a click (format 0), so that the grid of its beats is the click's. */
export function midiFile(played: Played[], beatsPerMinute: number, metre: { count: number; unit: number }): Uint8Array<ArrayBuffer> {
  const perSecond = (beatsPerMinute / 60) * TICKS * (4 / metre.unit);
  const tick = (seconds: number) => Math.max(0, Math.round(seconds * perSecond));
  const events = played
    .flatMap(({ key, velocity, at, until }) => [
      { tick: tick(at), bytes: [0x90, key, velocity], isOff: false },
      { tick: Math.max(tick(at) + 1, tick(until)), bytes: [0x80, key, 0], isOff: true },
    ])
    .sort((a, b) => a.tick - b.tick || Number(b.isOff) - Number(a.isOff));
  const quarter = Math.round(60_000_000 / (beatsPerMinute * (4 / metre.unit)));
  const track = [
    ...[0, 0xff, 0x51, 3, ...bytes(quarter, 3)],
    ...[0, 0xff, 0x58, 4, metre.count, Math.log2(metre.unit), 24, 8],
  ];
  let before = 0;
  for (const event of events) {
    track.push(...variable(event.tick - before), ...event.bytes);
    before = event.tick;
  }
  track.push(0, 0xff, 0x2f, 0);
  return new Uint8Array([...text("MThd"), ...bytes(6, 4), 0, 0, 0, 1, ...bytes(TICKS, 2), ...text("MTrk"), ...bytes(track.length, 4), ...track]);
}

const text = (word: string) => [...word].map((c) => c.charCodeAt(0));

const bytes = (value: number, count: number) => Array.from({ length: count }, (_, i) => (value >> (8 * (count - 1 - i))) & 0xff);

// A number in groups of seven bits, the last one without its high bit.
function variable(value: number): number[] {
  const groups = [value & 0x7f];
  for (let rest = value >> 7; rest > 0; rest >>= 7) groups.unshift((rest & 0x7f) | 0x80);
  return groups;
}
