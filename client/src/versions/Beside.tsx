import { useState } from "react";
import type { SettingMade } from "../api";
import { sentences } from "../sentences";
import type { ShelfItem } from "../shelf/shelfApi";
import type { SpotMade } from "../spots/spotApi";
import { Compare } from "./Compare";
import { Others } from "./Others";
import "./versions.css";

const says = sentences.versions;

interface Props {
  made: SettingMade;
  /** The arrangement as it is kept; undefined: it is not yet. */
  item: ShelfItem | undefined;
  onTake: (made: SpotMade) => void;
}

/** Other whole settings, and earlier versions, beside the one on the desk. */
export function Beside({ made, item, onTake }: Props) {
  const [open, setOpen] = useState<"others" | "versions">();
  const opener = (what: "others" | "versions", label: string) => (
    <button type="button" className="word aside" aria-expanded={open === what} onClick={() => setOpen(open === what ? undefined : what)}>
      {label}
    </button>
  );
  return (
    <section className="versions" aria-label={says.title}>
      <p>
        {opener("others", open === "others" ? says.closeOthers : says.others)}
        {item && (
          <>
            {says.or}
            {opener("versions", open === "versions" ? says.closeVersions : says.versions)}
          </>
        )}
        .
      </p>
      {open === "others" && (
        <Others
          made={made}
          onTake={(other) => {
            setOpen(undefined);
            onTake(other);
          }}
        />
      )}
      {open === "versions" && item && <Compare made={made} item={item} />}
    </section>
  );
}
