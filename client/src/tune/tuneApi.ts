import { answered, client, type Brought } from "../api";
import type { components } from "../contract";
import type { ShelfItem } from "../shelf/shelfApi";

export type TuneTold = components["schemas"]["TuneTold"];
export type TuneChange = components["schemas"]["TuneChange"];

/** A tune at hand: where it stands, and its number there. */
export interface TuneAt {
  id: string;
  number: number;
}

export const tuneTold = async ({ id, number }: TuneAt, signal: AbortSignal): Promise<TuneTold> =>
  answered(await client.GET("/api/tunes/{id}/{number}", { params: { path: { id, number } }, signal }));

export const tuneSheet = async ({ id, number }: TuneAt, plain: boolean, signal: AbortSignal): Promise<string[]> =>
  answered(await client.GET("/api/tunes/{id}/{number}/sheet", { params: { path: { id, number }, query: { plain } }, signal })).pages;

export const correctTune = async ({ id, number }: TuneAt, change: TuneChange): Promise<Brought> =>
  answered(await client.POST("/api/tunes/{id}/{number}/corrections", { params: { path: { id, number } }, body: change }));

export const keepTune = async ({ id, number }: TuneAt): Promise<ShelfItem> =>
  answered(await client.POST("/api/shelf/tunes", { body: { tunes: id, number } }));
