import { touchVoltage } from "../../calc/rcd-loop-limit.ts";
import { milliamps, ohms } from "../../calc/result.ts";
import { rcdName } from "../../circuit/describe.ts";
import type { ElectrodeStudy } from "../../readings/electrode.ts";
import type { Uncertainty } from "../../readings/uncertainty.ts";
import { combine } from "../../tables/source.ts";
import { shown } from "../common/dead-words.ts";
import { ofElectrodes } from "../common/electrodes.ts";
import { uncertaintySteps, withinUncertainty } from "../common/uncertainty-words.ts";
import { unproven } from "../common/unproven.ts";
import { amount, amountOf, factSpot, installationRule, type Reporter, valueSpot } from "../frame/rule.ts";

export default installationRule({
  id: "loop/electrode-over-limit",
  severity: "error",
  since: "0.1",
  title: "The earth electrode resistance is too high for its RCD.",
  why: "RA × IΔn is the voltage that can remain on exposed metal without the RCD tripping; above 50 V it is dangerous. Improve the electrode, or fit an RCD of lower IΔn.",
  clauses: ["411.5.3"],
  examples: [
    {
      setting: { supply: "earthing TT\nIpf 1.2 kA\nelectrode rod 173 Ω" },
      bad: `wayfile 1
installation "Sample" {
  standard     BS 7671:2018+A2:2022
  supply {
    earthing     TT
    electrode    rod 173 Ω
                     ^^^^^
  }
  board A "Board" {
    fed-from     supply
    way 1 radial "Pump" {
      device       BS EN 61009 B16 6 kA 300 mA type A
    }
  }
}`,
      good: `wayfile 1
installation "Sample" {
  standard     BS 7671:2018+A2:2022
  supply {
    earthing     TT
    electrode    rod 173 Ω
  }
  board A "Board" {
    fed-from     supply
    way 1 radial "Pump" {
      device       BS EN 61009 B16 6 kA 100 mA type A
    }
  }
}`,
    },
    {
      bad: `wayfile 1
installation "Sample" {
  supply {
    earthing     TT
    electrode    rod >199 Ω
                     ^^^^^^
  }
  board A "Board" {
    fed-from     supply
    way 1 radial "Pump" {
      device       BS EN 61009 B16 6 kA 30 mA type A
    }
  }
}`,
      good: `wayfile 1
installation "Sample" {
  supply {
    earthing     TT
    electrode    rod 199 Ω
  }
  board A "Board" {
    fed-from     supply
    way 1 radial "Pump" {
      device       BS EN 61009 B16 6 kA 30 mA type A
    }
  }
}`,
    },
    {
      bad: `wayfile 1
installation "Sample" {
  supply {
    earthing     TT
    electrode    rod <2000 Ω
                     ^^^^^^^
  }
  board A "Board" {
    fed-from     supply
    way 1 radial "Pump" {
      device       BS EN 61009 B16 6 kA 30 mA type A
    }
  }
}`,
      good: `wayfile 1
installation "Sample" {
  supply {
    earthing     TT
    electrode    rod 199 Ω
  }
  board A "Board" {
    fed-from     supply
    way 1 radial "Pump" {
      device       BS EN 61009 B16 6 kA 30 mA type A
    }
  }
}`,
    },
  ],
  ...ofElectrodes(checkElectrode),
});

function checkElectrode({ fact, reading, weakest }: ElectrodeStudy, report: Reporter, meter?: Uncertainty): void {
  if (!weakest) return;
  const { rcd, limit } = weakest;
  const related = [{ spot: factSpot(rcd.fact), message: `RCD that relies on the electrode: ${rcdName(rcd)}.` }];
  const within = reading.value <= limit.value;
  if (within || reading.sign === "<") {
    const read = `RA ${shown(reading)}`;
    if (reading.sign !== "=" && within === (reading.sign === ">"))
      report(valueSpot(fact, reading), {
        ...unproven(read, `the electrode is within the ${ohms(limit.value)} of this RCD`, limit, {
          sign: reading.sign,
        }),
        related,
      });
    return;
  }
  const voltage = touchVoltage(reading.value, rcd.sensitivity);
  report(valueSpot(fact, reading), {
    message: `RA ${shown(reading)} with ${milliamps(rcd.sensitivity)} allows ${reading.sign === ">" ? "more than " : ""}${Math.round(voltage.value * 10) / 10} V on exposed metal, above 50 V: the limit for this RCD is ${ohms(limit.value)}.${withinUncertainty(meter, reading.value - limit.value)}`,
    value: amount(reading.value, "Ω"),
    limit: amountOf(limit),
    steps: [...voltage.steps, ...limit.steps, ...uncertaintySteps(meter)],
    source: combine(limit.source, voltage.source),
    related,
  });
}
