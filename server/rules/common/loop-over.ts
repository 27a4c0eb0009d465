/** What every check says of a loop that is above the limit of its overcurrent device. */
import type { Calculated } from "../../calc/result.ts";
import { deviceName } from "../../circuit/describe.ts";
import type { Device } from "../../circuit/device.ts";
import type { WayStudy } from "../../circuit/way.ts";
import { rcdDisconnects } from "../../readings/loop.ts";
import { combine } from "../../tables/source.ts";
import { amountOf, factSpot, type Related, type Report } from "../frame/rule.ts";

interface LoopOver {
  /** How its sentence ends. */
  readonly words: string;
  /** It is lighter where an RCD disconnects all the same. */
  readonly report: Omit<Report, "message"> & { readonly related: readonly Related[] };
}

export function loopOver(study: WayStudy, device: Device, loop: Calculated, limit: Calculated): LoopOver {
  const byRcd = rcdDisconnects(study, loop.value);
  return {
    words: byRcd ? "only the RCD would disconnect" : "it would not disconnect in time",
    report: {
      value: amountOf(loop),
      limit: amountOf(limit, "hot"),
      steps: [...loop.steps, ...limit.steps],
      source: combine(loop.source, limit.source),
      ...(byRcd ? { severity: "warning" } : {}),
      related: [{ spot: factSpot(device.fact), message: `Protective device: ${deviceName(device)}.` }],
    },
  };
}
