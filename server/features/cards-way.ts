/** Device, cable, route and load of a way. */
import { deviceName, rcdName } from "../analysis/describe.ts";
import { greatestFault } from "../analysis/faults.ts";
import { protectiveNeed } from "../analysis/protective.ts";
import { methodOf, type WayStudy } from "../analysis/way.ts";
import {
  type Calculated,
  type Construction,
  dropLimit,
  dropPerAmpereMetre,
  dropPercent,
  resistancePerMetre,
  ringRule,
  voltageDrop,
} from "../calc/index.ts";
import { amps, kiloamps, metres, percent, seconds, squareMillimetres } from "../calc/result.ts";
import type { Fact } from "../model/values.ts";
import { type Card, card, limitRow, type Row, row, show } from "./card.ts";

export function deviceCard(study: WayStudy): Card | undefined {
  const { device, disconnection, disconnectionTime } = study;
  if (!device) return undefined;
  const fault = greatestFault(study.context);
  const breaks = device.breaking;
  const limit = disconnection?.limit;
  return card(
    [
      row("device", deviceName(device)),
      currentChain(study),
      row(
        "breaks",
        breaks === undefined || !fault
          ? undefined
          : `${kiloamps(breaks)}, where ${kiloamps(fault.value)} (${fault.name}) is to be broken`,
      ),
      row("must disconnect", disconnectionTime && `within ${seconds(disconnectionTime.value)}`),
      limitRow(disconnection?.by === "rcd" ? "Zs at most, by the RCD" : "Zs at most", limit),
      row("RCD", study.rcds.length > 0 ? study.rcds.map(rcdName).join(", then ") : undefined),
    ],
    disconnectionTime,
    limit,
  );
}

/** Ib ≤ In ≤ Iz with the room between them. A ring's cable shares the load between its legs and has a rule of its own. */
export function currentChain(study: WayStudy): Row | undefined {
  if (study.isRing) return ringCurrents(study);
  const In = study.device?.rating;
  const Ib = study.designCurrent?.value;
  const Iz = study.capacity?.value.value;
  if (In === undefined || (Ib === undefined && Iz === undefined)) return undefined;
  const parts = [
    ...(Ib === undefined ? [] : [`Ib ${amps(Ib)} ${Ib <= In ? "≤" : "**>**"}`]),
    `In ${amps(In)}`,
    ...(Iz === undefined ? [] : [`${In <= Iz * (1 + 1e-9) ? "≤" : "**>**"} Iz ${amps(Iz)}`]),
  ];
  const room = [
    ...(Ib === undefined ? [] : [`${amps(In - Ib)} to the device`]),
    ...(Iz === undefined ? [] : [`${amps(Iz - In)} to the cable`]),
  ];
  return { name: "currents", text: `${parts.join(" ")}; room: ${room.join(", ")}` };
}

function ringCurrents({ device, designCurrent, capacity }: WayStudy): Row | undefined {
  const needed = ringRule("capacity").value;
  const Iz = capacity?.value.value;
  const parts = [
    ...(device?.rating === undefined ? [] : [`In ${amps(device.rating)}`]),
    ...(designCurrent ? [`Ib ${amps(designCurrent.value)}`] : []),
    ...(Iz === undefined ? [] : [`the ring's cable ${amps(Iz)} ${Iz >= needed ? "≥" : "**<**"} ${amps(needed)}`]),
  ];
  return row("currents", parts.length === 0 ? undefined : parts.join(", "));
}

