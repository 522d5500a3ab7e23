/** Keys that are struck together. */
export interface Chord {
  /** Seconds from the start of what is played. */
  at: number;
  keys: number[];
}

// What the player may do between two strokes, and what it costs.
const AGAIN = 0.6; // a key of the chord once more
const SKIP = 1; // a chord left out
const MOST_SKIPPED = 3;
const WRONG = 1.2; // a key that is not in the chord
const JUMP = 5; // to anywhere

const TOGETHER = 0.03; // seconds

/** The chords of notes in the order of time. */
export function chordsOf(notes: { at: number; note: { key: number } }[]): Chord[] {
  const chords: Chord[] = [];
  for (const { at, note } of [...notes].sort((a, b) => a.at - b.at)) {
    const last = chords.at(-1);
    if (last && at - last.at < TOGETHER) last.keys.push(note.key);
    else chords.push({ at, keys: [note.key] });
  }
  return chords;
}

/**
 * Follows a player through the chords of a score, stroke by stroke: Viterbi’s algorithm going forward over a hidden Markov
 * model with stays, steps, skips and jumps to anywhere, the model by which a take is afterwards laid along the score
 * (Nakamura, Yoshii and Katayose 2017), without its tempo. A stroke takes time linear in the chords.
 */
export class Follower {
  private costs: Float64Array;
  private masks: Int32Array; // keys of each chord that were struck on the best path to it
  private place = -1;

  constructor(private readonly chords: Chord[]) {
    this.costs = new Float64Array(chords.length).fill(JUMP);
    this.costs[0] = 0;
    this.masks = new Int32Array(chords.length);
  }

  /** A key is struck. @returns the chord that the player is at. */
  strike(key: number): number {
    const { chords, costs, masks } = this;
    const next = new Float64Array(chords.length);
    const struck = new Int32Array(chords.length);
    const jump = costs.reduce((least, cost) => Math.min(least, cost), Infinity) + JUMP;
    const isFirst = this.place < 0;
    for (let j = 0; j < chords.length; j++) {
      const at = chords[j]!.keys.indexOf(key);
      const bit = at < 0 ? 0 : 1 << Math.min(at, 30);
      // Staying.
      let best = costs[j]! + (bit !== 0 && (masks[j]! & bit) !== 0 ? AGAIN : 0);
      let mask = masks[j]! | bit;
      for (let step = 1; step <= MOST_SKIPPED + 1 && step <= j && !isFirst; step++) {
        const cost = costs[j - step]! + (step - 1) * SKIP;
        if (cost < best) [best, mask] = [cost, bit];
      }
      if (jump < best) [best, mask] = [jump, bit];
      next[j] = best + (at < 0 ? WRONG : 0);
      struck[j] = mask;
    }
    let here = Math.max(0, this.place);
    for (let j = 0; j < chords.length; j++) {
      const better = next[j]! - next[here]!;
      if (better < -1e-9 || (Math.abs(better) <= 1e-9 && Math.abs(j - this.place) < Math.abs(here - this.place))) here = j;
    }
    const least = next[here] ?? 0;
    this.costs = next.map((cost) => cost - least);
    this.masks = struck;
    this.place = here;
    return here;
  }

  /** The last chord was struck, with all its keys. */
  get isAtEnd(): boolean {
    const last = this.chords.length - 1;
    const all = this.chords[last]?.keys.map((_, i) => 1 << Math.min(i, 30)).reduce((a, b) => a | b, 0) ?? 0;
    return last >= 0 && this.place === last && (this.masks[last]! & all) === all;
  }
}
