import { finishTake, playOn, type PlayedEvent, type TakeSeen } from "./takeApi";

const EVERY = 1000; // milliseconds: what a page that dies loses at most
const AT_ONCE = 2000; // events
const UNTOLD = "stridewright-untold";

/** Tells what a page could not tell any more, since the program or the page itself was gone; once the program is there
 * again, all of it. */
export async function tellUntold(): Promise<void> {
  const left = localStorage.getItem(UNTOLD);
  if (left === null) return;
  localStorage.removeItem(UNTOLD);
  const { take, events } = JSON.parse(left) as { take: string; events: PlayedEvent[] };
  await playOn(take, 0, events).catch(() => undefined);
}

/** Takes down what is played and tells it to the host again and again, so that it is kept while it is played. */
export class Recorder {
  private readonly events: PlayedEvent[] = [];
  private told = 0;
  private telling = Promise.resolve();
  private readonly timer: ReturnType<typeof setInterval>;

  /** @param onProblem Called with why nothing can be kept for now, or with nothing once it can again. */
  constructor(
    readonly take: string,
    private readonly onProblem: (why: string | undefined) => void,
  ) {
    this.timer = setInterval(() => void this.tell().catch(() => undefined), EVERY);
    window.addEventListener("pagehide", this.leave);
  }

  get count(): number {
    return this.events.length;
  }

  add(event: PlayedEvent): void {
    this.events.push(event);
  }

  /** Ends it. @returns what was heard in it against a setting. */
  async finish(setting: string): Promise<TakeSeen> {
    this.stop();
    while (this.told < this.events.length) await this.tell();
    await this.telling;
    return finishTake(setting, this.take);
  }

  stop(): void {
    clearInterval(this.timer);
    window.removeEventListener("pagehide", this.leave);
  }

  /** Tells what is new now. */
  tell(): Promise<void> {
    this.telling = this.telling
      .catch(() => undefined)
      .then(async () => {
        if (this.told === this.events.length) return;
        const [from, some] = [this.told, this.events.slice(this.told, this.told + AT_ONCE)];
        try {
          this.told = Math.min(this.events.length, await playOn(this.take, from, some));
          this.onProblem(undefined);
          localStorage.removeItem(UNTOLD);
        } catch (fault) {
          this.keepUntold();
          this.onProblem((fault as Error).message);
          throw fault;
        }
      });
    return this.telling;
  }

  private readonly leave = () => {
    if (this.told === this.events.length) return;
    this.keepUntold();
    void playOn(this.take, this.told, this.events.slice(this.told), true).catch(() => undefined);
  };

  // All of it: the program that heard the beginning may not be the one that hears the rest.
  private keepUntold(): void {
    try {
      localStorage.setItem(UNTOLD, JSON.stringify({ take: this.take, events: this.events }));
    } catch {
      // Full, or not allowed: the program alone keeps it.
    }
  }
}
