import { sentences } from "../sentences";
import { follow, ONE_STROKE } from "../sound/follow";
import { asItStands, barAt, barsOf, placeOf, planOf, type HeardBar, type Rehearsal } from "../sound/plan";
import { Playing } from "../sound/playing";
import { pocket, type Part, type Task } from "./data";
import { make, pick } from "./make";
import { Pages } from "./pages";
import { PocketPiano } from "./piano";
import { speedsFor } from "./speeds";

const words = sentences.pocket;

/** A score that is played: its pages, the sentence that says how, and the line that plays it. */
export class Desk {
  readonly element: HTMLElement;
  readonly playWord = make("button", { type: "button", class: "word", click: () => this.toggle() }, sentences.play);
  private readonly slider = make("span", { class: "word", role: "slider", tabindex: 0, "aria-label": sentences.place, "aria-valuemin": 1, keydown: (event) => this.step(event as KeyboardEvent) });
  private readonly told = make("p", { class: "pencil", role: "status" });
  private readonly pages = new Pages(() => this.stand(this.place));
  private readonly parts = pick(words.part, pocket.parts.map((part, i) => [i, part.title]), (i: number) => this.show(i));
  private readonly from = pick<string>(sentences.firstBar, [], (from) => this.change({ from }));
  private readonly to = pick<string>(sentences.lastBar, [], (to) => this.change({ to }));
  private readonly hands = pick(sentences.hands.about, (["both", "right", "left", "tune"] as const).map((h) => [h, sentences.hands[h]]), (hands) => this.change({ hands }));
  private readonly speed = pick<number>(sentences.speed.about, [], (speed) => this.change({ speed }));
  private readonly countIn = pick(sentences.countIn.about, [[0, sentences.countIn.none], [1, sentences.countIn.one], [2, sentences.countIn.two]], (countIn: number) => this.change({ countIn }));
  private readonly loop = pick(sentences.loop.about, [[false, sentences.loop.once], [true, sentences.loop.again]], (loop: boolean) => this.change({ loop }));
  private part: Part = pocket.parts[0]!;
  private rehearsal: Rehearsal = { ...asItStands, countIn: 1 };
  private place = 0; // seconds of the piece
  private player: Playing | undefined;
  private isPlaying = false;
  private turn = 0;

  constructor() {
    const kept = (word: Node, sign: string) => make("span", { class: "kept" }, word, sign);
    this.element = make(
      "section",
      { "aria-label": sentences.score },
      make("h2", {}, words.rehearse),
      pocket.parts.length > 1 && make("p", {}, words.onDesk, this.parts.select, "."),
      make(
        "p",
        { class: "sentence" },
        sentences.cardBars, this.from.select, sentences.cardTo, kept(this.to.select, ","), " ", kept(this.hands.select, ","), " ",
        kept(this.speed.select, ","), " ", kept(this.countIn.select, ","), " ", kept(this.loop.select, "."),
      ),
      make(
        "div",
        { class: "play-line" },
        make(
          "p",
          {},
          this.playWord, sentences.from, this.slider, words.or,
          make("button", { type: "button", class: "word", click: () => this.change({ from: this.bar.id, to: this.later(this.rehearsal.to) }) }, words.beginHere),
          words.orElse,
          make("button", { type: "button", class: "word", click: () => this.change({ to: this.bar.id, from: this.earlier(this.rehearsal.from) }) }, words.endHere),
          ".",
        ),
        this.told,
      ),
      this.pages.element,
      make("p", { class: "rights" }, words.keys),
    );
    this.pages.element.addEventListener("click", (event) => this.choose(event));
    this.pages.element.addEventListener("dblclick", () => !this.isPlaying && void this.play(this.place));
    window.addEventListener("keydown", (event) => this.press(event));
    window.addEventListener("pagehide", () => this.stop());
  }

  /** Lays another part of the file out, from its first bar to its last. */
  show(index: number): void {
    this.stop();
    this.part = pocket.parts[index]!;
    this.parts.show(index);
    const { bars } = this.part.heard;
    const numbers = uniqueBars(bars).map((b): [string, string] => [b.id, b.number]);
    this.from.offer(numbers);
    this.to.offer(numbers);
    this.slider.setAttribute("aria-valuemax", String(Math.max(1, bars.length)));
    this.pages.put(index, this.part.title);
    this.rehearsal = { ...this.rehearsal, from: numbers[0]![0], to: numbers.at(-1)![0], hands: "both", speed: 1 };
    this.showRehearsal();
    this.stand(0);
    this.told.textContent = "";
  }

  /** Lays out what a line of today’s list asks for. */
  layOut(task: Task): void {
    this.show(task.part);
    const { bars } = this.part.heard;
    const first = bars.find((b) => b.number === task.firstBar) ?? bars[0]!;
    const last = bars.findLast((b) => b.number === task.lastBar) ?? bars.at(-1)!;
    this.rehearsal = {
      ...this.rehearsal,
      from: first.id,
      to: last.id,
      hands: task.hand ?? "both",
      speed: task.quartersPerMinute ? task.quartersPerMinute / this.part.quartersPerMinute : 1,
      loop: true,
    };
    this.showRehearsal();
    this.stand(first.at);
  }

  private get bar(): HeardBar {
    return barAt(this.part.heard, this.place)!;
  }

