/** What brings the loop of a design within its limit: a breaker of lower trip current, or the next cable size. */

import { largerSizes } from "../../calc/minimum-size.ts";
import { rewritten } from "../../circuit/rewritten.ts";
import type { WayStudy } from "../../circuit/way.ts";
import type { Fix } from "../../model/problems.ts";
import { designLoop } from "../../readings/loop.ts";
import { usualCurves } from "../../tables/sizing-practice.ts";
import { sheathedPair } from "./cable-size.ts";
import { inPlaceOf } from "./writing.ts";

const types = ["B", "C", "D"] as const;

/** Each is tried on the way's own text before it is offered. */
export function loopFixes(study: WayStudy): Fix[] {
  const found: Fix[] = [];
  for (const fixes of [lowerTripTypes(study), largerCables(study)]) {
    const cure = fixes.find((fix) => holds(study, fix));
    if (cure) found.push(cure);
  }
  return found;
}

function holds(study: WayStudy, { edits }: Fix): boolean {
  const trial = rewritten(study, edits);
  const loop = trial && designLoop(trial);
  const limit = trial?.disconnection?.limit;
  return loop !== undefined && limit !== undefined && loop.value <= limit.value;
}

/** The highest trip current first: what the inrush of a load requires is kept. */
function lowerTripTypes({ device, uses }: WayStudy): Fix[] {
  const curve = device?.fact.args.curve;
  if (!curve) return [];
  const usual = usualCurves.rows.find(({ facts }) => uses.has(facts.use))?.facts.curve ?? "B";
  const below = types.slice(types.indexOf(usual), types.indexOf(curve.curve));
  return below
    .toReversed()
    .map((type) => inPlaceOf(curve, `${type}${curve.rating}`, `Make the device ${type}${curve.rating}`));
}

/** A larger protective conductor where the cable has a choice of it, then the next size of the whole. */
function largerCables({ cable }: WayStudy): Fix[] {
  const { line, cpc } = cable?.fact.args ?? {};
  if (!cable || !line || !cpc || cable.cpcBy) return [];
  const write = (size: number, protective: number): Fix => ({
    title:
      size === line.value ? `Make the cpc ${protective} mm²` : `Make it ${size} mm² with a cpc of ${protective} mm²`,
    edits: [
      ...(size === line.value ? [] : [{ start: line.start, end: line.end, text: `${size} mm²` }]),
      ...(protective === cpc.value ? [] : [{ start: cpc.start, end: cpc.end, text: `${protective} mm²` }]),
    ],
    safe: false,
  });
  const own = cable.construction === "singles" ? largerSizes(cpc.value).filter((size) => size <= line.value) : [];
  const whole = largerSizes(line.value).flatMap((size) => {
    const pair = cable.construction === "flat-twin" ? sheathedPair(size) : size;
    return pair === undefined ? [] : [write(size, Math.max(pair, cpc.value))];
  });
  return [...own.map((size) => write(line.value, size)), ...whole];
}
