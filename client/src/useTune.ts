import { keepPreviousData, useQuery, useQueryClient } from "@tanstack/react-query";
import { useRef, useState } from "react";
import { arrange, bring, Refusal, type Source } from "./api";
import type { Step } from "./useSteps";

const GONE = 404;

/** What was brought, and which of its tunes is on the desk. */
export function useTune() {
  const [{ source, count }, setSource] = useState<{ source: Source | undefined; count: number }>({ source: undefined, count: 0 });
  const [number, setNumber] = useState(1);
  const reading = useQuery({
    queryKey: ["brought", count],
    queryFn: ({ signal }) => bring(source!, signal),
    enabled: source !== undefined,
    staleTime: Infinity,
    placeholderData: source && "text" in source ? keepPreviousData : undefined,
  });
  const put = (next: Source | undefined) => {
    setNumber(1);
    setSource((before) => ({ source: next, count: before.count + 1 }));
  };
  const tune = reading.data?.tunes.find((t) => t.number === number);
  return { source, count, reading, tune, number, setNumber, put };
}

/** The setting that the wishes ask for; the one before stays until it is there. */
export function useSetting({ source, count, reading, tune }: ReturnType<typeof useTune>, { wishes, kept }: Step) {
  // What is kept belongs to the tune that it was kept of.
  const own = kept?.count === count ? kept : undefined;
  const queries = useQueryClient();
  // What the host forgot (or another host never knew) is brought again.
  const again = useRef<string | undefined>(undefined);
  return useQuery({
    queryKey: ["setting", own?.tunes ?? reading.data?.id, tune?.number, wishes],
    queryFn: async ({ signal }) => {
      const id = reading.data!.id;
      if (own?.made && own.wishes === wishes) return own.made;
      try {
        return await arrange(own?.tunes ?? id, own ? 1 : tune!.number, wishes, signal);
      } catch (refusal) {
        // Bars that were kept are not in the source: the shelf has them, when the page is loaded again.
        if (!(refusal instanceof Refusal && refusal.status === GONE && source) || own || again.current === id) {
          throw refusal;
        }
        again.current = id;
        const brought = await bring(source, signal);
        queries.setQueryData(["brought", count], brought);
        return await arrange(brought.id, tune!.number, wishes, signal);
      }
    },
    enabled: tune !== undefined,
    staleTime: 60_000,
    placeholderData: keepPreviousData,
  });
}
