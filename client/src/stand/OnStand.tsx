import { useRef, useState } from "react";
import type { SettingMade } from "../api";
import { sentences } from "../sentences";
import { Stand } from "./Stand";

/** The word that puts the pages on the stand. */
export function OnStand({ made }: { made: SettingMade }) {
  const [isOpen, setOpen] = useState(false);
  const word = useRef<HTMLButtonElement>(null);
  return (
    <span>
      <button ref={word} type="button" className="word" onClick={() => setOpen(true)}>
        {sentences.stand.put}
      </button>
      {isOpen && (
        <Stand
          key={made.id}
          made={made}
          onClose={() => {
            setOpen(false);
            word.current?.focus();
          }}
        />
      )}
    </span>
  );
}
