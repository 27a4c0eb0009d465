import { deadTestsDue } from "../../circuit/supply.ts";
import { bondingWithTests } from "../common/bonding.ts";
import { lineInBlock } from "../common/writing.ts";
import { factSpot, installationRule, wordSpot } from "../frame/rule.ts";

export default installationRule({
  id: "protective/bonding-not-stated",
  severity: "warning",
  since: "0.1",
  title: "Main bonding is not recorded.",
  why: "Pipes and structural metal that enter from outside can bring in a voltage, or be at one while a fault lasts. Either they are connected to the main earthing terminal, or somebody has looked and there are none: record which.",
  clauses: ["411.3.1.2", "544.1", "544.1.1"],
  examples: [
    {
      bad: `wayfile 1
installation "Sample" {
  standard     BS 7671:2018+A2:2022
  stage        tested
  supply {
  ^^^^^^
    earthing     TN-S
  }
  board A "Board" {
    fed-from     supply
  }
}`,
      good: `wayfile 1
installation "Sample" {
  standard     BS 7671:2018+A2:2022
  stage        tested
  supply {
    earthing     TN-S
    bonding      none "Plastic water pipe, no gas, timber frame"
  }
  board A "Board" {
    fed-from     supply
  }
}`,
    },
    {
      bad: `wayfile 1
installation "Sample" {
  standard     BS 7671:2018+A2:2022
  stage        dead-tested
  supply {
    earthing     TT
    bonding      none
    ^^^^^^^^^^^^^^^^^
  }
  board A "Board" {
    fed-from     supply
  }
}`,
      good: `wayfile 1
installation "Sample" {
  standard     BS 7671:2018+A2:2022
  stage        dead-tested
  supply {
    earthing     TT
  }
  board A "Board" {
    fed-from     supply
    dead 2026-03-04 {
      bonding      water  continuity 0.03 Ω
    }
  }
}`,
    },
  ],
  check(installation, report) {
    const { head, supply, boards } = installation;
    const fact = head.facts.one("supply");
    const [first] = boards;
    if (!fact || !supply || !first || !deadTestsDue({ installation: first.context.installation })) return;
    // How it is earthed is required first.
    if (!supply.has("earthing") || supply.isUnread("bonding")) return;
    const unexplained = supply.all("bonding").find(({ args }) => args.service.value === "none" && !args.reason);
    if (unexplained) {
      report(factSpot(unexplained), {
        message: "No main bonding, and no reason: record why none is needed, such as plastic services.",
      });
      return;
    }
    if (supply.has("bonding") || bondingWithTests(installation)) return;
    report(wordSpot(fact), {
      message:
        "Main bonding is not recorded: write bonding for each service with its size, or bonding none with the reason.",
      fixes: ["bonding water", 'bonding none "…"'].flatMap((line) => lineInBlock(fact, line)),
    });
  },
});
