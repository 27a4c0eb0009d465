/** Voltage drop from the origin to the far point: of this circuit, and of every feeder above it. */
import { methodOf, WayStudy } from "../analysis/way.ts";
import { type Calculated, dropLimit, dropPerAmpereMetre, dropPercent, voltageDrop } from "../calc/index.ts";
import { amps, percent, plain, step } from "../calc/result.ts";
import type { Context } from "../model/installation.ts";
import { combine, fromFormula } from "../tables/source.ts";
import { type Block, gap, judge, paragraph, part, reckon, type Section } from "./document.ts";

export const dropPart = (study: WayStudy): Section[] => part("Voltage drop from the origin", dropBlocks(study));

interface Stretch {
  readonly name: string;
  readonly drop: Calculated | { readonly missing: string };
}

function dropBlocks(study: WayStudy): Block[] {
  const stretches: Stretch[] = [
    ...[...feeders(study.context)].reverse(),
    { name: "Drop in this circuit", drop: dropOf(study) },
  ];
  const blocks: Block[] = stretches.map(({ name, drop }) =>
    "missing" in drop ? gap(name, drop.missing) : reckon(name, drop, percent(drop.value), ""),
  );
  const known = stretches.flatMap(({ drop }) => ("missing" in drop ? [] : [drop]));
  const lighting = study.uses.has("lighting");
  const source = study.context.supply?.one("source")?.args.of.value ?? "public";
  const limit = dropLimit(lighting ? "lighting" : "other", source);
  const value = known.reduce((total, drop) => total + drop.value, 0);
  const from = fromFormula(combine(limit.source, ...known.map((drop) => drop.source)));
  const whole = known.length === stretches.length;
  if (known.length === 0) return blocks;
  if (stretches.length > 1 && whole) {
    const sum = step("drop from the origin", known.map((drop) => percent(drop.value)).join(" + "), percent(value));
    blocks.push(
      reckon("From the origin", { steps: [sum], source: { ref: "", standing: "published" } }, percent(value), ""),
    );
  }
  const holds = value <= limit.value * (1 + 1e-9);
  if (holds && !whole)
    blocks.push(gap("The drop from the origin", "a part of the way to the origin could not be reckoned"));
  else if (study.isFeeder) {
    blocks.push(
      paragraph(
        `The circuits it feeds share what is left of ${percent(dropLimit("lighting", source).value)} for lighting and ${percent(dropLimit("other", source).value)} for other uses.`,
      ),
    );
  } else {
    const text = `Drop ${plain(value)} % ${holds ? "≤" : ">"} ${percent(limit.value)} advised${lighting ? " for lighting" : ""}`;
    const judged = judge(holds, text, from, `${percent(limit.value - value)} left`);
    // The figures of the appendix are guidance: what counts is that the equipment works.
    blocks.push(holds ? judged : { ...judged, verdict: "advises", remark: "guidance of Appendix 4" });
  }
  return blocks;
}

/** From the nearest feeder to the origin. */
function feeders(context: Context): Stretch[] {
  const found: Stretch[] = [];
  let { upstream } = context;
  for (let [above, ...further] = upstream; above; [above, ...further] = upstream) {
    const place: Context = { ...context, board: above.board, upstream: further };
    const name = `Drop in the feeder from board ${above.board.name}`;
    if (above.feeder)
      found.push({
        name: `Drop in feeder ${above.board.name}/${above.feeder.id}`,
        drop: dropOf(new WayStudy(above.feeder, place)),
      });
    else found.push({ name, drop: { missing: "no way of that board says that it feeds this one" } });
    upstream = further;
  }
  return found;
}

function dropOf(study: WayStudy): Stretch["drop"] {
  const { cable, length, designCurrent, threePhase, supply, isRing } = study;
  if (!cable) return { missing: "the cable is not described" };
  if (!length) return { missing: "its length is not stated" };
  if (!designCurrent) return { missing: "neither its design current nor a load is stated" };
  const { construction, insulation, line: csa, material } = cable;
  if (construction === "flex" || construction === "mineral" || material !== "copper")
    return { missing: `no table here gives the drop of ${material} ${construction} cable` };
  const [route] = study.facts.all("route");
  const method = route && methodOf(route);
  // Only singles drop otherwise in conduit than in the open.
  if (!method && construction === "singles") return { missing: "how the cable runs is not stated" };
  const question = { construction, insulation, method: method ?? "C", loaded: threePhase ? 3 : 2, csa } as const;
  const perAmpereMetre = dropPerAmpereMetre(question);
  if (!perAmpereMetre)
    return {
      missing: `no table here gives the drop of ${construction} ${plain(csa)} mm² with ${question.loaded} loaded conductors`,
    };
  const drop = voltageDrop({ perAmpereMetre, current: designCurrent.value, length: length.value, ring: isRing });
  const share = dropPercent(drop, threePhase ? supply.U0 * Math.sqrt(3) : supply.U0);
  const Ib = step(designCurrent.stated ? "Ib as stated" : "Ib from the loads", "", amps(designCurrent.value));
  return { ...share, steps: [Ib, ...share.steps] };
}