  private showRehearsal(): void {
    const { from, to, hands, speed, countIn, loop } = this.rehearsal;
    this.speed.offer(speedsFor(this.part.quartersPerMinute, speed));
    this.from.show(from!);
    this.to.show(to!);
    this.hands.show(hands);
    this.speed.show(speed);
    this.countIn.show(countIn);
    this.loop.show(loop);
  }

  private change(change: Partial<Rehearsal>): void {
    if (change.from) change.to ??= this.later(this.rehearsal.to, change.from);
    else if (change.to) change.from ??= this.earlier(this.rehearsal.from, change.to);
    this.rehearsal = { ...this.rehearsal, ...change };
    this.showRehearsal();
    if (this.isPlaying) void this.play(this.player?.place(performance.now()) ?? this.place);
  }

  // The last bar as it is, unless it would lie before the first.
  private later(to: string | null, from = this.bar.id): string {
    return to !== null && this.indexOf(to) >= this.indexOf(from) ? to : from;
  }

  private earlier(from: string | null, to = this.bar.id): string {
    return from !== null && this.indexOf(from) <= this.indexOf(to) ? from : to;
  }

  private indexOf(id: string): number {
    return this.part.heard.bars.findIndex((b) => b.id === id);
  }

  private stand(place: number): void {
    this.place = place;
    const { heard } = this.part;
    const { bar } = this;
    const index = heard.bars.indexOf(bar);
    this.slider.textContent = sentences.bar(bar.number);
    this.slider.setAttribute("aria-valuenow", String(index + 1));
    this.slider.setAttribute("aria-valuetext", sentences.bar(bar.number));
    if (!this.isPlaying) {
      const note = heard.notes.find((n) => Math.abs(n.at - place) < ONE_STROKE);
      this.pages.cursor.rest(Math.abs(bar.at - place) < ONE_STROKE ? bar.id : (note?.id ?? bar.id));
    }
  }

  private toggle(): void {
    if (this.isPlaying) this.stop();
    else void this.play(this.place);
  }

  private stop(): void {
    this.turn++;
    const at = this.player?.place(performance.now());
    this.player?.stop();
    if (this.isPlaying) this.end(at === undefined ? this.place : barAt(this.part.heard, at)!.at, sentences.stopped);
  }

  private end(place: number, said: string): void {
    this.isPlaying = false;
    this.playWord.textContent = sentences.play;
    this.told.textContent = said;
    this.pages.cursor.hide();
    this.stand(place);
  }

  private async play(from: number): Promise<void> {
    const mine = ++this.turn;
    const { heard } = this.part;
    this.told.className = "pencil";
    this.told.textContent = words.preparing;
    this.isPlaying = true;
    this.playWord.textContent = sentences.stop;
    try {
      this.player ??= new Playing(new PocketPiano());
      const bars = barsOf(heard, this.rehearsal);
      const start = bars[0]!.at;
      const end = bars.at(-1)!.at + bars.at(-1)!.length;
      // A place outside the rehearsal’s bars means its start.
      const skipped = from <= start || from >= end ? 0 : (from - start) / this.rehearsal.speed;
      const plan = planOf(heard, this.rehearsal);
      const notes = plan.struck.map((s) => s.note);
      this.pages.cursor.measure(notes);
      await this.player.play(plan, skipped, this.player.piano, () => this.end(start, sentences.stopped));
      if (mine !== this.turn) return;
      this.told.textContent = sentences.playing(sentences.bar(barAt(heard, skipped > 0 ? from : start)!.number));
      const draw = () => {
        if (mine !== this.turn || !this.isPlaying) return;
        const at = this.player!.place(performance.now());
        if (at !== undefined) {
          follow(this.pages.cursor, this.pages.layer, notes, at);
          this.slider.textContent = sentences.bar(barAt(heard, at)!.number);
        }
        requestAnimationFrame(draw);
      };
      draw();
    } catch (fault) {
      if (mine !== this.turn) return;
      this.end(this.place, fault instanceof Error ? fault.message : sentences.noSound);
      this.told.className = "pencil fault";
    }
  }

  private go(place: number): void {
    this.stand(place);
    if (this.isPlaying) void this.play(place);
  }

  private choose(event: MouseEvent): void {
    const id = this.pages.cursor.idAt(event.clientX, event.clientY);
    const place = id === undefined ? undefined : placeOf(this.part.heard, id);
    if (place !== undefined) this.go(place);
  }

  private step(event: KeyboardEvent): void {
    const { bars } = this.part.heard;
    const steps: Record<string, number> = { ArrowLeft: -1, ArrowDown: -1, ArrowRight: 1, ArrowUp: 1, PageDown: 8, PageUp: -8, Home: -bars.length, End: bars.length };
    const step = steps[event.key];
    if (step !== undefined) {
      this.go(bars[Math.min(bars.length - 1, Math.max(0, bars.indexOf(this.bar) + step))]!.at);
    } else if (event.key === "Enter") {
      this.toggle();
    } else {
      return;
    }
    event.preventDefault();
  }

  // Space plays and stops, but where it has a meaning of its own; Escape stops.
  private press(event: KeyboardEvent): void {
    const isTaken = (event.target as HTMLElement).closest("button, input, select") !== null;
    if (event.key === " " && !isTaken && !event.repeat) {
      event.preventDefault();
      this.toggle();
    } else if (event.key === "Escape") {
      this.stop();
    }
  }
}

// A repeated bar is chosen once.
const uniqueBars = (bars: HeardBar[]) => bars.filter((bar, i) => bars.findIndex((b) => b.id === bar.id) === i);
