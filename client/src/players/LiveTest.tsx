import { useEffect, useRef, useState } from "react";
import { sentences } from "../sentences";
import { midiFile, type Played } from "../tune/midiFile";
import type { Recording } from "../tune/recorder";
import { leapTestAddress, leapTestParts, type LeapTestPartTold } from "./playerApi";

const says = sentences.players;
const BETWEEN = 2; // seconds between the parts of the take
const PACE = 120; // of the file, in which only the seconds count
const METRE = { count: 2, unit: 4 };

interface Part {
  hand: string;
  parts: LeapTestPartTold[];
  /** Which of them is played, from 0. */
  at: number;
}

/** The test played here on a MIDI keyboard, part by part, each to its click. */
export function LiveTest({ onTake, onFault }: { onTake: (take: Blob) => void; onFault: (why: string) => void }) {
  const [now, setNow] = useState<Part>();
  const [count, setCount] = useState(0);
  const recording = useRef<Recording>(undefined);
  const taken = useRef<Played[]>([]);
  useEffect(() => () => void recording.current?.end(), []);
  if (!("requestMIDIAccess" in navigator)) return null;

  async function play(part: Part) {
    const { NoKeyboard, record } = await import("../tune/recorder");
    try {
      setCount(0);
      recording.current = await record(part.parts[part.at]!.click, METRE.count, setCount);
      setNow(part);
    } catch (refusal) {
      setNow(undefined);
      onFault(refusal instanceof NoKeyboard ? sentences.playIn.noKeyboard : sentences.playIn.noLeave);
    }
  }
  async function begin(hand: string) {
    taken.current = [];
    try {
      await play({ hand, parts: await leapTestParts(hand), at: 0 });
    } catch (fault) {
      onFault((fault as Error).message);
    }
  }
  // What was played of the part goes behind what was played before.
  function endPart() {
    const start = Math.max(0, ...taken.current.map((p) => p.until + BETWEEN));
    const played = recording.current?.end() ?? [];
    recording.current = undefined;
    taken.current.push(...played.map((p) => ({ ...p, at: start + p.at, until: start + p.until })));
  }
  function end() {
    endPart();
    setNow(undefined);
    if (taken.current.length === 0) onFault(sentences.playIn.nothing);
    else onTake(new Blob([midiFile(taken.current, PACE, METRE)], { type: "audio/midi" }));
  }
  if (!now) {
    return (
      <p>
        {says.playTest}
        {["left", "right"].map((hand, i) => (
          <span key={hand}>
            {i > 0 && says.or}
            <button type="button" className="word" onClick={() => void begin(hand)}>
              {says.testOf(hand)}
            </button>
          </span>
        ))}
        .
      </p>
    );
  }
  const part = now.parts[now.at]!;
  const isLast = now.at === now.parts.length - 1;
  return (
    <div className="live-test">
      <p role="status">{says.part(now.at + 1, now.parts.length, part.about, part.click)}</p>
      <p className="pencil">{says.struck(count, part.strokes)}</p>
      <p>
        {!isLast && (
          <>
            <button
              type="button"
              className="word"
              autoFocus
              onClick={() => {
                endPart();
                void play({ ...now, at: now.at + 1 });
              }}
            >
              {says.nextPart}
            </button>
            {says.or}
          </>
        )}
        <button type="button" className="word" onClick={end}>
          {says.endTest}
        </button>
        . <span className="pencil">{says.caution}</span>
      </p>
      <img className="page sheet" src={leapTestAddress(now.hand, "svg")} alt={says.test(now.hand, says.kinds["svg"]!)} />
    </div>
  );
}
