import { deadTestsDue, workOf } from "../../circuit/supply.ts";
import { isCalledNotApplicable } from "../../model/values.ts";
import { allBonding } from "../../readings/earthing.ts";
import { factSpot, installationRule } from "../frame/rule.ts";

export default installationRule({
  id: "protective/bonding-not-tested",
  severity: "warning",
  since: "0.1",
  title: "Continuity of main bonding is not recorded.",
  why: "A conductor that is there does not prove that its clamp makes contact: paint, a length of plastic pipe or the wrong pipe are found by measurement only.",
  opens: true,
  clauses: ["643.2.1"],
  examples: [
    {
      bad: `wayfile 1
installation "Sample" {
  stage        tested
  work         new
  supply {
    earthing     TN-S
    bonding      water 10 mm²  continuity 0.03 Ω
    bonding      gas 10 mm²
    ^^^^^^^^^^^^^^^^^^^^^^^
    bonding      oil 10 mm²
    bonding      structure 10 mm²  continuity LIM "Behind the cladding"
  }
  board A "Board" {
    fed-from     supply
    dead 2026-03-04 {
      bonding      oil  continuity 0.02 Ω
    }
  }
}`,
      good: `wayfile 1
installation "Sample" {
  stage        tested
  work         new
  supply {
    earthing     TN-S
    bonding      water 10 mm²  continuity 0.03 Ω
    bonding      gas 10 mm²  continuity 0.02 Ω
  }
  board A "Board" {
    fed-from     supply
  }
}`,
    },
  ],
  check(installation, report) {
    const [first] = installation.boards;
    // Of what was there already it may be enough to see it.
    if (
      !first ||
      !deadTestsDue({ installation: first.context.installation }) ||
      workOf({ installation: first.context.installation }) === "existing"
    )
      return;
    const all = allBonding(installation);
    // What is called not applicable was not tested, and nothing says why it could not be.
    const tested = new Set(
      all.flatMap(({ args }) =>
        args.continuity && !isCalledNotApplicable(args.continuity) ? [args.service.value] : [],
      ),
    );
    for (const bonding of installation.supply?.all("bonding") ?? []) {
      const service = bonding.args.service.value;
      if (!all.includes(bonding) || tested.has(service)) continue;
      report(factSpot(bonding), {
        message: `The continuity of the ${service} bonding is not recorded: isolate, and measure it with one end disconnected.`,
      });
    }
  },
});
