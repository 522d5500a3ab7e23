import { useQuery } from "@tanstack/react-query";
import { useEffect, useRef, useState } from "react";
import { heard as fetchHeard } from "../api";
import { watchLayout } from "../layout";
import { sentences } from "../sentences";
import { Cursor } from "./cursor";
import { follow, ONE_STROKE } from "./follow";
import type { Player } from "./player";
import { asItStands, barAt, barsOf, planOf, type Heard, type HeardNote, type Plan, type Rehearsal } from "./plan";

/** Playing a setting: where the pencil stands, what is playing, and the mark that follows. */
export function usePlayer(id: string) {
  const { data: heard } = useQuery({
    queryKey: ["heard", id],
    queryFn: ({ signal }) => fetchHeard(id, signal),
    staleTime: Infinity,
  });
  const [rehearsal, setRehearsal] = useState<Rehearsal>(asItStands);
  const [isPlaying, setPlaying] = useState(false);
  const [isFetching, setFetching] = useState(false);
  const [fault, setFault] = useState<string>();
  const [place, setPlace] = useState<number>();
  const [midi, setMidi] = useState<string | null>(null);
  const standing = useRef<string>(undefined); // the bar of the place
  const layer = useRef<HTMLDivElement>(null);
  const cursor = useRef<Cursor>(undefined);
  const player = useRef<Player>(undefined);
  const asked = useRef(0);
  const [aside, setAside] = useState<string>(); // what is played that is no part of the score as it stands
  const isAside = useRef(false);
  const sounding = useRef<HeardNote[]>([]);

  function stand(at: number | undefined) {
    standing.current = at !== undefined && heard ? barAt(heard, at)?.id : undefined;
    setPlace(at);
  }

  function stop() {
    asked.current++;
    const at = player.current?.place(performance.now());
    player.current?.stop();
    if (at !== undefined && heard && !isAside.current) stand(barAt(heard, at)?.at);
    isAside.current = false;
    setAside(undefined);
    setPlaying(false);
    setFetching(false);
  }

  /** @param from Seconds of the piece; undefined: the start of the rehearsal. */
  async function play(from: number | undefined, now: Rehearsal = rehearsal, instrumentId: string | null = midi) {
    if (!heard) return;
    const mine = ++asked.current;
    setFault(undefined);
    setFetching(true);
    try {
      player.current ??= new (await import("./player")).Player();
      const pianist = player.current;
      pianist.stop();
      const bars = barsOf(heard, now);
      const start = bars[0]?.at ?? 0;
      const end = bars.at(-1) ? bars.at(-1)!.at + bars.at(-1)!.length : 0;
      // A place outside the rehearsal’s bars means its start.
      const skipped = from === undefined || from <= start || from >= end ? 0 : (from - start) / now.speed;
      const instrument = instrumentId
        ? (await import("./midiOut")).instrument(instrumentId, (time) => pianist.piano.heardAt(time))
        : pianist.piano;
      if (!instrument) throw new Error(sentences.instrumentGone);
      if (mine !== asked.current) return;
      const plan = planOf(heard, now);
      sounding.current = plan.struck.map((s) => s.note);
      cursor.current?.measure(sounding.current);
      await pianist.play(plan, skipped, instrument, () => {
        setPlaying(false);
        stand(start);
      });
      if (mine !== asked.current) return;
      stand(skipped > 0 ? from : start);
      setPlaying(true);
    } catch (failure) {
      if (mine === asked.current) setFault(failure instanceof Error ? failure.message : sentences.noSound);
    } finally {
      if (mine === asked.current) setFetching(false);
    }
  }

  /** Something that is no part of the score as it stands, on the piano of the page.
   * @param words What it is, where the cursor is to follow it. */
  async function hear(snippet: Heard, words?: string) {
    stop();
    const mine = ++asked.current;
    setFault(undefined);
    try {
      player.current ??= new (await import("./player")).Player();
      const hands = player.current;
      if (mine !== asked.current) return;
      const plan = planOf(snippet, asItStands);
      sounding.current = plan.struck.map((s) => s.note).filter((note) => note.id);
      if (words) cursor.current?.measure(sounding.current);
      isAside.current = true;
      await hands.play(plan, 0, hands.piano, () => {
        isAside.current = false;
        setAside(undefined);
        setPlaying(false);
      });
      if (words && mine === asked.current) {
        setAside(words);
        setPlaying(true);
      }
    } catch (failure) {
      if (mine === asked.current) setFault(failure instanceof Error ? failure.message : sentences.noSound);
    }
  }

  /** Clicks alone. @returns the moment of the page at which the first bar begins. */
  async function beat(plan: Plan): Promise<number> {
    stop();
    asked.current++;
    player.current ??= new (await import("./player")).Player();
    await player.current.play(plan, 0, player.current.piano, () => {});
    return player.current.startsAt;
  }

  // An instrument must not be left sounding.
  useEffect(() => {
    const leave = () => player.current?.stop();
    window.addEventListener("pagehide", leave);
    return () => window.removeEventListener("pagehide", leave);
  }, []);

  // Another setting is another music; the pencil stays at its bar.
  useEffect(() => {
    return stop;
    // eslint-disable-next-line react-hooks/exhaustive-deps
  }, [id]);
  useEffect(() => setPlace(heard?.bars.find((b) => b.id === standing.current)?.at), [heard]);

  useEffect(() => {
    const pages = layer.current;
    if (!pages) return;
    cursor.current = new Cursor(pages);
    return watchLayout(pages.parentElement!, () => cursor.current?.forget());
  }, []);

  useEffect(() => {
    if (!isPlaying || !heard) return;
    let frame = requestAnimationFrame(function draw() {
      const at = player.current?.place(performance.now());
      if (at !== undefined) follow(cursor.current!, layer.current!, sounding.current, at);
      frame = requestAnimationFrame(draw);
    });
    return () => {
      cancelAnimationFrame(frame);
      cursor.current?.hide();
    };
  }, [isPlaying, heard]);

  useEffect(() => {
    if (isPlaying || place === undefined || !heard) return;
    const bar = barAt(heard, place);
    const note = heard.notes.find((n) => Math.abs(n.at - place) < ONE_STROKE);
    const id = bar && Math.abs(bar.at - place) < ONE_STROKE ? bar.id : (note?.id ?? bar?.id);
    if (id) cursor.current?.rest(id);
  }, [isPlaying, place, heard]);

  return {
    heard,
    rehearsal,
    /** Goes on playing from where it is, in the new way. */
    change(change: Partial<Rehearsal>) {
      const next = { ...rehearsal, ...change };
      setRehearsal(next);
      if (isPlaying) void play(player.current?.place(performance.now()) ?? place, next);
    },
    midi,
    playOn(id: string | null) {
      setMidi(id);
      if (isPlaying) void play(player.current?.place(performance.now()) ?? place, rehearsal, id);
    },
    isPlaying,
    isFetching,
    fault,
    place,
    setPlace(to: number) {
      stand(to);
      if (isPlaying) void play(to);
    },
    play,
    hear,
    /** What is heard that is no part of the score as it stands. */
    aside,
    beat,
    stop,
    layer,
    cursor,
  };
}
