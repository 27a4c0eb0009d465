/** The drop of a circuit with a proposed cable, held against what remains of the guidance for the whole way. */
import { methodOf, type WayStudy } from "../analysis/way.ts";
import type { Construction, Method } from "../calc/index.ts";
import { type Calculated, dropLimit, dropPerAmpereMetre, dropPercent, voltageDrop } from "../calc/index.ts";

export interface DropFound {
  readonly drop: Calculated;
  readonly limit: Calculated;
}

/** The drop in per cent of the nominal voltage, by the worst stretch; or why it cannot be reckoned. */
export function dropFor(trial: WayStudy, current: number): DropFound | { readonly missing: string } {
  const { cable, length, threePhase, supply } = trial;
  if (!length) return { missing: "The length is not written: neither the voltage drop nor the loop was reckoned." };
  if (!cable) return { missing: "The cable is not described." };
  const construction = cable.construction as Construction;
  let perMetre: ReturnType<typeof dropPerAmpereMetre>;
  for (const route of trial.facts.all("route")) {
    const method = methodOf(route) as Method;
    const found = dropPerAmpereMetre({
      construction,
      insulation: cable.insulation,
      method,
      loaded: threePhase ? 3 : 2,
      csa: cable.line,
    });
    if (!found) return { missing: "No table here gives the voltage drop of this cable: it was not reckoned." };
    if (!perMetre || found.value > perMetre.value) perMetre = found;
  }
  if (!perMetre) return { missing: "The route is not written: the voltage drop was not reckoned." };
  const drop = voltageDrop({ perAmpereMetre: perMetre, current, length: length.value, ring: trial.isRing });
  const nominal = supply.U0 * (threePhase ? Math.sqrt(3) : 1);
  const lighting = ["lighting", "emergency-lighting"].some((use) => trial.uses.has(use));
  return { drop: dropPercent(drop, nominal), limit: dropLimit(lighting ? "lighting" : "other") };
}
