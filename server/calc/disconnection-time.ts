import type { Edition } from "../tables/editions.ts";
import type { Calculated } from "./result.ts";

export type System = "TN-S" | "TN-C-S" | "TN-C" | "TT" | "IT";

/** What decides the time allowed for disconnection. Rating in A, U0 in V. */
export interface DisconnectionQuestion {
  readonly system: System;
  readonly U0: number;
  /** False for a distribution circuit. */
  readonly final: boolean;
  /** Whether the circuit has one or more socket-outlets. */
  readonly sockets: boolean;
  readonly rating: number;
  readonly edition: Edition;
}

export function disconnectionTime(_question: DisconnectionQuestion): Calculated | undefined {
  return undefined;
}
