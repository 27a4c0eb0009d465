/** The design current of a circuit: stated, or from its loads. */
import type { Calculated } from "../calc/result.ts";
import type { Fact, Facts } from "../model/values.ts";
import { cookerCurrent, type Served } from "./cooker-load.ts";
import { currentOfAll, type Loaded } from "./loads.ts";

/** A current in each line, and the line that it follows from. */
export interface LineCurrent {
  /** A. */
  readonly value: number;
  readonly fact: Fact;
  readonly stated: boolean;
}

export interface DesignCurrent extends LineCurrent {
  /** How it follows from the whole of its loads, where it is not all of them at once. */
  readonly diversity?: Calculated;
}

interface Supplied extends Loaded, Served {
  readonly facts: Facts<"way">;
}

/** What the loads take all at once; nothing where one of them, or the lines that share it, could not be read. */
export function loadCurrentOf(study: Supplied): LineCurrent | undefined {
  const loads = study.facts.all("load");
  const [first] = loads;
  if (!first || study.facts.broken.some((word) => word === "load" || word === "phase")) return undefined;
  return { value: currentOfAll(loads, study), fact: first, stated: false };
}

export function designCurrentOf(
  study: Supplied & { readonly loadCurrent: LineCurrent | undefined },
): DesignCurrent | undefined {
  const stated = study.facts.one("Ib");
  if (stated) return { value: stated.args.value.value, fact: stated, stated: true };
  const all = study.loadCurrent;
  const diversity = all && cookerCurrent(study, all.value);
  return diversity ? { ...all, value: diversity.value, diversity } : all;
}
