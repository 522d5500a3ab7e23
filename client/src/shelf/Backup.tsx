import { useState } from "react";
import { FileWord } from "../FileWord";
import { sentences } from "../sentences";
import { Sure } from "./Item";
import { backupAddress, restore } from "./shelfApi";

const words = sentences.shelf;

/** The whole shelf as a zip, and back. */
export function Backup({ act }: { act: (work: () => Promise<unknown>) => Promise<void> }) {
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
        <FileWord accept=".zip" label={words.putBack} onFile={setZip}>
          {words.putBack}
        </FileWord>
        .
      </p>
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
