import { nextSizeUp, sizes } from "../../calc/minimum-size.ts";
import { remark, squareMillimetres } from "../../calc/result.ts";
import { armourSection } from "../../circuit/cpc.ts";
import { deviceName } from "../../circuit/describe.ts";
import { armourTableNeed, type ProtectiveNeed, suffices } from "../../circuit/protective.ts";
import type { Cable, WayStudy } from "../../circuit/way.ts";
import type { Fix } from "../../model/problems.ts";
import { protectiveAtFault } from "../../readings/loop.ts";
import { combine } from "../../tables/source.ts";
import { resizeCable, sheathedPair } from "../common/cable-size.ts";
import { inPlaceOf } from "../common/writing.ts";
import { amountOf, factSpot, valueSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "design/cpc-too-small",
  severity: "error",
  since: "0.1",
  title: "A protective conductor is too small for the fault current.",
  why: "In a fault it may overheat before the device has opened, and afterwards there may be no earth at all. It is sized by Table 54.7 or by the adiabatic equation: current and time of the same fault, the k of the conductor, and the result rounded up to the next size.",
  clauses: ["543.1.1", "543.1.3", "543.1.4"],
  examples: [
    {
      setting: { work: "existing" },
      bad: `way 1 radial "Cooker" {
  device       BS 88-3 32 A
  cable        flat-twin  line 6 mm²  cpc 1.0 mm²
                                          ^^^^^^^
  serves       cooker
}`,
      good: `way 1 radial "Cooker" {
  device       BS 88-3 32 A
  cable        flat-twin  line 6 mm²  cpc 2.5 mm²
  serves       cooker
}`,
    },
    {
      bad: `way 1 radial "Compressor" {
  device       BS EN 60898 D32 6 kA
  cable        flat-twin  line 6 mm²  cpc 1.5 mm²
                                          ^^^^^^^
  serves       motor
}`,
      good: `way 1 radial "Compressor" {
  device       BS EN 60898 C32 6 kA
  cable        flat-twin  line 6 mm²  cpc 1.5 mm²
  serves       motor
}`,
    },
    {
      bad: `way 1 feeder "Pavilion" {
  device       BS 88-2 200 A 80 kA gG
  cable        armoured 90 °C  line 25 mm²  cpc-by armour  cores 2
                                                   ^^^^^^
}`,
      good: `way 1 feeder "Pavilion" {
  device       BS 88-2 100 A 80 kA gG
  cable        armoured 90 °C  line 25 mm²  cpc-by armour  cores 2
}`,
    },
  ],
  check(study, report) {
    const { cable, device } = study;
    const found = protectiveAtFault(study);
    if (!found || !cable || !device?.rating || suffices(found)) return;
    const { need, has, method, certain } = found;
    const table = method === "table";
    // Without the edition or the earthing nothing else is judged either, and that is reported there.
    if (table && (!study.context.edition || !study.supply.earthing)) return;
    const byArmour = found.of === "armour";
    const spot = byArmour ? cable.fact.args.cpcBy : cable.fact.args.cpc;
    const remedy = byArmour ? largerArmour(study, found) : largerCore(cable, need.value);
    const subject = byArmour
      ? `An armour of ${squareMillimetres(has.value)} of steel`
      : `A ${squareMillimetres(has.value)} cpc`;
    report(spot ? valueSpot(cable.fact, spot) : factSpot(cable.fact), {
      message: table
        ? `${subject} is below the ${squareMillimetres(need.value)} of Table 54.7${byArmour ? " for steel" : ""}: show by the adiabatic equation that it is enough.`
        : `${subject} is too small: the fault current that trips the ${deviceName(device)} needs ${squareMillimetres(need.value)}${remedy.words}.`,
      value: amountOf(has),
      limit: amountOf(need),
      least: true,
      steps: [
        remark(table ? "by Table 54.7" : "by the adiabatic equation, 543.1.3"),
        ...(byArmour ? has.steps : []),
        ...need.steps,
      ],
      source: combine(need.source, has.source),
      severity: table ? "information" : certain ? "error" : "warning",
      related: [{ spot: factSpot(device.fact), message: `Protective device: ${deviceName(device)}.` }],
      fixes: remedy.fixes,
    });
  },
});

interface Remedy {
  /** How the sentence goes on. */
  readonly words: string;
  readonly fixes: readonly Fix[];
}

function largerCore(cable: Cable, need: number): Remedy {
  const size = nextSizeUp(need);
  const { cpc } = cable.fact.args;
  const flat = cable.construction === "flat-twin";
  // No sheathed cable has a protective conductor larger than its lines, nor flat cable than it is sold with: the whole of
  // it is another.
  const largest = flat ? (sheathedPair(cable.line) ?? cable.line) : cable.line;
  if (size !== undefined && size > largest && cable.construction !== "singles") {
    const whole = sizes.find((line) => {
      const most = flat ? sheathedPair(line) : line;
      return line > cable.line && most !== undefined && most >= need;
    });
    return { words: `: fit ${squareMillimetres(size)}`, fixes: resizeCable(cable, whole) };
  }
  return {
    words: size ? `: fit ${squareMillimetres(size)}` : "",
    fixes: cpc && size ? [inPlaceOf(cpc, `${size} mm²`, `Make the cpc ${squareMillimetres(size)}`)] : [],
  };
}

/** The next size of cable whose armour is enough, as the same calculation finds for it. */
function largerArmour(study: WayStudy, { need, method }: ProtectiveNeed): Remedy {
  const { cable } = study;
  const size =
    cable &&
    sizes.find((line) => {
      if (line <= cable.line) return false;
      const has = armourSection({ ...cable, line });
      const asked = method === "table" ? armourTableNeed({ ...cable, line }) : need;
      return has && asked && suffices({ has, need: asked });
    });
  if (!cable || size === undefined) return { words: ": run a copper conductor beside it", fixes: [] };
  return {
    words: `: fit ${squareMillimetres(size)} cable, or run a copper conductor beside it`,
    fixes: resizeCable(cable, size),
  };
}
