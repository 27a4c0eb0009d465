/** What disconnects a fault to earth on a circuit, and the loop impedance it needs. */

import { type ColdLimit, coldLimit } from "../calc/cold-limit.ts";
import type { LoopLimit } from "../calc/loop-limit.ts";
import { rcdLoopLimit } from "../calc/rcd-loop-limit.ts";
import type { Calculated } from "../calc/result.ts";
import type { Cable } from "./cable.ts";
import type { Rcd } from "./rcds.ts";
import type { SupplyStudy } from "./supply.ts";

/** What the circuit must disconnect by, and the greatest loop impedance that lets it. */
export interface Disconnection {
  readonly by: "overcurrent" | "rcd";
  readonly limit: Calculated;
  /** For a reading on cold conductors. The same as `limit` where an RCD disconnects. */
  readonly cold: ColdLimit | undefined;
  readonly time: Calculated | undefined;
  readonly rcd: Rcd | undefined;
}

/** What of a circuit decides by what and when it disconnects. */
interface Protection {
  readonly supply: SupplyStudy;
  readonly rcds: readonly Rcd[];
  readonly cable: Cable | undefined;
  /** Greatest Zs for the overcurrent device to disconnect in time, hot. */
  readonly overcurrentLimit: LoopLimit | undefined;
  readonly disconnectionTime: Calculated | undefined;
  /** °C, where it was noted. */
  temperatureAt(test: "live"): number | undefined;
}

/**
 * In TT, and in TN where the loop is too high for the overcurrent device, an RCD disconnects. A TN circuit is still
 * judged by its overcurrent device where that is possible: the RCD is not there to excuse a poor loop.
 */
export function disconnectionOf(study: Protection): Disconnection | undefined {
  const { overcurrentLimit, supply, disconnectionTime: time } = study;
  const rcd = study.rcds[0];
  const byRcd = (): Disconnection | undefined => {
    const limit = rcd && rcdLoopLimit(rcd.sensitivity);
    return limit && { by: "rcd", limit, cold: undefined, time, rcd };
  };
  if (supply.earthing === "TT") return byRcd();
  if (!overcurrentLimit) return undefined;
  const temperature = study.temperatureAt("live");
  const insulation = study.cable?.insulation ?? 70;
  const cold = coldLimit(overcurrentLimit, { insulation, ...(temperature === undefined ? {} : { temperature }) });
  return { by: "overcurrent", limit: overcurrentLimit, cold, time, rcd };
}

/** One of the limits for a loop, with what tells it from the others: `hot`, `cold`, `corrected to 12 °C`, `by the RCD`. */
interface NamedLimit {
  readonly limit: Calculated;
  readonly which: string;
}

/** The limit for the loop as it is in service, or that of the RCD where one disconnects. */
export const serviceLimit = ({ by, limit }: Disconnection): NamedLimit => ({
  limit,
  which: by === "rcd" ? "by the RCD" : "hot",
});

/** What a reading on cold conductors is compared with: the governing one of all limits. */
export function readingLimit(disconnection: Disconnection): NamedLimit {
  const { cold } = disconnection;
  if (!cold) return serviceLimit(disconnection);
  return cold.corrected ? { limit: cold.corrected, which: cold.corrected.style } : { limit: cold, which: "cold" };
}

/** Every limit for the loop, the governing one last. */
export const loopLimits = (disconnection: Disconnection): readonly NamedLimit[] =>
  disconnection.cold ? [serviceLimit(disconnection), readingLimit(disconnection)] : [serviceLimit(disconnection)];
