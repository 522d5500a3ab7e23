import { useEffect, useRef } from "react";
import { sentences } from "../sentences";

type Hand = "right" | "left";

interface Props {
  tap: (hand: Hand, moment: number) => void;
  lift: (hand: Hand, moment: number) => void;
}

// By their place on the keyboard, whatever is printed on them.
const handOf: Record<string, Hand> = { KeyF: "left", KeyJ: "right" };

/** Two halves of paper to tap the two hands on; the keys F and J do the same. */
export function TapPad({ tap, lift }: Props) {
  const latest = useRef({ tap, lift });
  latest.current = { tap, lift };
  useEffect(() => {
    const press = (event: KeyboardEvent) => {
      const hand = handOf[event.code];
      if (!hand || event.ctrlKey || event.metaKey || event.altKey) return;
      event.preventDefault();
      event.stopImmediatePropagation();
      if (event.repeat) return;
      latest.current[event.type === "keydown" ? "tap" : "lift"](hand, event.timeStamp);
    };
    window.addEventListener("keydown", press, { capture: true });
    window.addEventListener("keyup", press, { capture: true });
    return () => {
      window.removeEventListener("keydown", press, { capture: true });
      window.removeEventListener("keyup", press, { capture: true });
    };
  }, []);
  const half = (hand: Hand) => (
    <button
      type="button"
      className="tap-half"
      onPointerDown={(event) => {
        event.preventDefault();
        tap(hand, event.timeStamp);
      }}
      onPointerUp={(event) => lift(hand, event.timeStamp)}
      onPointerCancel={(event) => lift(hand, event.timeStamp)}
    >
      {sentences.hearing.half(hand)}
    </button>
  );
  return (
    <div className="tap-pad" role="group" aria-label={sentences.hearing.pad}>
      {half("left")}
      {half("right")}
    </div>
  );
}
