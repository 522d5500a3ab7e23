import type { components } from "../contract";

export type Heard = components["schemas"]["Heard"];
export type HeardNote = components["schemas"]["HeardNote"];
export type HeardBar = components["schemas"]["HeardBar"];

/** What the rehearsal card says. */
export interface Rehearsal {
  /** Ids of the first and the last bar; null: the piece’s own. */
  from: string | null;
  to: string | null;
  hands: "both" | "right" | "left" | "tune";
  /** Share of the printed tempo. */
  speed: number;
  /** Bars that are counted in. */
  countIn: number;
  click: boolean;
  loop: boolean;
}

/** The whole piece as it stands. */
export const asItStands: Rehearsal = {
  from: null,
  to: null,
  hands: "both",
  speed: 1,
  countIn: 0,
  click: false,
  loop: false,
};

/** A key to be struck; seconds are from the start of what is played, at the speed of the rehearsal. */
export interface Struck {
  at: number;
  length: number;
  rings: number;
  note: HeardNote;
}

export interface Click {
  at: number;
  isFirst: boolean;
}

/** What is played, in seconds from its start; what is counted in lies before it. */
export interface Plan {
  struck: Struck[];
  clicks: Click[];
  /** Clicks before the start, the first time only. */
  counted: Click[];
  pedal: { at: number; down: boolean }[];
  length: number;
  /** Seconds of counting before the start. */
  lead: number;
  /** Where the start lies in the piece, in its own seconds. */
  start: number;
  speed: number;
  loop: boolean;
}

const SOON = 0.2; // seconds in which what is crushed or rolled into a bar comes before it
const EARLY = 1e-4; // of rounding

/** The bars of a rehearsal in the order they are played: from the first playing of its first bar. */
export function barsOf(heard: Heard, rehearsal: Rehearsal): HeardBar[] {
  // A bar that the setting does not have means its own first or last.
  const first = Math.max(0, heard.bars.findIndex((b) => b.id === rehearsal.from));
  const last = heard.bars.findIndex((b, i) => i >= first && b.id === rehearsal.to);
  return heard.bars.slice(first, last < 0 ? undefined : last + 1);
}

const isHeard = (note: HeardNote, hands: Rehearsal["hands"]) =>
  hands === "both" || (hands === "tune" ? note.kind === "tune" : note.hand === hands);

/** Plans a rehearsal, or a part of it from a place on.
 * @param place Seconds of the piece; what lies before it is left out the first time round. */
export function planOf(heard: Heard, rehearsal: Rehearsal): Plan {
  const bars = barsOf(heard, rehearsal);
  const first = bars[0];
  const last = bars.at(-1);
  if (!first || !last) {
    return { struck: [], clicks: [], counted: [], pedal: [], length: 0, lead: 0, start: 0, speed: 1, loop: false };
  }
  const { speed, loop } = rehearsal;
  const start = first.at;
  const end = last.at + last.length;
  const next = heard.bars[heard.bars.indexOf(last) + 1];
  const isOf = (note: HeardNote, bar: HeardBar | undefined) => bar !== undefined && (note.id ?? "").startsWith(`${bar.id}-`);
  const isInside = (note: HeardNote) =>
    note.at >= start - EARLY
      ? note.at < end - EARLY && !(note.at > end - SOON && isOf(note, next) && !isOf(note, last))
      : note.at >= start - SOON && isOf(note, first);
  const struck = heard.notes
    .filter((note) => isInside(note) && isHeard(note, rehearsal.hands))
    .map((note) => {
      const most = loop ? end - note.at : Infinity;
      return {
        at: (note.at - start) / speed,
        length: Math.min(note.length, most) / speed,
        rings: Math.min(note.rings, most) / speed,
        note,
      };
    });
  const inside = heard.pedal.filter((p) => p.at >= start && p.at < end).map((p) => ({ at: (p.at - start) / speed, down: p.down }));
  const counted = countedIn(heard.bars, first, rehearsal);
  const clicks = rehearsal.click
    ? bars.flatMap((bar) =>
        bar.beats.map((at, i) => ({ at: (at - start) / speed, isFirst: i === 0 && bar.beats.length === bar.count })),
      )
    : [];
  return {
    struck,
    clicks,
    counted,
    pedal: inside,
    length: (end - start) / speed,
    lead: counted.length > 0 ? -counted[0]!.at : 0,
    start,
    speed,
    loop,
  };
}

// Full bars, and before a pick-up the beats that it lacks.
function countedIn(bars: HeardBar[], first: HeardBar, { countIn, speed }: Rehearsal): Click[] {
  if (countIn === 0) {
    return [];
  }
  const full = bars.slice(bars.indexOf(first)).find((bar) => bar.beats.length === bar.count) ?? first;
  const beat = full.length / full.count / speed;
  const lacking = first.count - first.beats.length;
  const before = ((first.beats[0] ?? first.at) - first.at) / speed;
  const clicks = countIn * first.count + lacking;
  return Array.from({ length: clicks }, (_, i) => ({ at: before - (clicks - i) * beat, isFirst: i % first.count === 0 }));
}

/** The place of a note or of a bar in the piece, where it is first played. */
export function placeOf(heard: Heard, id: string): number | undefined {
  return heard.bars.find((b) => b.id === id)?.at ?? heard.notes.find((n) => n.id === id)?.at;
}

/** The bar that is played at a place. */
export function barAt(heard: Heard, place: number): HeardBar | undefined {
  return heard.bars.findLast((b) => b.at <= place + EARLY) ?? heard.bars[0];
}
