import { useEffect, useRef, useState } from "react";
import { sentences } from "../sentences";
import type { Pencil } from "../sound/Listen";
import { asItStands, barAt, barsOf, planOf, type Rehearsal } from "../sound/plan";
import { chordsOf, Follower } from "./follower";
import { CHECK_CLICKS, CHECK_EVERY, knownLatency, latencyOf } from "./latency";
import { Recorder } from "./recorder";
import { beginTake, putTakeAway, type TakeSeen, type TakeWish } from "./takeApi";
import type { Told } from "../sound/midiIn";

const LEAD_IN = 1000; // milliseconds of a take before its first bar
const QUIET = 300; // milliseconds after the last chord
const TAIL = 900; // milliseconds after the last tap is due
/** Keys that stand for the hands where they are tapped. */
export const TAPPED = { right: 84, left: 48 };

/** "opening": a take is being begun, and nothing is heard yet. */
export type Stage = "ready" | "opening" | "checking" | "listening" | "thinking";

interface Props {
  setting: string;
  /** The pencil of the last drawing. */
  pencil: () => Pencil | undefined;
  onSeen: (seen: TakeSeen) => void;
}

/** Taking down what is played: from a keyboard, or tapped on two keys. */
export function useTaking({ setting, pencil, onSeen }: Props) {
  const [stage, setStage] = useState<Stage>("ready");
  const [fault, setFault] = useState<string>();
  const [late, setLate] = useState(knownLatency);
  const [bar, setBar] = useState<string>();
  const [isTapping, setTapping] = useState(false);
  const recorder = useRef<Recorder>(undefined);
  const end = useRef<() => void>(undefined);
  const told = useRef<(told: Told) => void>(undefined);
  const turn = useRef(0);
  const timer = useRef(0);

  function silence() {
    turn.current++;
    window.clearTimeout(timer.current);
    end.current?.();
    end.current = undefined;
    told.current = undefined;
    pencil()?.player.stop();
    setTapping(false);
    setBar(undefined);
  }

  /** @param keyboard Id of the keyboard; null: the rhythm is tapped. */
  async function begin(rehearsal: Rehearsal, keyboard: string | null, who: { player: string; piece: string | undefined }) {
    const now = pencil();
    const heard = now?.player.heard;
    if (!now || !heard || stage !== "ready") return;
    const mine = ++turn.current;
    setFault(undefined);
    setStage("opening");
    try {
      const isTaps = keyboard === null;
      const wanted: Rehearsal = {
        ...rehearsal,
        hands: rehearsal.hands === "tune" ? "right" : rehearsal.hands,
        loop: false,
        ...(isTaps ? { click: true, countIn: Math.max(1, rehearsal.countIn) } : {}),
      };
      const wish: TakeWish = {
        from: wanted.from,
        to: wanted.to,
        hand: wanted.hands === "both" ? null : wanted.hands,
        speed: wanted.speed,
        taps: isTaps,
        player: who.player || null,
        piece: who.piece ?? null,
      };
      const plan = planOf(heard, wanted);
      const chords = chordsOf(plan.struck);
      const follower = new Follower(chords);
      const hear = isTaps ? undefined : (await import("../sound/midiIn")).listenTo;
      const take = await beginTake(setting, wish);
      if (mine !== turn.current) return void (await putTakeAway(take));
      const rec = new Recorder(take, setFault);
      recorder.current = rec;
      let zero: number | undefined; // the moment at which the first bar begins
      told.current = ({ moment, key, velocity, pedal }) => {
        if (zero === undefined && (plan.lead > 0 || wanted.click || !velocity)) return;
        zero ??= moment;
        const at = (moment - zero + LEAD_IN - (isTaps ? (late ?? 0) : 0)) / 1000;
        if (at < 0) return;
        rec.add(pedal === undefined ? { at, key: key!, velocity: velocity ?? 0 } : { at, velocity: 0, pedal });
        if (isTaps || key === undefined || !velocity || chords.length === 0) return;
        const place = plan.start + chords[follower.strike(key)]!.at * plan.speed;
        setBar(barAt(heard, place)?.id);
        window.clearTimeout(timer.current);
        if (!follower.isAtEnd) return;
        void rec.tell().catch(() => undefined);
        timer.current = window.setTimeout(() => void finish(), QUIET);
      };
      if (hear) end.current = hear(keyboard!, (t) => told.current?.(t));
      else setTapping(true);
      setStage("listening");
      if (plan.lead > 0 || wanted.click) {
        zero = await now.player.beat({ ...plan, struck: [], pedal: [] });
        if (mine !== turn.current) return;
        if (isTaps) {
          const wait = zero + plan.length * 1000 + TAIL - performance.now();
          timer.current = window.setTimeout(() => void finish(), wait);
        }
      }
      setBar(barsOf(heard, wanted)[0]?.id);
    } catch (failure) {
      if (mine === turn.current) await giveUp((failure as Error).message);
    }
  }

  async function finish() {
    const rec = recorder.current;
    silence();
    recorder.current = undefined;
    if (!rec) return setStage("ready");
    setStage("thinking");
    try {
      if (rec.count === 0) {
        rec.stop();
        await putTakeAway(rec.take);
        setFault(sentences.hearing.nothing);
      } else {
        onSeen(await rec.finish(setting));
      }
    } catch (failure) {
      setFault((failure as Error).message);
    } finally {
      setStage("ready");
    }
  }

  async function giveUp(why: string) {
    const rec = recorder.current;
    silence();
    recorder.current = undefined;
    rec?.stop();
    setStage("ready");
    setFault(why);
  }

  /** Taps to a click show how late they come on this machine. */
  async function check() {
    const now = pencil();
    if (!now || stage !== "ready") return;
    const mine = ++turn.current;
    setFault(undefined);
    setStage("checking");
    setTapping(true);
    const taps: number[] = [];
    told.current = ({ moment, velocity }) => void (velocity && taps.push(moment));
    try {
      const clicks = Array.from({ length: CHECK_CLICKS }, (_, i) => ({ at: i * CHECK_EVERY, isFirst: i % 4 === 0 }));
      const length = CHECK_CLICKS * CHECK_EVERY;
      const plan = { ...planOf({ seconds: 0, notes: [], pedal: [], bars: [] }, asItStands), clicks, length };
      const first = await now.player.beat(plan);
      if (mine !== turn.current) return;
      timer.current = window.setTimeout(() => {
        silence();
        const found = latencyOf(taps, first);
        if (found === undefined) setFault(sentences.hearing.fewTaps);
        else setLate(found);
        setStage("ready");
      }, first + length * 1000 - performance.now());
    } catch (failure) {
      if (mine === turn.current) await giveUp((failure as Error).message);
    }
  }

  function leave() {
    if (stage === "checking") {
      silence();
      setStage("ready");
    } else if (stage === "listening") {
      void finish();
    }
  }

  useEffect(
    () => () => {
      turn.current++;
      void recorder.current?.tell().catch(() => undefined);
      recorder.current?.stop();
      end.current?.();
      window.clearTimeout(timer.current);
    },
    [],
  );

  return {
    stage,
    fault,
    setFault,
    /** Milliseconds that are taken off the taps; undefined: nobody looked. */
    late,
    /** Id of the bar that is played. */
    bar,
    isTapping,
    tap: (hand: "right" | "left", moment: number) => told.current?.({ moment, key: TAPPED[hand], velocity: 64 }),
    lift: (hand: "right" | "left", moment: number) => told.current?.({ moment, key: TAPPED[hand], velocity: 0 }),
    begin,
    check,
    leave,
  };
}
