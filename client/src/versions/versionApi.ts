import { answered, arrange, client, type SettingMade } from "../api";
import type { components } from "../contract";
import { openFromShelf } from "../shelf/shelfApi";

export type OtherMade = components["schemas"]["OtherMade"];
export type VersionsCompared = components["schemas"]["VersionsCompared"];

export const otherSettings = async (id: string, signal: AbortSignal): Promise<OtherMade[]> =>
  answered(await client.POST("/api/settings/{id}/others", { params: { path: { id } }, signal }));

export const compare = async (first: string, second: string, signal: AbortSignal): Promise<VersionsCompared> =>
  answered(await client.POST("/api/settings/compare", { body: { first, second }, signal }));

/** A version of the shelf, set and engraved. */
export async function versionMade(id: string, version: number, signal: AbortSignal): Promise<SettingMade> {
  const opened = await openFromShelf(id, version, signal);
  return arrange(opened.brought.id, 1, opened.wishes, signal);
}
