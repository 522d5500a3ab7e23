import { answered, client } from "../api";
import type { components } from "../contract";

export type HandoutWanted = components["schemas"]["HandoutWanted"];
export type HandoutMade = components["schemas"]["HandoutMade"];

export const handOut = async (id: string, wanted: HandoutWanted, signal: AbortSignal): Promise<HandoutMade> =>
  answered(await client.POST("/api/settings/{id}/handouts", { params: { path: { id } }, body: wanted, signal }));

export const handoutAddress = (id: string, format: string) => `/api/handouts/${id}/${format}`;
