/** Voltage drop of a cable by itself: a circuit, or a feeder with the current of the board behind it. */

import { flexibleDrop } from "../calc/capacity-other.ts";
import { calculatedDrop } from "../calc/drop-figures.ts";
import { type DropRun, dropPaths, worstPlace } from "../calc/drop-network.ts";
import { amps, type Calculated, metres, milliohms, plain, type Step, step, worked } from "../calc/result.ts";
import { unequalDrop } from "../calc/unequal-drop.ts";
import { dropPerAmpereMetre, dropPercent, voltageDrop } from "../calc/voltage-drop.ts";
import { combine, fromFormula, type Sourced } from "../tables/source.ts";
import type { Cable } from "./cable.ts";
import { corrected } from "./drop-corrected.ts";
import { currentOf } from "./loads.ts";
import { methodOf } from "./route-capacity.ts";
import type { WayStudy } from "./way.ts";

/** The drop of one cable, % of the nominal voltage, and what it is when its real conditions are taken. */
export interface CableDrop {
  readonly drop: Calculated;
  /** With conductors at their real temperature, the power factor, or a ring's load shared among its points. Never more. */
  readonly corrected: Calculated;
}

type DropFound = CableDrop | { readonly missing: string };

/** What the load is spread over, as metres that carry all of it. */
interface Distance {
  readonly metres: number;
  readonly steps: readonly Step[];
  /** The same with the load shared among all points of a ring. */
  readonly shared?: { readonly metres: number; readonly steps: readonly Step[] };
}

/** The drop of a way's own cable for a current, A; with its own size of cable or another. */
export function cableDrop(study: WayStudy, current: number, size?: number): DropFound {
  const { cable, supply } = study;
  if (!cable) return { missing: "the cable is not described" };
  if (supply.kind === "other") return { missing: "a supply of this voltage is not judged here" };
  const distance = distanceOf(study, current);
  if (!distance) return { missing: "its length is not stated" };
  const csa = size ?? cable.line;
  const perAmpereMetre = perMetreOf(study, csa);
  if (!perAmpereMetre) return { missing: `no table here gives the drop of ${plain(csa)} mm² ${cable.construction}` };
  const together = perAmpereMetre.steps;
  const nominal = study.threePhase ? Math.sqrt(3) * supply.U0 : supply.voltage;
  const over = (length: number, steps: readonly Step[]): Calculated => {
    const drop = voltageDrop({ perAmpereMetre, current, length });
    return dropPercent(
      worked(drop.value, drop.unit, drop.source, () => [...steps, ...together, ...drop.steps]),
      nominal,
    );
  };
  const drop = over(distance.metres, distance.steps);
  const shared = distance.shared && over(distance.shared.metres, distance.shared.steps);
  return { drop, corrected: corrected(study, shared ?? drop, current, csa) };
}

/** The currents of three lines, A. */
export type LineCurrents = Readonly<Record<"L1" | "L2" | "L3", number>>;

const three = ["L1", "L2", "L3"] as const;

/** The drop of a three-phase cable line by line, its currents being what they are; % of the voltage to neutral. */
export function unequalDrops(
  study: WayStudy,
  currents: LineCurrents,
  size?: number,
): ReadonlyMap<keyof LineCurrents, CableDrop> | { readonly missing: string } {
  const { cable, supply } = study;
  const greatest = Math.max(...three.map((line) => currents[line]));
  // What can be calculated of the cable at all is asked once, with equal currents.
  const equal = cableDrop(study, greatest, size);
  const distance = distanceOf(study, greatest);
  if ("missing" in equal || !cable || !distance)
    return "missing" in equal ? equal : { missing: "its length is not stated" };
  // Without a neutral unequal loads lie between lines: all are taken to be as great as the greatest.
  if (supply.kind === "reduced") return new Map(three.map((line) => [line, equal]));
  const csa = size ?? cable.line;
  const perAmpereMetre = perMetreOf(study, csa);
  if (!perAmpereMetre) return { missing: "no table here gives its drop" };
  // A larger line takes its neutral along, unless that was chosen smaller.
  const neutral = size !== undefined && cable.neutral === cable.line ? size : cable.neutral;
  const neutralPerAmpereMetre = perMetreOf(study, neutral) ?? perAmpereMetre;
  const carried = three.map((line) => `${line} ${amps(currents[line])}`).join(", ");
  return new Map(
    three.map((line) => {
      const [one = 0, other = 0] = three.filter((name) => name !== line).map((name) => currents[name]);
      const question = { perAmpereMetre, neutralPerAmpereMetre, own: currents[line], others: [one, other] as const };
      const found = unequalDrop({ ...question, length: distance.metres });
      const heads = [...distance.steps, ...perAmpereMetre.steps, step(`line ${line}, of`, carried, "")];
      const drop = dropPercent({ ...found, steps: [...heads, ...found.steps] }, supply.U0);
      return [line, { drop, corrected: corrected(study, drop, greatest, csa) }] as const;
    }),
  );
}

