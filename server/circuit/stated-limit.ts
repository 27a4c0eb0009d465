/** What a limit written on a record was taken from, when it is not the one that holds. */
import { coldLimit } from "../calc/cold-limit.ts";
import { type LoopLimit, loopLimit } from "../calc/loop-limit.ts";
import { rcdLoopLimit } from "../calc/rcd-loop-limit.ts";
import { milliamps, ohms, plain, seconds } from "../calc/result.ts";
import { editions } from "../tables/editions.ts";
import type { WayStudy } from "./way.ts";

interface Candidate {
  readonly value: number;
  readonly words: string;
}

/** Written figures have two decimals, and some are rounded the other way. */
const same = (one: number, other: number): boolean => Math.abs(one - other) < 0.0051;

/** Whether a figure is the limit itself, however it was rounded. */
export const isLimit = (value: number, { value: printed, exact }: LoopLimit): boolean =>
  same(value, printed) || same(value, exact);

/** Words for the limit of another kind that a figure equals. */
export function likenessOf(study: WayStudy, value: number): string | undefined {
  return candidates(study).find((candidate) => same(candidate.value, value))?.words;
}

function candidates(study: WayStudy): Candidate[] {
  const { device, disconnectionTime, supply, context, overcurrentLimit } = study;
  const { edition } = context;
  if (device?.rating === undefined || !edition) return [];
  const time = disconnectionTime?.value ?? 0.4;
  const question = { standard: device.standard, rating: device.rating, time, U0: supply.U0, edition };
  const own = device.curve ? { curve: device.curve } : {};
  const found: Candidate[] = [];
  const add = (limit: { value: number } | undefined, words: string) => {
    if (limit) found.push({ value: limit.value, words });
  };
  if (overcurrentLimit) {
    const cold = coldLimit(overcurrentLimit);
    for (const style of [cold, ...cold.others]) {
      add(style, `the figure for a cold reading (${style.style}), which answers another question`);
    }
  }
  // A stricter figure of a later edition is no mistake on old work.
  for (const older of editions.filter((one) => one.cmin.value > edition.cmin.value)) {
    add(loopLimit({ ...question, ...own, edition: older }), "the limit before Cmin was brought in");
  }
  const types = device.family === "legacy-breaker" ? (["1", "2", "3", "4"] as const) : (["B", "C", "D"] as const);
  for (const curve of types) {
    if (curve !== device.curve && device.curve)
      add(loopLimit({ ...question, curve }), `the limit of a type ${curve} device`);
  }
  for (const other of [0.4, 5].filter((one) => one !== time)) {
    add(loopLimit({ ...question, ...own, time: other }), `the limit for ${seconds(other)}, not for ${seconds(time)}`);
  }
  for (const rcd of study.rcds) {
    const limit = rcdLoopLimit(rcd.sensitivity);
    add(limit, `the limit of the ${milliamps(rcd.sensitivity)} RCD, not of the ${plain(device.rating)} A device`);
  }
  return found;
}

/** The RCD limit that a reading equals to the digit, with the rated current it belongs to. */
export function rcdLimitAs(study: WayStudy, value: number): string | undefined {
  for (const rcd of study.rcds) {
    const limit = rcdLoopLimit(rcd.sensitivity);
    if (limit && limit.value === value)
      return `${ohms(limit.value)} is the limit of a ${milliamps(rcd.sensitivity)} RCD`;
  }
  return undefined;
}
