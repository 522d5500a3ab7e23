const REMEMBERED = "stridewright-taps-late";

/** Clicks of the check, and the seconds between them. */
export const CHECK_CLICKS = 12;
export const CHECK_EVERY = 0.6;

const LEAD = 2; // clicks that are only listened to
const NEAR = 0.3; // seconds from a click that are still its tap
const FEWEST = 5;

/** How late the taps come after the click on this machine, in milliseconds; undefined: nobody looked. */
export function knownLatency(): number | undefined {
  const told = localStorage.getItem(REMEMBERED);
  return told === null ? undefined : Number(told);
}

/** The median of how far taps lie behind their clicks, and remembers it.
 * @param taps Milliseconds.
 * @param first When the first click was heard, in milliseconds.
 * @returns undefined where there were too few. */
export function latencyOf(taps: number[], first: number): number | undefined {
  const offsets: number[] = [];
  for (let click = LEAD; click < CHECK_CLICKS; click++) {
    const heard = first + click * CHECK_EVERY * 1000;
    const own = taps.map((tap) => tap - heard).filter((offset) => Math.abs(offset) < NEAR * 1000);
    if (own.length > 0) offsets.push(own.reduce((a, b) => (Math.abs(a) < Math.abs(b) ? a : b)));
  }
  if (offsets.length < FEWEST) return undefined;
  offsets.sort((a, b) => a - b);
  const middle = offsets.length / 2;
  const median = (offsets[Math.ceil(middle) - 1]! + offsets[Math.floor(middle)]!) / 2;
  localStorage.setItem(REMEMBERED, String(median));
  return median;
}
