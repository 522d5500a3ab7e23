import type { Click, Plan } from "./plan";

/** Something that plays: the piano of this page, or an instrument. Times are those of the audio clock, in seconds. */
export interface Instrument {
  /** Seconds that strokes are handed on before they are due. */
  readonly ahead: number;
  strike(key: number, velocity: number, hand: string, at: number, length: number, rings: number): void;
  pedal(down: boolean, at: number): void;
  /** Stops all that sounds or was to sound. */
  silence(): void;
}

/** A piano whose clock all else goes by. */
export interface Keys extends Instrument {
  readonly time: number;
  wake(): Promise<void>;
  heard(moment: number): number;
  heardAt(time: number): number;
  /** Fetches what some keys need to sound. */
  load(keys: Iterable<number>): Promise<void>;
  click(isFirst: boolean, at: number): void;
}

const EVERY = 150; // milliseconds
const PREPARED = 0.3; // seconds from the start to the first sound: room for what is crushed before it

const EARLY = 1e-4; // of rounding

interface Due {
  at: number;
  play: (at: number) => void;
}

/** Plays a plan by the audio clock, and knows what is heard. */
export class Playing<Piano extends Keys = Keys> {
  private timer: ReturnType<typeof setInterval> | undefined;
  private plan: Plan | undefined;
  private instrument: Instrument;
  private begin = 0; // the plan’s start by the audio clock
  private body: Due[] = []; // of one round
  private due: Due[] = []; // of the round at hand
  private next = 0;
  private round = 0;
  private turn = 0;

  constructor(readonly piano: Piano) {
    this.instrument = piano;
  }

  /** @param skipped Seconds of the plan that are left out the first time; nothing is counted in then.
   * @param onEnd Called when the last of it was heard. */
  async play(plan: Plan, skipped: number, instrument: Instrument, onEnd: () => void): Promise<void> {
    this.stop();
    const mine = ++this.turn;
    await this.piano.wake();
    if (instrument === this.piano) await this.piano.load(plan.struck.map((s) => s.note.key));
    if (mine !== this.turn) return; // stopped, or asked for something else, meanwhile
    this.plan = plan;
    this.instrument = instrument;
    this.begin = this.piano.time + PREPARED + plan.lead - skipped;
    this.body = this.dueOf(plan);
    this.round = 0;
    this.due = skipped > 0 ? this.body.filter((d) => d.at > skipped - EARLY) : [...this.clicksOf(plan.counted), ...this.body];
    this.next = 0;
    const tick = () => {
      this.handOn(plan);
      if (!plan.loop && this.piano.heard(performance.now()) > this.begin + plan.length) {
        this.halt();
        onEnd();
      }
    };
    this.timer = setInterval(tick, EVERY);
    tick();
  }

  /** The moment of the page at which the plan’s start is heard. */
  get startsAt(): number {
    return this.piano.heardAt(this.begin);
  }

  /** Silence at once. */
  stop(): void {
    this.turn++;
    if (this.halt()) {
      this.instrument.silence();
      this.piano.silence();
    }
  }

  /** Seconds of the piece that are heard at a moment of the page; undefined when nothing plays, or while it is counted in. */
  place(moment: number): number | undefined {
    const { plan } = this;
    if (!plan || plan.length === 0) {
      return undefined;
    }
    const played = this.piano.heard(moment) - this.begin;
    return played < -PREPARED || (!plan.loop && played > plan.length)
      ? undefined
      : plan.start + (plan.loop && played > 0 ? played % plan.length : played) * plan.speed;
  }

  private halt(): boolean {
    const was = this.plan !== undefined;
    clearInterval(this.timer);
    this.plan = undefined;
    return was;
  }

  private dueOf(plan: Plan): Due[] {
    const strokes = plan.struck.map(({ at, length, rings, note }) => ({
      at,
      play: (time: number) => this.instrument.strike(note.key, note.velocity, note.hand, time, length, rings),
    }));
    const pedal = plan.pedal.map((p) => ({ at: p.at, play: (time: number) => this.instrument.pedal(p.down, time) }));
    return [...pedal, ...strokes, ...this.clicksOf(plan.clicks)].sort((a, b) => a.at - b.at);
  }

  private clicksOf(clicks: Click[]): Due[] {
    return clicks.map((c) => ({ at: c.at, play: (time: number) => this.piano.click(c.isFirst, time) }));
  }

  private handOn(plan: Plan): void {
    const until = this.piano.time + this.instrument.ahead;
    for (;;) {
      const due = this.due[this.next];
      const start = this.begin + this.round * plan.length;
      if (due && start + due.at <= until) {
        due.play(start + due.at);
        this.next++;
      } else if (!due && plan.loop && plan.length > 0 && this.body.length > 0) {
        this.round++;
        this.due = this.body;
        this.next = 0;
      } else {
        return;
      }
    }
  }
}
