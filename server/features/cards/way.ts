/** Device, cable, route and load of a way. */

import { lengthOfReading, lengthText, longestByLoop } from "../../boards/greatest-length.ts";
import { exceeds, fallsShort } from "../../calc/compare.ts";
import { overload } from "../../calc/overload.ts";
import { amps, type Calculated, kiloamps, metres, percent, seconds, squareMillimetres } from "../../calc/result.ts";
import { ringRule } from "../../calc/ring.ts";
import { asRememberedWords, onlyAsRemembered } from "../../calc/verdict.ts";
import { dropLimit } from "../../calc/voltage-drop.ts";
import { countWords } from "../../circuit/cable.ts";
import { conductorPerMetre, whyNoCpc } from "../../circuit/cpc.ts";
import { rcdName } from "../../circuit/describe.ts";
import { loopLimits } from "../../circuit/disconnection.ts";
import { cableDrop } from "../../circuit/drop.ts";
import { greatestFault } from "../../circuit/faults.ts";
import { enclosureNeed } from "../../circuit/protective.ts";
import { methodOf } from "../../circuit/route-capacity.ts";
import { hasOwnSource } from "../../circuit/supply.ts";
import type { Cable, WayStudy } from "../../circuit/way.ts";
import { numberAt } from "../../model/fact-values.ts";
import type { Fact } from "../../model/values.ts";
import { protectiveAtFault } from "../../readings/loop.ts";
import { md } from "../../text/markdown.ts";
import { type Card, card, limitRow, type Row, row, show } from "./card.ts";
import { rcdPlanCard } from "./rcd.ts";
import { spurR1R2 } from "./tests.ts";

/** What the line of a device leads to; what it must break first where that is asked about. */
export function deviceCard(study: WayStudy, named: string | undefined): Card | undefined {
  const { device, disconnection, disconnectionTime } = study;
  if (!device) return undefined;
  const ofRcd = named === "sensitivity" || named === "type";
  const own = study.rcds.filter(({ at }) => ofRcd && at === "device");
  if (own.length > 0) return rcdPlanCard(own, study.context.edition);
  const fault = greatestFault(study.context);
  const breaks = device.breaking;
  const limit = disconnection?.limit;
  const breaking = row(
    "breaks",
    breaks === undefined || !fault
      ? undefined
      : `${kiloamps(breaks)}, where ${kiloamps(fault.value)} (${fault.name}) is to be broken`,
  );
  return card(
    [
      ...(named === "breaking" ? [breaking, currentChain(study)] : [currentChain(study), breaking]),
      row("must disconnect", disconnectionTime && `within ${seconds(disconnectionTime.value)}`),
      loopRow(study),
      row("RCD", study.rcds.length > 0 ? study.rcds.map(rcdName).join(", then ") : undefined),
    ],
    disconnectionTime,
    limit,
    ...currentSources(study),
  );
}

/** The greatest loop impedance, hot and as it may read cold. */
function loopRow({ disconnection }: WayStudy): Row | undefined {
  if (!disconnection) return undefined;
  const texts = loopLimits(disconnection).map(({ limit, which }) => `${show(limit)} ${which}`);
  return { name: "Zs at most", text: texts.join(", ") };
}

/** What the comparison of currents rests on. */
function currentSources(study: WayStudy): Pick<Calculated, "steps" | "source">[] {
  if (study.isRing) return [ringRule("capacity")];
  const In = study.device?.rating;
  const Iz = study.capacity?.value;
  if (!study.device || In === undefined || !Iz) return [];
  const Ib = study.designCurrent?.value;
  const asked = Ib === undefined ? ["In ≤ Iz"] : ["Ib ≤ In", "In ≤ Iz"];
  return overload({ standard: study.device.standard, Ib: Ib ?? 0, In, Iz })
    .filter(({ name }) => asked.includes(name))
    .map(({ margin }) => margin);
}

