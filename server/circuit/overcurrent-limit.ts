/** The time a circuit must disconnect in, and the loop impedance its overcurrent device needs for that. */
import { disconnectionTime } from "../calc/disconnection-time.ts";
import { type LoopBound, loopBound } from "../calc/loop-bound.ts";
import { type LoopLimit, type LoopQuestion, loopLimit } from "../calc/loop-limit.ts";
import { ownLimit } from "../calc/own-device.ts";
import type { Calculated } from "../calc/result.ts";
import { settingsLimit } from "../calc/settings.ts";
import type { Context } from "../model/installation.ts";
import type { Device } from "./device.ts";
import { ownFiguresOf } from "./own-device.ts";
import type { SupplyStudy } from "./supply.ts";

/** What of a circuit decides the time it must disconnect in. */
interface Disconnecting {
  readonly device: Device | undefined;
  readonly supply: SupplyStudy;
  readonly context: Context;
  readonly isSpare: boolean;
  readonly isFinal: boolean;
  readonly servesSockets: boolean;
}

/** s, as the standard allows; nothing where the edition, the earthing or the rating is not known. */
export function disconnectionTimeOf(study: Disconnecting): Calculated | undefined {
  const { device, supply, context } = study;
  if (device?.rating === undefined || !supply.earthing || !context.edition || study.isSpare) return undefined;
  if (supply.kind === "other") return undefined;
  return context.parts.alike.answer(disconnectionTime, {
    system: supply.earthing,
    U0: supply.U0,
    final: study.isFinal,
    sockets: study.servesSockets,
    rating: device.rating,
    edition: context.edition,
  });
}

/** s within which a breaker that trips instantaneously has opened. */
const instantly = 0.4;

type Limiting = Pick<Disconnecting, "device" | "supply" | "context"> & {
  readonly disconnectionTime: Calculated | undefined;
};

/** The greatest Zs, Ω, hot, at which the overcurrent device opens within `allowed` seconds. */
export function overcurrentLimitOf(study: Limiting): LoopLimit | undefined {
  const { device, supply, context } = study;
  const question = questionOf(study);
  if (!question || !device) return undefined;
  const { time, edition } = question;
  const own = ownLimit(ownFiguresOf(device, context), time, { U0: supply.U0, edition });
  if (own) return own;
  if (device.settings) return settingsLimit(device.settings, time, supply.U0, edition);
  return context.parts.alike.answer(loopLimit, question);
}

/** What that limit cannot be above, where it is in no table and nowhere stated. */
export function overcurrentBoundOf(study: Limiting): LoopBound | undefined {
  const question = study.device?.settings ? undefined : questionOf(study);
  return question && study.context.parts.alike.answer(loopBound, question);
}

function questionOf({ device, supply, context, disconnectionTime: allowed }: Limiting): LoopQuestion | undefined {
  if (device?.rating === undefined || allowed === undefined || !context.edition) return undefined;
  // Table 41.6 has breakers trip at once, whatever time is allowed.
  const instant = supply.kind === "reduced" && device.family?.endsWith("breaker");
  return {
    standard: device.standard,
    ...(device.curve ? { curve: device.curve } : {}),
    rating: device.rating,
    time: instant ? Math.min(allowed.value, instantly) : allowed.value,
    U0: supply.U0,
    edition: context.edition,
  };
}
