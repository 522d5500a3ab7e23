import { useRef, useState } from "react";
import { sentences } from "../sentences";
import { Sure } from "./Item";
import { backupAddress, restore } from "./shelfApi";

const words = sentences.shelf;

/** The whole shelf as a zip, and back. */
export function Backup({ act }: { act: (work: () => Promise<unknown>) => Promise<void> }) {
  const picker = useRef<HTMLInputElement>(null);
  const [zip, setZip] = useState<File>();
  const [kept, setKept] = useState<string>();
  return (
    <div>
      <p>
        {words.whole}
        <a className="word" href={backupAddress} download>
          {words.backup}
        </a>
        ,{" "}
        <button type="button" className="word" onClick={() => picker.current?.click()}>
          {words.putBack}
        </button>
        .
      </p>
      <input
        ref={picker}
        type="file"
        hidden
        accept=".zip"
        aria-label={words.putBack}
        onChange={(event) => {
          setZip(event.currentTarget.files?.[0]);
          event.currentTarget.value = "";
        }}
      />
      {zip && (
        <Sure
          question={words.sureRestore(zip.name)}
          yes={words.yesRestore}
          onYes={() =>
            void act(async () => {
              setZip(undefined);
              setKept((await restore(zip)).before);
            })
          }
          onNo={() => setZip(undefined)}
        />
      )}
      {kept && (
        <p className="pencil" role="status">
          {words.restored(kept)}
        </p>
      )}
    </div>
  );
}
