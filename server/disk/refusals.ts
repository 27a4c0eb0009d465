/** Why a file is not read, each as the end of a sentence. Asked by everything that opens one. */
import type { Stats } from "node:fs";
import { ceiling, tooLarge } from "../text/decode.ts";
import type { Grounds } from "./grounds.ts";

interface Refusal {
  readonly failure: string;
}

export const isSchedule = (path: string): boolean => path.toLowerCase().endsWith(".ways");

/** A path as it is written, before the disk is touched. */
export function refusedByPath(path: string, grounds: Grounds): Refusal | undefined {
  if (!isSchedule(path)) return { failure: "its name does not end in “.ways”." };
  if (grounds.holds(path)) return undefined;
  return { failure: "it lies outside the folder of this schedule. Work from a folder that holds both." };
}

/** The same path once its links are followed. */
export function refusedByLink(real: string, grounds: Grounds): Refusal | undefined {
  if (!isSchedule(real)) return { failure: "it is a link to a file whose name does not end in “.ways”." };
  if (grounds.holds(real)) return undefined;
  return { failure: "it is a link out of the folder of this schedule. Name the file itself, or copy it here." };
}

/** What an open file turned out to be. A pipe or a device may have no end, or keep its reader waiting for ever. */
export function refusedByKind(stats: Stats): Refusal | undefined {
  if (stats.isDirectory()) return { failure: "it is a folder." };
  if (!stats.isFile()) return { failure: "it is not a regular file." };
  return stats.size > ceiling ? { failure: tooLarge(stats.size) } : undefined;
}
