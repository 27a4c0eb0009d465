import type { Device } from "../../circuit/way.ts";
import { isFuse } from "../../tables/standard-values.ts";
import { inPlaceOf, slipOf } from "../common/writing.ts";
import { type Report, valueSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "design/device-does-not-exist",
  severity: "error",
  since: "0.1",
  title: "The standard and the type of a device do not go together.",
  why: "A fuse has no type B, and a breaker without its type could trip at three times its rating or at twenty: every limit would be that of another device.",
  clauses: ["511.1", "533.1"],
  examples: [
    {
      bad: `way 1 radial "Heater" {
  device       BS 88-3 B16
                       ^^^
}`,
      good: `way 1 radial "Heater" {
  device       BS 88-3 16 A
}`,
    },
    {
      bad: `way 1 radial "Heater" {
  device       BS EN 60898 16 A 6 kA
               ^^^^^^^^^^^
}`,
      good: `way 1 radial "Heater" {
  device       BS EN 60898 B16 6 kA
}`,
    },
    {
      bad: `way 1 radial "Sockets" {
  device       BS EN 60898 B16 6 kA 30 mA type A
               ^^^^^^^^^^^
}`,
      good: `way 1 radial "Sockets" {
  device       BS EN 61009 B16 6 kA 30 mA type A
}`,
    },
    {
      bad: `way 1 radial "Sockets" {
  device       BS EN 61008 40 A 30 mA type A
               ^^^^^^^^^^^
}`,
      good: `way 1 radial "Sockets" {
  device       BS EN 61009 B40 30 mA type A
}`,
    },
    {
      bad: `way 1 radial "Heater" {
  device       BS 3871 15 A 3 kA
               ^^^^^^^
}`,
      good: `way 1 radial "Heater" {
  device       BS 3871 15 A type-2 3 kA
}`,
    },
    {
      bad: `way 1 radial "Heater" {
  device       BS EN 60898 16 A type-2 6 kA
                                ^^^^^^
}`,
      good: `way 1 radial "Heater" {
  device       BS EN 60898 B16 6 kA
}`,
    },
  ],
  check(study, report) {
    const { device } = study;
    if (!device || study.isSpare) return;
    const found = mismatchOf(device);
    if (found) report(valueSpot(device.fact, found.at), found.report);
  },
});

type Mismatch = { readonly at: { start: number; end: number }; readonly report: Report };

function mismatchOf(device: Device): Mismatch | undefined {
  const { standard, curve, rating, sensitivity, oldType } = device.fact.args;
  const number = /\d{4,5}/.exec(standard.value)?.[0];
  const fuse = isFuse(device.family);
  if (fuse && curve) {
    const amperes = `${curve.rating} A`;
    return {
      at: curve,
      report: {
        message: `A ${standard.value} device is a fuse and has no type ${curve.curve}: write ${amperes}, or the breaker's standard.`,
        fixes: [slipOf(inPlaceOf(curve, amperes, `Make it ${amperes}`))],
      },
    };
  }
  if (number === "61008" || number === "4293") {
    const message = `A ${standard.value} RCD gives no overcurrent protection: write the breaker or fuse here, and the RCD on a line of its own.`;
    return { at: standard, report: { message } };
  }
  if (number === "60898" && sensitivity) {
    const written = standard.value.replace("60898", "61009");
    return {
      at: standard,
      report: {
        message: "A BS EN 60898 breaker has no residual current function: one with it is to BS EN 61009.",
        fixes: [slipOf(inPlaceOf(standard, written, `Make it ${written}`))],
      },
    };
  }
  if (oldType && (device.family !== "legacy-breaker" || curve)) {
    const message = curve
      ? `This breaker is recorded as type ${curve.curve} and as ${oldType.value.replace("-", " ")}: which is marked on it?`
      : `Types 1 to 4 belong to breakers to BS 3871; ${standard.value} has none of them.`;
    return { at: oldType, report: { message } };
  }
  if (device.family === "breaker" && !curve && rating) {
    const message = `The type of this ${standard.value} device is missing, so Zs cannot be judged: write B, C or D before the rating.`;
    const fixes = (["B", "C", "D"] as const).map((type) =>
      slipOf(inPlaceOf(rating, `${type}${rating.value}`, `Write ${type}${rating.value}`)),
    );
    return { at: standard, report: { message, severity: "warning", fixes } };
  }
  if (device.family === "legacy-breaker" && !device.curve && rating) {
    const message = `The type of this ${standard.value} breaker is missing, so Zs cannot be judged: write type-1 to type-4, or B, C or D.`;
    return { at: standard, report: { message, severity: "warning" } };
  }
  return undefined;
}
