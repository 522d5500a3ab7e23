import { useEffect, useRef, useState } from "react";
import { sentences } from "../sentences";
import { midiFile } from "./midiFile";
import type { Recording } from "./recorder";

const says = sentences.playIn;
const METRES = ["2/4", "3/4", "4/4", "6/8"];
const PACES = [60, 72, 80, 88, 96, 108, 120];

/** A tune played in on a MIDI keyboard, to a click. */
export function PlayIn({ onFile }: { onFile: (file: File) => void }) {
  const [isOpen, setOpen] = useState(false);
  const [metre, setMetre] = useState("2/4");
  const [pace, setPace] = useState(88);
  const [count, setCount] = useState(0);
  const [fault, setFault] = useState<string>();
  const [isOn, setOn] = useState(false);
  const recording = useRef<Recording>(undefined);
  useEffect(() => () => void recording.current?.end(), []);
  if (!("requestMIDIAccess" in navigator)) return null;
  const [beats, unit] = metre.split("/").map(Number) as [number, number];

  async function start() {
    setFault(undefined);
    setCount(0);
    const { NoKeyboard, record } = await import("./recorder");
    try {
      recording.current = await record(pace, beats, setCount);
      setOn(true);
    } catch (refusal) {
      setFault(refusal instanceof NoKeyboard ? says.noKeyboard : says.noLeave);
    }
  }
  function end() {
    const played = recording.current?.end() ?? [];
    recording.current = undefined;
    setOn(false);
    if (played.length === 0) setFault(says.nothing);
    else onFile(new File([midiFile(played, pace, { count: beats, unit })], says.fileName, { type: "audio/midi" }));
  }
  return (
    <>
      <p>
        {says.lead}
        <button type="button" className="word" aria-expanded={isOpen} onClick={() => setOpen(!isOpen)}>
          {says.open}
        </button>
        .
      </p>
      {isOpen && (
        <p>
          {says.inMetre}
          <select className="word" aria-label={says.metre} value={metre} disabled={isOn} onChange={(e) => setMetre(e.currentTarget.value)}>
            {METRES.map((m) => (
              <option key={m}>{m}</option>
            ))}
          </select>
          {says.at}
          <select className="word" aria-label={says.pace} value={pace} disabled={isOn} onChange={(e) => setPace(Number(e.currentTarget.value))}>
            {PACES.map((p) => (
              <option key={p} value={p}>
                {says.clicks(p)}
              </option>
            ))}
          </select>
          :{" "}
          <button type="button" className="word" onClick={() => (isOn ? end() : void start())}>
            {isOn ? says.end : says.start}
          </button>
          . <span className="pencil">{says.how}</span>
        </p>
      )}
      <div className="pencil" role="status">
        {fault ? <p className="fault">{fault}</p> : isOn && <p>{says.listening(count)}</p>}
      </div>
    </>
  );
}
