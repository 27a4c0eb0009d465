import type { Conductor } from "../calc/circuit-network.ts";

/** Conductors as messages name them. */
export const conductorWords: Readonly<Record<Conductor, string>> = {
  line: "line",
  neutral: "neutral",
  cpc: "protective conductor",
};
