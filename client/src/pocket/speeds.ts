import { sentences } from "../sentences";

const SHARES = [0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 1, 1.1, 1.2];

/** The speeds that are offered, each with its tempo.
 * @param quarters A minute, at the score’s own speed.
 * @param now The share that is chosen: offered even where it is none of the usual ones. */
export function speedsFor(quarters: number, now: number): [number, string][] {
  const shares = SHARES.includes(now) ? SHARES : [...SHARES, now].sort((a, b) => a - b);
  return shares.map((share) => [share, sentences.pocket.speed(share, Math.round(quarters * share))]);
}