/** Ib ≤ In ≤ Iz with the room between them. A ring's cable shares the load between its legs and has a rule of its own. */
function currentChain(study: WayStudy): Row | undefined {
  if (study.isRing) return ringCurrents(study);
  const In = study.device?.rating;
  const Ib = study.designCurrent?.value;
  const capacity = study.capacity?.value;
  const Iz = capacity?.value;
  if (In === undefined || (Ib === undefined && Iz === undefined)) return undefined;
  const parts = [
    ...(Ib === undefined ? [] : [md`Ib ${amps(Ib, In)} ${Ib <= In ? "≤" : md`**>**`}`]),
    md`In ${amps(In)}`,
    ...(Iz === undefined ? [] : [md`${exceeds(In, Iz) ? md`**>**` : "≤"} Iz ${amps(Iz, In)}`]),
  ];
  const room = [
    ...(Ib === undefined ? [] : [roomOf(In - Ib, "the device")]),
    ...(Iz === undefined ? [] : [roomOf(Iz - In, "the cable")]),
    ...(capacity && !exceeds(In, capacity.value) && onlyAsRemembered(In, capacity.value, capacity.source)
      ? [`which ${asRememberedWords(capacity.source)}`]
      : []),
  ];
  return { name: "currents", text: md`${md.join(parts, " ")}; ${room.join(", ")}` };
}

const roomOf = (left: number, of: string): string =>
  left < -1e-9 ? `${of} is ${amps(-left)} short` : `${amps(left)} to spare in ${of}`;

/** A ring shares its load between two legs: its cable is compared with a rule of its own. */
function ringCurrents({ device, designCurrent, capacity }: WayStudy): Row | undefined {
  const needed = ringRule("capacity").value;
  const Iz = capacity?.value.value;
  const parts = [
    ...(device?.rating === undefined ? [] : [`In ${amps(device.rating)}`]),
    ...(designCurrent ? [`Ib ${amps(designCurrent.value)}`] : []),
    ...(Iz === undefined
      ? []
      : [md`Iz of the ring's cable ${amps(Iz, needed)} ${fallsShort(Iz, needed) ? md`**<**` : "≥"} ${amps(needed)}`]),
  ];
  return row("currents", parts.length === 0 ? undefined : md.join(parts, ", "));
}

export function cableCard(study: WayStudy): Card | undefined {
  const { cable } = study;
  if (!cable) return undefined;
  const perMetre = (which: "line" | "cpc"): Calculated | undefined =>
    cable.construction === "flex" ? undefined : conductorPerMetre(cable, which);
  const line = perMetre("line");
  const cpc = perMetre("cpc");
  const enclosure = enclosureNeed(study);
  const protective = protectiveAtFault(study);
  const { capacity } = study;
  return card(
    [
      row("line", line && `${countWords(cable.parallel.line)}${squareMillimetres(cable.line)}, ${show(line)} at 20 °C`),
      row("protective conductor", cpc ? `${protectiveWords(cable)}, ${show(cpc)} at 20 °C` : noCpcWords(cable)),
      ...study.capacities.map(({ fact, capacity: found }, index) =>
        row(
          `capacity${study.capacities.length > 1 ? ` of stretch ${index + 1}` : ""}`,
          "missing" in found
            ? `not known, ${found.missing}`
            : `${amps(found.value)}${methodOf(fact) === undefined ? "" : ` by method ${methodOf(fact)}`}`,
        ),
      ),
      currentChain(study),
      row(
        "protective conductor, at least",
        protective &&
          `${squareMillimetres(protective.need.value)} (${protective.method === "table" ? "by the table" : "by the adiabatic equation"})${protective.of === "armour" ? `; the armour has ${squareMillimetres(protective.has.value)}` : ""}`,
      ),
      row(`steel ${cable.cpcBy}, at least`, enclosure && `${squareMillimetres(enclosure.value)} (by the table)`),
    ],
    line,
    cpc,
    capacity?.value,
    ...currentSources(study),
    protective?.need,
    protective?.of === "armour" ? protective.has : undefined,
    enclosure,
  );
}

