import { practiceOf } from "../../calc/practice.ts";
import { ohms } from "../../calc/result.ts";
import { declaredImpedance } from "../../calc/supply-declared.ts";
import { wordAt } from "../../model/fact-values.ts";
import { type Fact, type FactOf, type Facts, quantityOf, type Reading } from "../../model/values.ts";
import { ownElectrodes } from "../../readings/electrode.ts";
import { withSign } from "../common/dead-words.ts";
import { amount, amountOf, factSpot, installationRule, type Report, type Reporter } from "../frame/rule.ts";

export default installationRule({
  id: "loop/ze-too-low",
  severity: "warning",
  since: "0.1",
  title: "Ze, or the resistance of an electrode, is lower than such a supply gives.",
  why: "With the bonding left connected the meter reads all the pipes in the street in parallel. Read Ze with the earthing conductor disconnected from them, and the installation isolated.",
  clauses: ["313.1", "643.7.3"],
  examples: [
    {
      bad: `wayfile 1
installation "Sample" {
  supply {
    earthing     TN-C-S
    Ze           <0.01 Ω
    ^^^^^^^^^^^^^^^^^^^^
  }
}`,
      good: `wayfile 1
installation "Sample" {
  supply {
    earthing     TN-C-S
    Ze           0.21 Ω
  }
}`,
    },
    {
      bad: `wayfile 1
installation "Sample" {
  supply {
    earthing     TN-C-S
    Ze           0.02 Ω
    ^^^^^^^^^^^^^^^^^^^
  }
}`,
      good: `wayfile 1
installation "Sample" {
  supply {
    earthing     TN-C-S
    phases       three
    Ze           0.02 Ω
  }
}`,
    },
    {
      bad: `wayfile 1
installation "Sample" {
  supply {
    earthing     TT
    Ze           0.24 Ω
    ^^^^^^^^^^^^^^^^^^^
  }
}`,
      good: `wayfile 1
installation "Sample" {
  supply {
    earthing     TT
    Ze           31 Ω
  }
}`,
    },
    {
      bad: `wayfile 1
installation "Sample" {
  supply {
    earthing     TT
    electrode    rod 0.24 Ω
    ^^^^^^^^^^^^^^^^^^^^^^^
  }
}`,
      good: `wayfile 1
installation "Sample" {
  supply {
    earthing     TT
    electrode    rod 24 Ω
  }
}`,
    },
    {
      bad: `wayfile 1
installation "Sample" {
  supply {
    earthing     TN-C-S
  }
  board S "Summer house" {
    fed-from     supply
    earthing     TT
    electrode    rod 0.24 Ω
    ^^^^^^^^^^^^^^^^^^^^^^^
    way 1 radial "Sockets" {
      device       BS EN 61009 B16 6 kA 30 mA type A
    }
  }
}`,
      good: `wayfile 1
installation "Sample" {
  supply {
    earthing     TN-C-S
  }
  board S "Summer house" {
    fed-from     supply
    earthing     TT
    electrode    rod 24 Ω
    way 1 radial "Sockets" {
      device       BS EN 61009 B16 6 kA 30 mA type A
    }
  }
}`,
    },
  ],
  check({ supply }, report) {
    const earthing = supply?.one("earthing");
    const system = earthing?.args.system.value;
    const read = atMost(supply?.one("Ze")) ?? (system === "TT" ? atMost(rodOf(supply)) : undefined);
    if (!supply || !earthing || !read) return;
    const related = [{ spot: factSpot(earthing), message: `Earthing recorded as ${system}.` }];
    if (system === "TT") {
      const cause = "was the bonding left connected, or is the earthing TN-S or TN-C-S?";
      reportElectrode(read, cause, report, related);
      return;
    }
    const least = practiceOf("ze-least");
    // A large three-phase supply, close to its transformer, may well be this stiff.
    if (supply.one("phases")?.args.count.value === "three" || read.value >= least.value) return;
    report(factSpot(read.fact), {
      message: `${read.name} ${read.text} is lower than a single-phase supply gives: was the earthing conductor disconnected, and were the leads nulled?`,
      value: amount(read.value, "Ω"),
      limit: amountOf(least),
      least: true,
      steps: least.steps,
      source: least.source,
      related,
    });
  },
  checkBoard(subject, report) {
    for (const { fact } of ownElectrodes(subject)) {
      const read = isFoundation(fact) ? undefined : atMost(fact);
      const cause = "does it still meet the earth of the supply, or was it read with bonding connected?";
      if (read) reportElectrode(read, cause, report);
    }
  },
});

type Read = NonNullable<ReturnType<typeof atMost>>;

/** An electrode in soil that reads what only a metallic return gives. */
function reportElectrode(read: Read, cause: string, report: Reporter, related: Report["related"] = []): void {
  const metallic = declaredImpedance("TN-S");
  if (read.value > metallic.value) return;
  report(factSpot(read.fact), {
    message: `${read.name} ${read.text} is too low for an earth electrode: ${cause}`,
    value: amount(read.value, "Ω"),
    limit: amountOf(metallic),
    least: true,
    source: metallic.source,
    related,
  });
}

/** Metal in a large foundation may well read less than an ohm. */
const isFoundation = (electrode: Fact): boolean => wordAt(electrode, "type") === "foundation";

function rodOf(supply: Facts<"supply"> | undefined): FactOf<"supply", "electrode"> | undefined {
  const electrode = supply?.one("electrode");
  return electrode && isFoundation(electrode) ? undefined : electrode;
}

/** A meter at the foot of its scale shows that there is no more than that. */
function atMost(fact: (Fact & { readonly args: { readonly value: Reading } }) | undefined) {
  const quantity = fact && quantityOf(fact.args.value);
  if (!fact || !quantity || quantity.sign === ">") return undefined;
  return { fact, name: fact.word === "Ze" ? "Ze" : "RA", value: quantity.value, text: withSign(quantity, ohms) };
}
