import { useEffect, useState } from "react";
import type { SettingMade } from "../api";
import { sentences } from "../sentences";
import { OnStand } from "../stand/OnStand";
import "./take.css";

const STEP = 1.25;
const LEAST = 0.5;
const MOST = 3;

/** How the pages are seen: on the stand, or on the desk, larger or smaller. */
export function Sight({ made }: { made: SettingMade }) {
  const [zoom, setZoom] = useState(1);
  const [isWhole, setWhole] = useState(false);
  useEffect(() => {
    const root = document.documentElement;
    root.style.setProperty("--zoom", String(zoom));
    root.toggleAttribute("data-whole", isWhole);
    return () => {
      root.style.removeProperty("--zoom");
      root.removeAttribute("data-whole");
    };
  }, [zoom, isWhole]);
  const to = (factor: number) => () => {
    setWhole(false);
    setZoom(Math.min(MOST, Math.max(LEAST, zoom * factor)));
  };
  const { lead, or, larger, smaller, width, whole } = sentences.sight;
  const words: [string, () => void][] = [
    [larger, to(STEP)],
    [smaller, to(1 / STEP)],
    [
      width,
      () => {
        setWhole(false);
        setZoom(1);
      },
    ],
    [
      whole,
      () => {
        setWhole(true);
        setZoom(1);
      },
    ],
  ];
  return (
    <div className="sight">
      <OnStand made={made} />
      {lead}
      {words.map(([label, act], i) => (
        <span key={label}>
          {i === 0 ? "" : i === words.length - 1 ? or : ", "}
          <button type="button" className="word aside" onClick={act}>
            {label}
          </button>
        </span>
      ))}
      .
    </div>
  );
}
