import { answered, client } from "../api";
import type { components } from "../contract";

export type SheetBar = components["schemas"]["SheetBar"];
export type SheetBars = components["schemas"]["SheetBars"];
export type SheetFigure = components["schemas"]["SheetFigure"];
export type SheetStroke = components["schemas"]["SheetStroke"];
export type SpotMade = components["schemas"]["SpotMade"];
export type SpotNotes = components["schemas"]["SpotNotes"];
export type SpotSeen = components["schemas"]["SpotSeen"];
export type SpotWish = components["schemas"]["SpotWish"];
export type WayFound = components["schemas"]["WayFound"];

const path = (id: string, bar: string) => ({ params: { path: { id, bar } } });

export const bars = async (id: string, signal: AbortSignal): Promise<SheetBars> =>
  answered(await client.GET("/api/settings/{id}/bars", { params: { path: { id } }, signal }));

export const notesOf = async (id: string, bar: string, signal: AbortSignal): Promise<SpotNotes> =>
  answered(await client.GET("/api/settings/{id}/bars/{bar}", { ...path(id, bar), signal }));

export const waysOf = async (id: string, bar: string, signal: AbortSignal): Promise<WayFound[]> =>
  answered(await client.GET("/api/settings/{id}/bars/{bar}/ways", { ...path(id, bar), signal }));

export const way = async (id: string, bar: string, name: string, signal: AbortSignal): Promise<SpotSeen> =>
  answered(
    await client.GET("/api/settings/{id}/bars/{bar}/ways/{name}", { params: { path: { id, bar, name } }, signal }),
  );

export const tryBar = async (id: string, bar: string, hand: string, strokes: SheetStroke[], signal: AbortSignal): Promise<SpotSeen> =>
  answered(
    await client.POST("/api/settings/{id}/bars/{bar}/try", {
      ...path(id, bar),
      body: { action: "write", hand, strokes },
      signal,
    }),
  );

export const workOnBar = async (id: string, wish: SpotWish): Promise<SpotMade> =>
  answered(await client.POST("/api/settings/{id}/spots", { params: { path: { id } }, body: wish }));

export const keepFigure = async (setting: string, figure: string) =>
  answered(await client.POST("/api/shelf/figures", { body: { setting, figure } }));

/** A figure of the shelf, put beside a setting. */
export const takeFigure = async (id: string, figure: string): Promise<SpotMade> =>
  answered(await client.POST("/api/settings/{id}/figures/{figure}", { params: { path: { id, figure } } }));
