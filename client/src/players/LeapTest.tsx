import { useState } from "react";
import { FileWord } from "../FileWord";
import { sentences } from "../sentences";
import { LiveTest } from "./LiveTest";
import { leapTestAddress, measureLeaps, type HandsSaid } from "./playerApi";

const says = sentences.players;

/** The short test of leaps: played here, or fetched, recorded elsewhere, and its take brought back. */
export function LeapTest({ octave, onMeasured }: { octave: number; onMeasured: (said: HandsSaid[]) => void }) {
  const [told, setTold] = useState<{ text: string; isFault: boolean }>();
  async function bring(take: Blob) {
    try {
      const measured = await measureLeaps(take, octave);
      onMeasured(measured.said);
      setTold({ text: measured.sentences.join("; "), isFault: false });
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
        <FileWord accept=".mid,.midi" onFile={(take) => void bring(take)}>
          {says.take}
        </FileWord>
        . <span className="pencil">{says.caution}</span>
      </p>
      <LiveTest onTake={(take) => void bring(take)} onFault={(text) => setTold({ text, isFault: true })} />
      <p className={told?.isFault ? "pencil fault" : "pencil"} role="status">
        {told?.text}
      </p>
    </>
  );
}