const noCpcWords = (cable: Cable): string | undefined =>
  cable.cpcBy === undefined || cable.cpcBy === "none" ? undefined : `not calculated, ${whyNoCpc(cable)}`;

const protectiveWords = (cable: Cable): string =>
  [
    ...(cable.cpc === undefined ? [] : [`${countWords(cable.parallel.cpc)}${squareMillimetres(cable.cpc)}`]),
    ...(cable.cpcBy === "armour" ? [`${countWords(cable.parallel.cpc)}steel wire armour`] : []),
  ].join(" beside ");

export function routeCard(study: WayStudy, fact: Fact | undefined): Card | undefined {
  const stretch = study.capacities.find((one) => one.fact.start === fact?.start);
  if (!stretch) return undefined;
  const { capacity } = stretch;
  if ("missing" in capacity) return card([row("capacity", `not known, ${capacity.missing}`)]);
  const governs = study.capacity?.fact.start === stretch.fact.start && study.capacities.length > 1;
  const text = `${amps(capacity.value)}${governs ? ", the least of the route: it governs" : ""}`;
  return card([row("capacity of this stretch", text), currentChain(study)], capacity, ...currentSources(study));
}

export function lengthCard(study: WayStudy): Card | undefined {
  const { length, expectedR1R2, isRing } = study;
  if (!length) return undefined;
  const drop = dropOf(study);
  const atSpur = isRing ? spurR1R2(study) : undefined;
  const most = longestByLoop(study);
  const read = lengthOfReading(study);
  return card(
    [
      row(isRing ? "all the way round" : "to the far point", metres(length.value)),
      limitRow(isRing ? "R1+R2 expected, (r1 + r2) / 4" : "R1+R2 expected at 20 °C", expectedR1R2),
      row("R1+R2 expected at the end of a spur", atSpur && show(atSpur)),
      row("at most, by the loop", most && lengthText(most.value)),
      row("by the R1+R2 measured", read && lengthText(read.value)),
      row(
        "voltage drop",
        drop &&
          `${percent(drop.share.value)} in this circuit, where ${percent(drop.limit.value)} is advised from the origin on`,
      ),
    ],
    expectedR1R2,
    atSpur,
    most,
    drop?.share,
    drop?.limit,
  );
}

const sourceOf = ({ context }: WayStudy): "public" | "private" => (hasOwnSource(context.supply) ? "private" : "public");

/** The drop of this circuit alone, by the design current, where cable, route and length are known. */
function dropOf(study: WayStudy): { share: Calculated; limit: Calculated } | undefined {
  const { designCurrent, isFinal } = study;
  const found = designCurrent && isFinal ? cableDrop(study, designCurrent.value) : undefined;
  if (!found || "missing" in found) return undefined;
  return { share: found.drop, limit: dropLimit(study.uses.has("lighting") ? "lighting" : "other", sourceOf(study)) };
}

export function loadCard(study: WayStudy): Card | undefined {
  const current = study.designCurrent;
  if (!current) return undefined;
  return card(
    [
      row(
        "design current Ib",
        `${amps(current.value)}${current.stated ? "" : current.diversity ? ", from the loads, with the diversity of a cooker in a home" : ", from the loads"}`,
      ),
      currentChain(study),
    ],
    ...currentSources(study),
  );
}

/** The floor a conventional ring may serve. */
export function floorCard(study: WayStudy, fact: Fact | undefined): Card | undefined {
  if (!study.isRing || !study.servesSockets) return undefined;
  const area = ringRule("area");
  return card([limitRow("a ring serves at most", area, { value: numberAt(fact, "value") })], area);
}

export function timeCard(study: WayStudy): Card | undefined {
  const { disconnectionTime, disconnection } = study;
  if (!disconnectionTime) return undefined;
  return card(
    [row("must disconnect", `within ${seconds(disconnectionTime.value)}`), loopRow(study)],
    disconnectionTime,
    disconnection?.limit,
  );
}
