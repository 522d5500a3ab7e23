// Of the averaged clock: milliseconds that are a leap, the least weight of what is told, and the first tellings.
const LEAP = 50;
const SLOWLY = 0.01;
const ENOUGH = 8;
const BETWEEN = 12; // milliseconds

/** The audio clock, and when it reaches the ear. */
export class AudioClock {
  private offset = NaN; // milliseconds
  private told = 0; // how often it was told without a leap

  constructor(protected readonly native: AudioContext) {}

  /** Must follow a hand’s action, since browsers keep pages silent until then. */
  async wake(): Promise<void> {
    await this.native.resume();
    for (let i = 0; this.told < ENOUGH && i < ENOUGH; i++) {
      await new Promise((resolve) => setTimeout(resolve, BETWEEN));
      this.begun();
    }
  }

  get time(): number {
    return this.native.currentTime;
  }

  /** The moment, as the page counts (performance.now), at which a time of the audio clock reaches the ear. */
  heardAt(time: number): number {
    return this.begun() + time * 1000;
  }

  /** The time of the audio clock that is heard at a moment of the page. */
  heard(moment: number): number {
    return (moment - this.begun()) / 1000;
  }

  // The moment of the page at which the audio clock was nought, to the ear. The browser tells it anew with every buffer, some
  // milliseconds to and fro: it is averaged, but not over a leap.
  private begun(): number {
    const context = this.native;
    const stamp = context.getOutputTimestamp?.();
    const told = stamp?.performanceTime && stamp.contextTime !== undefined
      ? stamp.performanceTime - stamp.contextTime * 1000
      : performance.now() - (context.currentTime - (context.outputLatency || context.baseLatency || 0)) * 1000;
    this.told = Math.abs(told - this.offset) < LEAP ? this.told + 1 : 1;
    this.offset = this.told === 1 ? told : this.offset + (told - this.offset) * Math.max(SLOWLY, 1 / this.told);
    return this.offset;
  }
}
