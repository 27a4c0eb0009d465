import { boardTestDays, ownTestDays, type TestDay, usesOn } from "../../analysis/instruments.ts";
import type { Names } from "../../model/installation.ts";
import { factSpot, installationRule, type Reporter, valueSpot } from "../rule.ts";

function lapsed(days: readonly TestDay[], names: Names, report: Reporter): void {
  for (const { day, name, facts } of usesOn(days, names)) {
    const due = facts.one("due");
    if (!due || day.on.value <= due.args.on.value) continue;
    report(valueSpot(day.header, name), {
      message: `The calibration of ${name.value} ran out on ${due.args.on.value}, before this test on ${day.on.value}.`,
      related: [{ spot: factSpot(due), message: `${name.value} was due on ${due.args.on.value}.` }],
    });
  }
}

export default installationRule({
  id: "instrument/calibration-lapsed",
  severity: "warning",
  since: "0.1",
  title: "A test made after the instrument's calibration had run out.",
  why: "The reading may be right, but nothing shows it. Have the instrument calibrated: if it is found accurate, say so beside the tests; if not, make them again.",
  clauses: ["643.1"],
  examples: [
    {
      bad: `wayfile 1
instrument M1 "Multifunction tester" {
  due  2026-02-01
}
installation "Kiln house" {
  standard  BS 7671:2018+A2:2022
  stage     tested
  board A "Front board" {
    fed-from  supply
    way 1 radial "Oven" {
      live 2026-03-05 with M1 {
                           ^^
        Zs  0.62 Ω
      }
    }
  }
}`,
      good: `wayfile 1
instrument M1 "Multifunction tester" {
  due  2026-11-03
}
installation "Kiln house" {
  standard  BS 7671:2018+A2:2022
  stage     tested
  board A "Front board" {
    fed-from  supply
    way 1 radial "Oven" {
      live 2026-03-05 with M1 {
        Zs  0.62 Ω
      }
    }
  }
}`,
    },
  ],
  check(installation, report) {
    lapsed(ownTestDays(installation), installation.names, report);
  },
  checkBoard({ board, context }, report) {
    lapsed(boardTestDays(board), context.names, report);
  },
});
