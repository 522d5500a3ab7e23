import { useQuery } from "@tanstack/react-query";
import { useEffect, useRef } from "react";
import { page, type SettingMade } from "../api";
import { engraved } from "../engraved";
import { sentences } from "../sentences";

const ROOM = 120; // of the engraver’s units round a bar

interface Props {
  made: SettingMade;
  /** How many pages, from the first. */
  most?: number;
  /** Ids of bars that get a dashed frame. */
  marked?: string[];
}

/** The pages of a setting that is not the one on the desk. */
export function Pages({ made, most = made.pages, marked = [] }: Props) {
  return (
    <>
      {Array.from({ length: Math.min(most, made.pages) }, (_, i) => (
        <One key={i} made={made} number={i + 1} marked={marked} />
      ))}
    </>
  );
}

function One({ made, number, marked }: { made: SettingMade; number: number; marked: string[] }) {
  const holder = useRef<HTMLDivElement>(null);
  const { data } = useQuery({
    queryKey: ["page", made.id, number],
    queryFn: ({ signal }) => page(made.id, number, signal),
    staleTime: Infinity,
  });
  const frames = marked.join(" ");
  useEffect(() => {
    const picture = data === undefined ? null : engraved(data);
    if (!picture) return;
    holder.current?.replaceChildren(picture);
    for (const id of frames.split(" ").filter(Boolean)) {
      const measure = picture.querySelector<SVGGElement>(`g.measure[id="${CSS.escape(id)}"]`);
      if (measure) frame(measure);
    }
    // Ids belong to the pages of the score.
    for (const element of picture.querySelectorAll("[id]")) {
      if (!element.closest("defs")) element.removeAttribute("id");
    }
  }, [data, frames]);
  return <div ref={holder} role="img" aria-label={`${made.tune.title}. ${sentences.pageOf(number, made.pages)}`} className="page" />;
}

function frame(measure: SVGGElement) {
  const box = measure.getBBox();
  const around = document.createElementNS("http://www.w3.org/2000/svg", "rect");
  const put = (name: string, value: number | string) => around.setAttribute(name, String(value));
  put("class", "differs");
  put("x", box.x);
  put("y", box.y - ROOM);
  put("width", box.width);
  put("height", box.height + 2 * ROOM);
  put("fill", "none");
  put("stroke-width", 45);
  put("stroke-dasharray", "160 110");
  measure.append(around);
}
