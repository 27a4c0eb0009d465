import { wordAt } from "../../model/fact-values.ts";
import type { Fact } from "../../model/values.ts";
import { deadOfBoard } from "../../readings/meter-tests.ts";
import { liveOfBoard } from "../../readings/rcd-tests.ts";
import { inOrder } from "../../text/order.ts";
import { factSpot, installationRule, type Reporter } from "../frame/rule.ts";

function checkFact(fact: Fact | undefined, where: string, report: Reporter): void {
  if (!fact || wordAt(fact, "verdict") !== "wrong") return;
  report(factSpot(fact), {
    message: `Polarity is wrong at ${where}: switches downstream may be in the neutral. Isolate, have it put right, and test again.`,
  });
}

export default installationRule({
  id: "polarity/wrong-upstream",
  severity: "error",
  since: "0.1",
  title: "Polarity is wrong at the origin or at a board.",
  why: "Reversed line and neutral upstream leave every single-pole switch, fuse and breaker downstream in the neutral, and circuits stay live when switched off. At the origin, report it to the distributor at once.",
  opens: true,
  clauses: ["643.6"],
  examples: [
    {
      bad: `wayfile 1
installation "Sample" {
  supply {
    earthing     TN-S
    polarity     wrong
    ^^^^^^^^^^^^^^^^^^
  }
  board A "Board" {
    fed-from     supply
    live 2026-03-05 {
      polarity     wrong
      ^^^^^^^^^^^^^^^^^^
    }
  }
}`,
      good: `wayfile 1
installation "Sample" {
  supply {
    earthing     TN-S
    polarity     wrong
    live 2026-03-06 {
      polarity     ok
    }
  }
  board A "Board" {
    fed-from     supply
    live 2026-03-05 {
      polarity     wrong
    }
    live 2026-03-06 {
      polarity     ok
    }
  }
}`,
    },
    {
      bad: `wayfile 1
installation "Sample" {
  supply {
    earthing     TN-S
    live 2026-03-06 {
      polarity     wrong
      ^^^^^^^^^^^^^^^^^^
    }
  }
  board A "Board" {
    fed-from     supply
    dead 2026-03-05 {
      polarity     wrong
      ^^^^^^^^^^^^^^^^^^
    }
  }
}`,
      good: `wayfile 1
installation "Sample" {
  supply {
    earthing     TN-S
  }
  board A "Board" {
    fed-from     supply
    polarity     ok
  }
}`,
    },
  ],
  check({ supply }, report) {
    checkFact(supply?.one("polarity"), "the origin", report);
  },
  // The latest word counts: what was put right stays in the record.
  checkBoard({ board, context }, report) {
    const { facts } = board.head;
    const tested = [...liveOfBoard(context), ...deadOfBoard(context)]
      .map((test) => ({ on: test.on, fact: test.facts.list.findLast(({ word }) => word === "polarity") }))
      .sort((a, b) => inOrder(b.on, a.on))
      .find(({ fact }) => fact);
    checkFact(tested?.fact ?? facts.one("polarity"), `board ${board.head.name}`, report);
  },
});
