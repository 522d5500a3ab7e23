import type { components } from "../contract";
import { answered, client } from "../api";

export type ProgressReport = components["schemas"]["ProgressReport"];
export type PlayerProgress = components["schemas"]["PlayerProgress"];
export type PieceReport = components["schemas"]["PieceReport"];

// Days are counted where this page is.
const zone = () => -new Date().getTimezoneOffset();

export const progress = async (signal: AbortSignal): Promise<ProgressReport> =>
  answered(await client.GET("/api/progress", { params: { query: { zone: zone() } }, signal }));

export const tableAddress = (player: string | null) =>
  `/api/progress.csv?zone=${zone()}${player === null ? "" : `&player=${encodeURIComponent(player)}`}`;

export const forget = async (id: string) => answered(await client.DELETE("/api/players/{id}", { params: { path: { id } } }));