/** V per ampere and metre: of all conductors that lie in parallel. */
function perMetreOf(study: WayStudy, csa: number): Calculated | undefined {
  const one = onePerMetre(study, csa);
  const count = study.cable?.parallel.line ?? 1;
  if (!one) return undefined;
  const value = one.value / count;
  const shown = (figure: number) => `${plain(figure * 1000, 3)} mV/A/m`;
  return worked(value, "V/A/m", one.source, () => [
    ...(one.steps ?? []),
    ...(count === 1 ? [] : [step(`drop of ${count} in parallel`, `${shown(one.value)} / ${count}`, shown(value))]),
  ]);
}

/** Of busbar trunking by what its maker states, hot: z = √(r² + x²), twice over or √3 times. */
function busbarDrop({ own }: Cable, loaded: 2 | 3): Calculated | undefined {
  const [r, x] = [own?.lineHot, own?.reactance];
  if (!r || !x) return undefined;
  const value = (loaded === 2 ? 2 : Math.sqrt(3)) * Math.hypot(r.value, x.value);
  const numbers = `${loaded === 2 ? "2" : "√3"} × √(${milliohms(r.value)}² + ${milliohms(x.value)}²)`;
  return worked(value, "V/A/m", fromFormula(combine(r.source, x.source)), () => [
    step("drop by r and x at rated current", numbers, `${plain(value * 1000, 3)} mV/A/m`),
  ]);
}

/** With the way to it, where it is calculated. */
type PerMetre = Sourced<number> & { readonly steps?: readonly Step[] };

function onePerMetre(study: WayStudy, csa: number): PerMetre | undefined {
  const { cable } = study;
  if (cable?.own?.drop && csa === cable.line) return cable.own.drop;
  if (!cable) return undefined;
  if (cable.construction === "busbar-trunking")
    return csa === cable.line ? busbarDrop(cable, study.threePhase ? 3 : 2) : undefined;
  const { construction, insulation, material } = cable;
  const loaded = study.threePhase ? 3 : 2;
  if (construction === "flex") return material === "copper" ? flexibleDrop(csa, insulation, loaded) : undefined;
  // Its own table of drops is not kept: conductors of the same metal and size, at the temperature of its sheath.
  if (construction === "mineral") return calculatedDrop({ csa, material, insulation, loaded });
  const route = study.facts.one("route");
  // Without a route singles are taken as enclosed, where they drop a little more.
  const method = (route && methodOf(route)) ?? "B";
  const tabulated =
    material === "copper" ? dropPerAmpereMetre({ construction, insulation, method, loaded, csa }) : undefined;
  // Flat cable is made in the sizes of its table and in no others.
  if (construction === "flat-twin") return tabulated;
  return tabulated ?? calculatedDrop({ csa, material, insulation, loaded });
}

function distanceOf(study: WayStudy, current: number): Distance | undefined {
  const { length, runs, isRing } = study;
  if (!length) return undefined;
  const whole = runs && runs.detached.length === 0 && !study.facts.isUnread("run") ? runs : undefined;
  if (!whole || current <= 0) return lumped(length.value, isRing);
  const paths = dropPaths(whole.paths.map(runOf));
  const loads = placedLoads(study);
  const placed = loads.reduce((sum, load) => sum + load.current, 0);
  // Loads that come to more than the design current are not all on at once: each counts for less.
  const share = placed > current ? current / placed : 1;
  const at = loads.map((load) => ({ ...load, current: load.current * share }));
  const worst = worstPlace(paths, at, Math.max(0, current - placed));
  if (!worst) return lumped(length.value, isRing);
  const distance = worst.ampereMetres / current;
  const how = loads.length > 0 ? "loads where they are" : "all load where it drops most";
  const steps = [step(`metres to ${worst.place}, ${how}`, "", metres(distance))];
  if (!isRing || paths.places.length < 2 || loads.length > 0) return { metres: distance, steps };
  const even = paths.places.map((place) => ({ place, current: current / paths.places.length }));
  const spread = worstPlace(paths, even, 0);
  if (!spread) return { metres: distance, steps };
  const spreadOver = spread.ampereMetres / current;
  const spreadSteps = [step(`metres to ${spread.place}, load shared among the points`, "", metres(spreadOver))];
  return { metres: distance, steps, shared: { metres: spreadOver, steps: spreadSteps } };
}

function lumped(length: number, ring: boolean): Distance {
  if (!ring) return { metres: length, steps: [] };
  const steps = [step("a quarter of the ring", `${metres(length)} / 4`, metres(length / 4))];
  return { metres: length / 4, steps };
}

const runOf = (path: NonNullable<WayStudy["runs"]>["paths"][number]): DropRun => ({
  from: path.from.value,
  legs: path.legs.map(({ to, length }) => ({ to: to.value, length: length.value })),
});

/** Loads that say at which point they are, A each. */
function placedLoads(study: WayStudy): { place: string; current: number }[] {
  const { runs } = study;
  return study.facts.all("load").flatMap((load) => {
    const place = load.args.point?.value;
    if (place === undefined || !runs?.places.has(place)) return [];
    return [{ place, current: currentOf(load, study) }];
  });
}
