import { answered, asItIs, client } from "../api";
import type { components } from "../contract";
import { anything, findOnShelf, type ShelfItem, type ShelfSaved } from "../shelf/shelfApi";

export type PlayerSaid = components["schemas"]["PlayerSaid"];
export type PlayerTold = components["schemas"]["PlayerTold"];
export type HandsSaid = components["schemas"]["HandsSaid"];
export type LeapTestTold = components["schemas"]["LeapTestTold"];

export type LeapTestPartTold = components["schemas"]["LeapTestPartTold"];

const CONFLICT = 409;

export const players = async (signal: AbortSignal): Promise<ShelfItem[]> => (await findOnShelf({ ...anything, kind: "player" }, signal)).items;

export const player = async (id: string, signal: AbortSignal): Promise<PlayerTold> =>
  answered(await client.GET("/api/players/{id}", { params: { path: { id } }, signal }));

export const tryPlayer = async (said: PlayerSaid, signal: AbortSignal): Promise<PlayerTold> =>
  answered(await client.POST("/api/players/try", { body: said, signal }));

export async function keepPlayer(said: PlayerSaid, stands: ShelfItem | undefined): Promise<ShelfSaved> {
  if (!stands) return { item: answered(await client.POST("/api/players", { body: { player: said, from: 1 } })), beside: null };
  const result = await client.PUT("/api/players/{id}", { params: { path: { id: stands.id } }, body: { player: said, from: stands.version } });
  return result.response.status === CONFLICT ? (result.error as ShelfSaved) : answered(result);
}

export const measureLeaps = async (take: Blob, octave: number): Promise<LeapTestTold> =>
  answered(
    await client.POST("/api/players/leap-test", {
      params: { query: { octave } },
      ...asItIs(take),
    }),
  );

export const leapTestAddress = (hand: string, format: string) => `/api/players/leap-test/${hand}/${format}`;

export const leapTestParts = async (hand: string): Promise<LeapTestPartTold[]> =>
  answered(await client.GET("/api/players/leap-test/{hand}", { params: { path: { hand } } })).parts;
