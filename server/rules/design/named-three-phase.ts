import { lineInBlock } from "../common/writing.ts";
import { factSpot, valueSpot, wayRule } from "../frame/rule.ts";

/** “3-phase saw”, “Three phase isolator”, “Compressor 3ph”. */
const saysThree = /(?<![\p{L}\d])(?:3|three)[- ]?ph(?:ase)?(?![\p{L}\d])/iu;

/** What makes three lines of one is fed by one, and what it feeds is named after it. */
const makesThree = /convert[eo]r|inverter|(?:1|one|single)[- ]?(?:ph(?:ase)?)?[- ](?:to|>|→)[- ]?(?:3|three)/iu;

const opensThree: ReadonlySet<string> = new Set(["three-pole", "four-pole"]);

export default wayRule({
  id: "design/named-three-phase",
  severity: "warning",
  since: "0.1",
  title: "A circuit with one line is named as three-phase, or its device opens three.",
  why: "Its load is calculated at 230 V on one line, which is more than half as much again as on three; its drop, its demand and the lines that were tested are those of another circuit.",
  clauses: ["314.1", "311.1"],
  examples: [
    {
      bad: `way 1 radial "Three-phase saw" {
^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
  device       BS EN 60898 C16 6 kA
  load         4 kW  efficiency 85 %
}`,
      good: `way 1 radial "Saw" {
  device       BS EN 60898 C16 6 kA
  load         4 kW  efficiency 85 %
}`,
    },
    {
      bad: `way 1 radial "Saw" {
  device       BS EN 60898 C16 6 kA
  load         4 kW  efficiency 85 % "3-phase motor"
  ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
}`,
      good: `way 1 radial "Saw" {
  device       BS EN 60898 C16 6 kA
  load         4 kW  efficiency 85 % "Motor"
}`,
    },
    {
      bad: `way 1 radial "Saw" {
  device       BS EN 60898 C16 three-pole 6 kA
                               ^^^^^^^^^^
  load         4 kW  efficiency 85 %
}`,
      good: `way 1 radial "Saw" {
  device       BS EN 60898 C16 double-pole 6 kA
  load         4 kW  efficiency 85 %
}`,
    },
  ],
  check({ facts, way, isSpare, threePhase, boardIsThreePhase, context, device }, report) {
    if (isSpare || threePhase || facts.isUnread("phase")) return;
    const fixes = boardIsThreePhase && !facts.has("phase") ? lineInBlock(way.header, "phase three") : [];
    const poles = device?.fact.args.poles;
    if (device && poles && opensThree.has(poles.value)) {
      const cure = boardIsThreePhase ? "phase three" : "phases three for supply and board and phase three here";
      report(valueSpot(device.fact, poles), {
        message: `A ${poles.value} device opens three lines, but way ${way.id} is judged as having one: write ${cure}, or the poles on the device.`,
        fixes,
      });
      return;
    }
    const load = facts.all("load").find(({ args }) => saysThree.test(args.title?.value ?? ""));
    const isTitle = saysThree.test(way.title);
    const name = isTitle ? way.title : load?.args.title?.value;
    if (name === undefined || makesThree.test(name)) return;
    report(factSpot(isTitle || !load ? way.header : load), {
      message: boardIsThreePhase
        ? `“${name}” is three-phase by its name, but way ${way.id} has one line: write phase three, or name it otherwise.`
        : `“${name}” is three-phase by its name, but board ${context.board.name} is single-phase: write phases three for supply and board and phase three here, or name it otherwise.`,
      fixes,
    });
  },
});
