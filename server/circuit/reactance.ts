/** The reactance of the conductors of a way, where their size makes it count. */

import type { Conductor } from "../calc/circuit-network.ts";
import { armourReactance, type Lying, reactanceAbove, reactancePerMetre, sideBySide } from "../calc/reactance.ts";
import { productStep } from "../calc/reproducible.ts";
import { type Calculated, metres, milliohms, ohms, step, worked } from "../calc/result.ts";
import { combine, fromFormula, summed } from "../tables/source.ts";
import { type Cable, single } from "./cable.ts";
import { conductorPerMetre, ofParallel } from "./cpc.ts";
import { methodOf } from "./route-capacity.ts";
import type { WayStudy } from "./way.ts";

/** Ω of conductors of a way in series; nothing where resistance alone decides, as of a ring, or no figure is kept. */
export function reactanceOf(study: WayStudy, of: readonly Conductor[]): Calculated | undefined {
  const { cable, length, isRing } = study;
  if (!cable || !length || isRing || (cable.line <= reactanceAbove() && !cable.own?.reactance)) return undefined;
  const parts = of.flatMap((which) => {
    const one = perMetre(cable, which, lyingOf(study));
    return one ? [ofParallel(one, cable.parallel[which], "x")] : [];
  });
  if (parts.length === 0) return undefined;
  const each = parts.reduce((sum, { value }) => sum + value, 0);
  const value = each * length.value;
  return worked(value, "Ω", fromFormula(summed(...parts)), () => [
    ...parts.flatMap(({ steps }) => steps),
    productStep(
      "X = length × reactance per metre",
      [
        [length.value, metres],
        [each, (one) => `${milliohms(one)}/m`],
      ],
      [value, ohms],
    ),
  ]);
}

/** Singles lie apart in a conduit or trunking and touch elsewhere; the cores of a cable lie together. */
function lyingOf(study: WayStudy): Lying {
  const { cable, facts } = study;
  if (cable?.construction === "armoured") return "armoured";
  if (cable?.construction !== "singles") return "in-cable";
  const route = facts.one("route");
  const method = (route && methodOf(route)) ?? "B";
  return method === "A" || method === "B" ? "enclosed" : "touching";
}

function perMetre(cable: Cable, which: Conductor, lying: Lying): Calculated | undefined {
  const own = (which === "cpc" ? cable.own?.cpcReactance : undefined) ?? cable.own?.reactance;
  const stated = own && { value: own.value, unit: "Ω/m", steps: [], source: own.source };
  if (cable.construction === "busbar-trunking") return stated;
  if (which !== "cpc" || cable.cpcBy !== "armour") return stated ?? reactancePerMetre(cable.line, lying);
  const armour = armourReactance(cable.line);
  const core = cable.cpc === undefined ? undefined : (stated ?? reactancePerMetre(cable.line, lying));
  if (!core || !armour) return armour;
  const [r, steel] = [
    conductorPerMetre({ ...cable, cpcBy: undefined, parallel: single }, "cpc"),
    conductorPerMetre({ ...cable, cpc: undefined, parallel: single }, "cpc"),
  ];
  if (!r || !steel) return armour;
  const value = sideBySide([r.value, core.value], [steel.value, armour.value]);
  return worked(value, "Ω/m", fromFormula(combine(core.source, armour.source)), () => [
    ...core.steps,
    ...armour.steps,
    step("x of core and armour side by side", "", `${milliohms(value)}/m`),
  ]);
}
