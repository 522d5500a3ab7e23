import { useQuery } from "@tanstack/react-query";
import { useEffect, useRef, useState } from "react";
import { heard as fetchHeard } from "../api";
import { asItStands, barAt, planOf } from "../sound/plan";
import { chordsOf, Follower } from "./follower";

const AHEAD = 1; // beats that eyes are ahead of hands when a page ends

/** Follows who plays from the stand on a MIDI keyboard.
 * @returns whether it does, what begins and ends it, the bar that the eyes are at, and what is wrong. */
export function useFollow(setting: string) {
  const [isOn, setOn] = useState(false);
  const [bar, setBar] = useState<string>();
  const [hasNone, setNone] = useState(false);
  const end = useRef<() => void>(undefined);
  const { data: heard } = useQuery({
    queryKey: ["heard", setting],
    queryFn: ({ signal }) => fetchHeard(setting, signal),
    staleTime: Infinity,
  });

  function stop() {
    end.current?.();
    end.current = undefined;
    setOn(false);
    setBar(undefined);
  }
  useEffect(() => stop, [setting]);

  async function begin() {
    if (!heard) return;
    try {
      const { keyboards, listenTo } = await import("../sound/midiIn");
      const found = await keyboards();
      setNone(found.length === 0);
      if (found.length === 0) return;
      const chords = chordsOf(planOf(heard, asItStands).struck);
      const follower = new Follower(chords);
      end.current = listenTo(undefined, ({ key, velocity }) => {
        if (key === undefined || !velocity) return;
        const { at } = chords[follower.strike(key)]!;
        const here = barAt(heard, at);
        const beat = here ? here.length / Math.max(1, here.beats.length) : 0;
        setBar(barAt(heard, at + AHEAD * beat)?.id);
      });
      setOn(true);
    } catch {
      setNone(true);
    }
  }

  return { isOn, bar, hasNone, toggle: () => (isOn ? stop() : void begin()) };
}
