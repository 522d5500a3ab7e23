import { keepPreviousData, useQuery } from "@tanstack/react-query";
import { useEffect, useRef } from "react";
import { page, type SettingMade } from "./api";
import { sentences } from "./sentences";
import { engraved } from "./engraved";

/** The engraved pages, one below the other. */
export function Score({ made, isWorking }: { made: SettingMade; isWorking: boolean }) {
  return (
    <section aria-label={sentences.score} aria-busy={isWorking} className="score">
      {Array.from({ length: made.pages }, (_, i) => (
        <Page key={i} id={made.id} number={i + 1} pages={made.pages} title={made.tune.title} />
      ))}
    </section>
  );
}

function Page({ id, number, pages, title }: { id: string; number: number; pages: number; title: string }) {
  const holder = useRef<HTMLDivElement>(null);
  const { data } = useQuery({
    queryKey: ["page", id, number],
    queryFn: ({ signal }) => page(id, number, signal),
    staleTime: Infinity,
    placeholderData: keepPreviousData,
  });
  useEffect(() => {
    const picture = data === undefined ? null : engraved(data);
    if (picture) {
      holder.current?.replaceChildren(picture);
    }
  }, [data]);
  return <div ref={holder} role="img" aria-label={`${title}. ${sentences.pageOf(number, pages)}`} className="page" />;
}
