import { useRef, useState } from "react";
import { sentences } from "../sentences";
import { leapTestAddress, measureLeaps, type HandsSaid } from "./playerApi";

const says = sentences.players;

/** The short test of leaps: to be fetched, played and recorded, and its take brought back. */
export function LeapTest({ octave, onMeasured }: { octave: number; onMeasured: (said: HandsSaid[]) => void }) {
  const picker = useRef<HTMLInputElement>(null);
  const [told, setTold] = useState<{ text: string; isFault: boolean }>();
  async function bring(take: File) {
    try {
      const measured = await measureLeaps(take, octave);
      onMeasured(measured.said);
      setTold({ text: measured.sentences.join(" "), isFault: false });
    } catch (fault) {
      setTold({ text: (fault as Error).message, isFault: true });
    }
  }
  return (
    <>
      <p>
        {says.leapTest}
        {["left", "right"].flatMap((hand) =>
          ["svg", "midi"].map((kind) => (
            <span key={hand + kind}>
              <a className="word" href={leapTestAddress(hand, kind)} download>
                {says.test(hand, says.kinds[kind]!)}
              </a>
              {", "}
            </span>
          )),
        )}
        <button type="button" className="word" onClick={() => picker.current?.click()}>
          {says.take}
        </button>
        . <span className="pencil">{says.caution}</span>
      </p>
      <input
        ref={picker}
        type="file"
        hidden
        accept=".mid,.midi"
        onChange={(event) => {
          const file = event.currentTarget.files?.[0];
          event.currentTarget.value = "";
          if (file) void bring(file);
        }}
      />
      <p className={told?.isFault ? "pencil fault" : "pencil"} role="status">
        {told?.text}
      </p>
    </>
  );
}
