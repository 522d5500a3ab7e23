import type { components } from "../contract";
import { answered, asItIs, client, Refusal } from "../api";

export type ShelfItem = components["schemas"]["ShelfItem"];
export type ShelfVersion = components["schemas"]["ShelfVersion"];
export type ShelfSaved = components["schemas"]["ShelfSaved"];
export type ShelfList = components["schemas"]["ShelfList"];
export type Opened = components["schemas"]["Opened"];

/** What is sought; empty where it does not matter. */
export interface ShelfWish {
  kind: string;
  words: string;
  key: string;
  metre: string;
  easiest: string;
  hardest: string;
  tag: string;
  deleted: boolean;
}

/** Nothing in particular. */
export const anything: ShelfWish = { kind: "", words: "", key: "", metre: "", easiest: "", hardest: "", tag: "", deleted: false };

/** One stretch of work on this page. */
const sitting = Array.from(crypto.getRandomValues(new Uint8Array(8)), (n) => n.toString(16).padStart(2, "0")).join("");

const CONFLICT = 409;

export async function findOnShelf(wish: ShelfWish, signal: AbortSignal): Promise<ShelfList> {
  const said = Object.fromEntries(Object.entries(wish).filter(([, value]) => value !== "" && value !== false));
  return answered(await client.GET("/api/shelf/documents", { params: { query: said }, signal }));
}

export const keepSetting = async (setting: string): Promise<ShelfSaved> => {
  const item = answered(await client.POST("/api/shelf/arrangements", { body: { setting, sitting }, keepalive: true }));
  return { item, beside: null };
};

/** A save; where another one came first, both are told. */
export async function saveSetting(id: string, from: number, setting: string): Promise<ShelfSaved> {
  const path = { id };
  return saved(await client.PUT("/api/shelf/arrangements/{id}", { params: { path }, body: { setting, from, sitting }, keepalive: true }));
}

export const takeAgain = async (id: string, number: number, from: number): Promise<ShelfSaved> =>
  saved(await client.POST("/api/shelf/documents/{id}/versions/{number}/again", { params: { path: { id, number } }, body: { from } }));

export const copyVersion = async (id: string, number: number): Promise<ShelfItem> =>
  answered(await client.POST("/api/shelf/documents/{id}/versions/{number}/copy", { params: { path: { id, number } } }));

export const openFromShelf = async (id: string, version?: number, signal?: AbortSignal): Promise<Opened> =>
  answered(await client.POST("/api/shelf/documents/{id}/open", { params: { path: { id }, query: { version } }, signal }));

export const history = async (id: string, signal: AbortSignal): Promise<ShelfVersion[]> =>
  answered(await client.GET("/api/shelf/documents/{id}/versions", { params: { path: { id } }, signal })).versions;

export const nameVersion = async (id: string, number: number, name: string | null) =>
  answered(await client.PUT("/api/shelf/documents/{id}/versions/{number}/name", { params: { path: { id, number } }, body: { name } }));

export const rename = async (id: string, title: string): Promise<ShelfItem> =>
  answered(await client.PUT("/api/shelf/documents/{id}/title", { params: { path: { id } }, body: { title } }));

export const tag = async (id: string, tags: string[]): Promise<ShelfItem> =>
  answered(await client.PUT("/api/shelf/documents/{id}/tags", { params: { path: { id } }, body: { tags } }));

export const putAway = async (id: string): Promise<ShelfItem> =>
  answered(await client.DELETE("/api/shelf/documents/{id}", { params: { path: { id } } }));

export const takeBack = async (id: string): Promise<ShelfItem> =>
  answered(await client.POST("/api/shelf/documents/{id}/back", { params: { path: { id } } }));

export const purge = async (id: string) => answered(await client.POST("/api/shelf/documents/{id}/purge", { params: { path: { id } } }));

export const backupAddress = "/api/shelf/backup";

export const restore = async (zip: File) =>
  answered(await client.POST("/api/shelf/backup", asItIs(zip, "application/zip")));

function saved(result: { data?: ShelfSaved | undefined; error?: unknown; response: Response }): ShelfSaved {
  return result.response.status === CONFLICT ? (result.error as ShelfSaved) : answered(result);
}

/** Whether what it was about is not there. */
export const isGone = (fault: unknown) => fault instanceof Refusal && fault.status === 404;
