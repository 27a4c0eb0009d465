import type { Calculated } from "../../calc/result.ts";
import { looked, plain } from "../../calc/result.ts";
import { ringRatings, ringRule } from "../../calc/ring.ts";
import { deviceName } from "../../circuit/describe.ts";
import { conventionalRow } from "../../circuit/overload.ts";
import type { WayStudy } from "../../circuit/way.ts";
import { conventionalCircuits } from "../../tables/ring.ts";
import { cellOf } from "../../tables/table.ts";
import { amountOf, factSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "design/floor-area-exceeded",
  severity: "warning",
  since: "0.1",
  title: "The floor area exceeds that of the conventional socket circuit.",
  why: "The conventional circuits assume a load for a given floor area. Beyond it, show the design current, or divide the area between two circuits.",
  clauses: ["433.1.204", "314.1"],
  examples: [
    {
      bad: `way 1 ring "Sockets" {
  device       BS EN 60898 B32 6 kA
  floor-area   130 m²
  ^^^^^^^^^^^^^^^^^^^
  serves       sockets
}`,
      good: `way 1 ring "Sockets" {
  device       BS EN 60898 B32 6 kA
  floor-area   100 m²
  serves       sockets
}`,
    },
    {
      bad: `way 1 radial "Sockets" {
  device       BS EN 60898 B20 6 kA
  floor-area   80 m²
  ^^^^^^^^^^^^^^^^^^
  serves       sockets
}`,
      good: `way 1 radial "Sockets" {
  device       BS EN 60898 B32 6 kA
  floor-area   70 m²
  serves       sockets
}`,
    },
  ],
  check(study, report) {
    const area = study.facts.one("floor-area");
    const limit = area && areaLimit(study);
    if (!area || !limit || area.args.value.value <= limit.value) return;
    report(factSpot(area), {
      message: `${plain(area.args.value.value)} m² exceeds the ${plain(limit.value)} m² of a conventional ${study.isRing ? "ring" : "radial"} on this device: show the design current, or divide it.`,
      value: { amount: area.args.value.value, unit: "m²" },
      limit: amountOf(limit),
      steps: limit.steps,
      source: limit.source,
      related: study.device
        ? [{ spot: factSpot(study.device.fact), message: `Protective device: ${deviceName(study.device)}.` }]
        : [],
    });
  },
});

function areaLimit(study: WayStudy): Calculated | undefined {
  if (!study.servesSockets && !study.isRing) return undefined;
  if (study.isRing) return ringRule("area");
  const rating = study.device?.rating;
  if (rating === undefined || study.way.kind !== "radial" || rating > Math.max(...ringRatings)) return undefined;
  const row = conventionalRow(ringRatings.includes(rating) ? "A2 radial" : "A3 radial");
  if (!row) return undefined;
  const { value, source } = cellOf(conventionalCircuits, row, "area");
  return { value, unit: "m²", steps: [looked(row.facts.circuit, source.ref, `${plain(value)} m²`)], source };
}
