import { answered, asItIs, client, type Heard } from "../api";
import type { components } from "../contract";

export type PlayedEvent = components["schemas"]["PlayedEvent"];
export type TakeItem = components["schemas"]["TakeItem"];
export type TakeSeen = components["schemas"]["TakeSeen"];
export type TakeWish = components["schemas"]["TakeWish"];
export type SeenMark = components["schemas"]["SeenMark"];
export type SeenRemark = components["schemas"]["SeenRemark"];
export type SeenStroke = components["schemas"]["SeenStroke"];

const one = (id: string, take: string) => ({ params: { path: { id, take } } });

export const beginTake = async (id: string, wish: TakeWish): Promise<string> =>
  answered(await client.POST("/api/settings/{id}/takes", { params: { path: { id } }, body: wish })).take;

/** @returns how many events the host has now. */
export const playOn = async (take: string, from: number, events: PlayedEvent[], keepalive = false): Promise<number> =>
  answered(await client.POST("/api/takes/{take}/events", { params: { path: { take } }, body: { from, events }, keepalive })).count;

export const finishTake = async (id: string, take: string): Promise<TakeSeen> =>
  answered(await client.POST("/api/settings/{id}/takes/{take}/done", one(id, take)));

export const seeTake = async (id: string, take: string): Promise<TakeSeen> =>
  answered(await client.GET("/api/settings/{id}/takes/{take}", one(id, take)));

export const hearTake = async (id: string, take: string, against: boolean): Promise<Heard> =>
  answered(await client.GET("/api/settings/{id}/takes/{take}/heard", { params: { path: { id, take }, query: { against } } }));

/** The drill that answers a remark; null: its bars are rehearsed. */
export const drillFor = async (id: string, take: string, kind: string, bar: string, signal: AbortSignal) =>
  answered(
    await client.GET("/api/settings/{id}/takes/{take}/drill", { params: { path: { id, take }, query: { kind, bar } }, signal }),
  ).drill;

export const takesOf = async (piece: string, signal: AbortSignal): Promise<TakeItem[]> =>
  answered(await client.GET("/api/takes", { params: { query: { piece } }, signal }));

export const putTakeAway = async (take: string) => answered(await client.DELETE("/api/takes/{take}", { params: { path: { take } } }));

/** What is asked of a take that is a file: it was played at whatever speed. */
export type FileWish = Omit<TakeWish, "speed" | "taps">;

export const bringTake = async (id: string, wish: FileWish, file: File): Promise<TakeSeen> => {
  const { from, to, hand, player, piece } = wish;
  const said = Object.fromEntries(Object.entries({ from, to, hand, player, piece }).filter(([, value]) => value));
  return answered(
    await client.POST("/api/settings/{id}/takes/file", {
      params: { path: { id }, query: said },
      ...asItIs(file),
    }),
  );
};
