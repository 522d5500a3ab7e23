import type { SheetStroke } from "./spotApi";

/** A place or a length as an exact part of a whole note. */
export class Frac {
  private constructor(
    readonly above: number,
    readonly below: number,
  ) {}

  static of(text: string): Frac {
    const [above, below] = text.split("/").map(Number);
    return new Frac(above!, below ?? 1);
  }

  plus(other: Frac, times = 1): Frac {
    const above = this.above * other.below + times * other.above * this.below;
    const below = this.below * other.below;
    const by = common(Math.abs(above), below);
    return new Frac(above / by, below / by);
  }

  over(other: Frac): number {
    return (this.above * other.below) / (this.below * other.above);
  }

  less(other: Frac): boolean {
    return this.above * other.below < other.above * this.below;
  }

  toString(): string {
    return this.above === 0 ? "0" : this.below === 1 ? `${this.above}` : `${this.above}/${this.below}`;
  }
}

const common = (a: number, b: number): number => (b === 0 ? Math.max(1, a) : common(b, a % b));

const zero = Frac.of("0");
const letters = ["C", "C#", "D", "Eb", "E", "F", "F#", "G", "Ab", "A", "Bb", "B"];
const semitones: Record<string, number> = { C: 0, D: 2, E: 4, F: 5, G: 7, A: 9, B: 11 };
const LOWEST = 21;
const HIGHEST = 108;

function keyOf(pitch: string): number {
  const [, letter, signs, octave] = /^([A-G])([#b]*)(-?\d+)$/.exec(pitch) ?? ["", "C", "", "4"];
  const shift = [...signs!].reduce((sum, sign) => sum + (sign === "#" ? 1 : -1), 0);
  return semitones[letter!]! + shift + 12 * (Number(octave) + 1);
}

const named = (key: number) => `${letters[key % 12]}${Math.floor(key / 12) - 1}`;

const sorted = (strokes: SheetStroke[]) => [...strokes].sort((a, b) => (Frac.of(a.at).less(Frac.of(b.at)) ? -1 : 1));

const put = (strokes: SheetStroke[], at: number, change: (stroke: SheetStroke) => SheetStroke) =>
  strokes.map((stroke, i) => (i === at ? change(stroke) : stroke));

/** Every key a semitone up or down. */
export const pitched = (strokes: SheetStroke[], at: number, by: number) =>
  put(strokes, at, (stroke) => {
    const keys = stroke.pitches.map((p) => keyOf(p) + by);
    return keys.some((k) => k < LOWEST || k > HIGHEST) ? stroke : { ...stroke, pitches: keys.map(named) };
  });

export const moved = (strokes: SheetStroke[], at: number, step: Frac, by: number, end: Frac) =>
  put(strokes, at, (stroke) => {
    const to = Frac.of(stroke.at).plus(step, by);
    const isTaken = strokes.some((other, i) => i !== at && other.at === to.toString());
    return isTaken || to.less(zero) || !to.less(end) ? stroke : { ...stroke, at: to.toString() };
  });

export const lengthened = (strokes: SheetStroke[], at: number, step: Frac, by: number) =>
  put(strokes, at, (stroke) => {
    const to = Frac.of(stroke.length).plus(step, by);
    return zero.less(to) ? { ...stroke, length: to.toString() } : stroke;
  });

/** A stroke and the next one become one, held through. */
export function merged(strokes: SheetStroke[], at: number): SheetStroke[] {
  const [stroke, next] = [strokes[at], strokes[at + 1]];
  if (!stroke || !next) return strokes;
  const until = Frac.of(next.at).plus(Frac.of(next.length));
  const length = until.plus(Frac.of(stroke.at), -1).toString();
  return [...strokes.slice(0, at), { ...stroke, length }, ...strokes.slice(at + 2)];
}

/** A stroke is struck twice: in halves, or the second a step after the first. */
export function split(strokes: SheetStroke[], at: number, step: Frac): SheetStroke[] {
  const stroke = strokes[at];
  if (!stroke) return strokes;
  const units = Frac.of(stroke.length).over(step);
  if (units < 2) return strokes;
  const first = zero.plus(step, Math.floor(units / 2));
  const rest = Frac.of(stroke.length).plus(first, -1);
  return [
    ...strokes.slice(0, at),
    { ...stroke, length: first.toString() },
    { ...stroke, at: Frac.of(stroke.at).plus(first).toString(), length: rest.toString() },
    ...strokes.slice(at + 1),
  ];
}

/** A key a third or fourth under the lowest. */
export const thickened = (strokes: SheetStroke[], at: number) =>
  put(strokes, at, (stroke) => {
    const lowest = Math.min(...stroke.pitches.map(keyOf));
    return stroke.pitches.length > 5 || lowest - 4 < LOWEST ? stroke : { ...stroke, pitches: [named(lowest - 4), ...stroke.pitches] };
  });

/** Without its lowest key. */
export const thinned = (strokes: SheetStroke[], at: number) =>
  put(strokes, at, (stroke) => (stroke.pitches.length < 2 ? stroke : { ...stroke, pitches: stroke.pitches.slice(1) }));

export const deleted = (strokes: SheetStroke[], at: number) => strokes.filter((_, i) => i !== at);

/** A stroke more: in the first gap behind this one, or in its second half.
 * @returns the strokes, and which is the new one. */
export function added(strokes: SheetStroke[], at: number, step: Frac, end: Frac): [SheetStroke[], number] {
  const stroke = strokes[at];
  const pitches = stroke?.pitches ?? ["C4"];
  for (let place = stroke ? Frac.of(stroke.at).plus(step) : zero; place.less(end); place = place.plus(step)) {
    if (strokes.some((s) => s.at === place.toString())) continue;
    // Whatever sounds there ends where the new one begins.
    const cut = strokes.map((s) => {
      const from = Frac.of(s.at);
      const isOver = from.less(place) && place.less(from.plus(Frac.of(s.length)));
      return isOver ? { ...s, length: place.plus(from, -1).toString() } : s;
    });
    const made = { at: place.toString(), length: step.toString(), pitches: [...pitches], rolled: false, role: null };
    const all = sorted([...cut, made]);
    return [all, all.indexOf(made)];
  }
  return [strokes, at];
}
