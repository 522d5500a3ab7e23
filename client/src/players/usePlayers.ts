import { useQuery } from "@tanstack/react-query";
import { players as fetchPlayers } from "./playerApi";

/** The players on the shelf; none while it is not known. */
export function usePlayers() {
  const { data } = useQuery({ queryKey: ["shelf", "players"], queryFn: ({ signal }) => fetchPlayers(signal) });
  return data ?? [];
}
