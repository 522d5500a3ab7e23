import { inflateSync } from "fflate";
import type { Heard } from "../sound/plan";

/** What the file holds beside its drawings and recordings. */
export interface Pocket {
  title: string;
  player?: string;
  /** What was ticked is remembered under it. */
  mark: string;
  parts: Part[];
  today: Task[];
}

export interface Part {
  title: string;
  credits: string[];
  heard: Heard;
  quartersPerMinute: number;
}

/** A line of today’s list. */
export interface Task {
  text: string;
  /** Which part, from 0; none, as for a break. */
  part?: number;
  /** Printed numbers. */
  firstBar?: string;
  lastBar?: string;
  hand?: "left" | "right";
  quartersPerMinute?: number;
  minutes?: number;
}

export const pocket: Pocket = JSON.parse(document.getElementById("data")!.textContent!);

/** Bytes that stand in the file in base64. */
export const bytesIn = (selector: string) => Uint8Array.from(atob(document.querySelector(selector)!.textContent!.trim()), (letter) => letter.charCodeAt(0));

/** A part drawn for a screen, as markup. */
export const drawingOf = (screen: "narrow" | "wide", part: number) => new TextDecoder().decode(inflateSync(bytesIn(`#${screen}-${part}`)));
