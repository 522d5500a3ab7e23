import createClient from "openapi-fetch";
import type { components, paths } from "./contract";
import { sentences } from "./sentences";

export type Brought = components["schemas"]["Brought"];
export type Fault = components["schemas"]["Fault"];
export type Heard = components["schemas"]["Heard"];
export type SettingMade = components["schemas"]["SettingMade"];
export type Wishes = components["schemas"]["BriefWishes"];

/** What was put on the desk, kept so that it can be brought again. */
export type Source = { file: File } | { text: string } | { shelf: string; version: number };

/** Why the host did not do it. */
export class Refusal extends Error {
  constructor(
    readonly fault: Fault | undefined,
    readonly status: number,
  ) {
    super(fault?.detail ?? sentences.noAnswer);
  }
}

export const client = createClient<paths>({ baseUrl: "/" });

export function answered<T>(result: { data?: T | undefined; error?: unknown; response: Response }): T {
  if (result.data === undefined) {
    throw new Refusal(result.error as Fault | undefined, result.response.status);
  }
  return result.data;
}

/** A body that is sent as it is; the contract knows bytes only as a string. */
export const asItIs = (body: Blob, type = "application/octet-stream") => ({
  body: body as unknown as string,
  bodySerializer: (sent: string) => sent as unknown as BodyInit,
  headers: { "Content-Type": type },
});

export async function bring(source: Source, signal?: AbortSignal): Promise<Brought> {
  if ("text" in source) {
    return answered(await client.POST("/api/tunes/text", { body: { text: source.text }, signal }));
  }
  if ("shelf" in source) {
    const { shelf, version } = source;
    const params = { path: { id: shelf }, query: { version } };
    return answered(await client.POST("/api/shelf/documents/{id}/open", { params, signal })).brought;
  }
  return answered(
    await client.POST("/api/tunes", {
      params: { query: { name: source.file.name } },
      ...asItIs(source.file),
      signal,
    }),
  );
}

export const arrange = async (tunes: string, number: number, wishes: Wishes, signal: AbortSignal): Promise<SettingMade> =>
  answered(await client.POST("/api/settings", { body: { tunes, number, wishes }, signal }));

export const page = async (id: string, number: number, signal: AbortSignal): Promise<string> =>
  answered(
    await client.GET("/api/settings/{id}/pages/{number}", { params: { path: { id, number } }, parseAs: "text", signal }),
  );

/** The pages as they are printed: with turns where a hand is free. */
export const print = async (id: string, signal: AbortSignal): Promise<string[]> =>
  answered(await client.GET("/api/settings/{id}/print", { params: { path: { id } }, signal })).pages;

export const heard = async (id: string, signal: AbortSignal): Promise<Heard> =>
  answered(await client.GET("/api/settings/{id}/heard", { params: { path: { id } }, signal }));

export const fileAddress = (id: string, format: string, page?: number) =>
  `/api/settings/${id}/files/${format}${page === undefined ? "" : `?page=${page}`}`;
