import type { Heard } from "../sound/plan";

/** What the file holds; its scores are in its templates. */
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
  /** Which part, from 0. */
  part: number;
  /** Printed numbers. */
  firstBar?: string;
  lastBar?: string;
  hand?: "left" | "right";
  quartersPerMinute?: number;
  minutes?: number;
}

export const pocket: Pocket = JSON.parse(document.getElementById("data")!.textContent!);