export function cableCard(study: WayStudy): Card | undefined {
  const { cable } = study;
  if (!cable) return undefined;
  const perMetre = (csa: number | undefined): Calculated | undefined =>
    csa === undefined || cable.construction === "flex" ? undefined : resistancePerMetre(csa, cable.material);
  const line = perMetre(cable.line);
  const cpc = perMetre(cable.cpc);
  const protective = protectiveNeed(study);
  const { capacity } = study;
  return card(
    [
      row("line", line && `${squareMillimetres(cable.line)}, ${show(line)} at 20 °C`),
      row("protective conductor", cpc && `${squareMillimetres(cable.cpc ?? 0)}, ${show(cpc)} at 20 °C`),
      ...study.capacities.map(({ fact, capacity: found }, index) =>
        row(
          `capacity${study.capacities.length > 1 ? ` of stretch ${index + 1}` : ""}`,
          "missing" in found
            ? `not known: ${found.missing}`
            : `${amps(found.value)}${methodOf(fact) === undefined ? "" : ` by method ${methodOf(fact)}`}`,
        ),
      ),
      currentChain(study),
      row(
        "protective conductor wanted",
        protective &&
          `${squareMillimetres(protective.need.value)} (${protective.method === "table" ? "by the table" : "by the heat of the fault"})`,
      ),
    ],
    line,
    cpc,
    capacity?.value,
    protective?.need,
  );
}

export function routeCard(study: WayStudy, fact: Fact | undefined): Card | undefined {
  const stretch = study.capacities.find((one) => one.fact.start === fact?.start);
  if (!stretch) return undefined;
  const { capacity } = stretch;
  if ("missing" in capacity) return card([row("capacity", `not known: ${capacity.missing}`)]);
  const governs = study.capacity?.fact.start === stretch.fact.start && study.capacities.length > 1;
  const text = `${amps(capacity.value)}${governs ? ", the least of the route: it governs" : ""}`;
  return card([row("capacity of this stretch", text), currentChain(study)], capacity);
}

export function lengthCard(study: WayStudy): Card | undefined {
  const { length, expectedR1R2, isRing } = study;
  if (!length) return undefined;
  const drop = dropOf(study);
  return card(
    [
      row(isRing ? "all the way round" : "to the far point", metres(length.value)),
      limitRow(isRing ? "R1+R2 expected, (r1 + r2) / 4" : "R1+R2 expected at 20 °C", expectedR1R2),
      row("voltage drop", drop && `${percent(drop.share.value)} of U0, where ${percent(drop.limit.value)} is advised`),
    ],
    expectedR1R2,
    drop?.share,
    drop?.limit,
  );
}

/** The drop of this circuit alone, by the design current, where cable, route and length are known. */
function dropOf(study: WayStudy): { share: Calculated; limit: Calculated } | undefined {
  const { cable, length, designCurrent, threePhase, supply, isFinal } = study;
  const methods = study.facts.all("route").flatMap((fact) => methodOf(fact) ?? []);
  const [method] = methods;
  if (!cable || !length || !designCurrent || !method || !isFinal) return undefined;
  if (cable.construction === "flex" || cable.construction === "mineral" || cable.material !== "copper")
    return undefined;
  const construction: Construction = cable.construction;
  const { insulation, line: csa } = cable;
  const perAmpereMetre = dropPerAmpereMetre({ construction, insulation, method, loaded: threePhase ? 3 : 2, csa });
  if (!perAmpereMetre) return undefined;
  const drop = voltageDrop({ perAmpereMetre, current: designCurrent.value, length: length.value, ring: study.isRing });
  const share = dropPercent(drop, threePhase ? supply.U0 * Math.sqrt(3) : supply.U0);
  return { share, limit: dropLimit(study.uses.has("lighting") ? "lighting" : "other") };
}

export function loadCard(study: WayStudy): Card | undefined {
  const current = study.designCurrent;
  if (!current) return undefined;
  return card([
    row("design current Ib", `${amps(current.value)}${current.stated ? "" : ", from the loads"}`),
    currentChain(study),
  ]);
}

export function timeCard(study: WayStudy): Card | undefined {
  const { disconnectionTime, disconnection } = study;
  if (!disconnectionTime) return undefined;
  return card(
    [
      row("must disconnect", `within ${seconds(disconnectionTime.value)}`),
      limitRow("Zs at most", disconnection?.limit),
    ],
    disconnectionTime,
    disconnection?.limit,
  );
}
