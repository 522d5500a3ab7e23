const LOWEST = 21;
const APART = 6; // every second of the recorded keys: half to load, and no note is stretched further than a minor third
const HIGHEST = 105;
const RECORDED_VELOCITY = 76; // of the recordings, as in the sound files
const LEVEL = 0.6;

// A recording begins with some silence: the stroke is where it first reaches this share of its peak, kept from a millisecond
// before, as in the sound files.
const ONSET_SHARE = 0.03;
const BEFORE_ONSET = 0.001; // seconds

/** The recorded key on which a key is played. */
export const recordedFor = (key: number) =>
  Math.min(HIGHEST, Math.max(LOWEST, LOWEST + APART * Math.round((key - LOWEST) / APART)));

/** How much faster than it was recorded a key’s recording runs. */
export const rateOf = (key: number) => 2 ** ((key - recordedFor(key)) / 12);

/** The gain of a stroke. */
export const levelOf = (velocity: number) => LEVEL * (velocity / RECORDED_VELOCITY) ** 2;

/** Seconds of a recording before its stroke. */
export function onsetOf(samples: Float32Array, rate: number): number {
  const first = samples.subarray(0, rate / 2);
  const peak = first.reduce((most, sample) => Math.max(most, Math.abs(sample)), 0);
  return Math.max(0, first.findIndex((sample) => Math.abs(sample) >= ONSET_SHARE * peak) / rate - BEFORE_ONSET);
}

/** A short tap with a pitch of its own, for the click. */
export const tapOf = (hertz: number, rate: number) =>
  Float32Array.from({ length: Math.round(rate * 0.04) }, (_, i) => Math.sin((2 * Math.PI * hertz * i) / rate) * Math.exp(-i / rate / 0.008));

/** Pitches of the click, in hertz, on the first beat of a bar and on others. */
export const TAPS = { first: 1760, other: 1175 };

/** Loudness of the click. */
export const TAP_LEVEL = 0.4;

/** Seconds that strokes are handed on before they are due: more than a page in the background sleeps. */
export const AHEAD = 1.2;

/** Seconds until the felt has stopped a string; it falls to a third in 70 ms, as in the sound files. */
export const DAMPING = 0.45;

/** Seconds in which all is silenced. */
export const STOP = 0.03;
