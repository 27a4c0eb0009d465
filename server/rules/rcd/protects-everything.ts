import type { Use } from "../../../grammar/choices.ts";
import { rcdsAt } from "../../boards/board-rcds.ts";
import { rcdLimit } from "../../calc/practice.ts";
import { meets } from "../../circuit/additional-protection.ts";
import { homes } from "../../circuit/circuit-kind.ts";
import { laterRule, rcdName } from "../../circuit/describe.ts";
import { isOwnRcd } from "../../circuit/rcds.ts";
import { premisesOf } from "../../circuit/supply.ts";
import { quotedIn } from "../../tables/source.ts";
import { boardRule, factSpot } from "../frame/rule.ts";

export default boardRule({
  id: "rcd/protects-everything",
  severity: "warning",
  since: "0.1",
  title: "One 30 mA RCD protects the circuits of a whole home.",
  why: "A single fault puts out lights, sockets and alarms together, at night and on the stairs, and what leaks in normal service adds up until it trips without a fault. Divide the circuits over several RCDs, or give each an RCBO.",

  clauses: ["314.1", "531.3.2"],
  examples: [
    {
      bad: `wayfile 1
installation "House" {
  standard     BS 7671:2018+A2:2022
  stage        design
  premises     dwelling
  supply {
    earthing     TN-S
    Ze           0.30 Ω
  }
  board A "Board" {
    fed-from     supply
    main-switch  BS EN 61008 100 A 30 mA type A
    ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
    way 1 ring "Sockets" {
      device       BS EN 60898 B32 6 kA
      serves       sockets
    }
    way 2 radial "Lights" {
      device       BS EN 60898 B6 6 kA
      serves       lighting
    }
    way 3 radial "Alarms" {
      device       BS EN 60898 B6 6 kA
      serves       alarms
    }
  }
}`,
      good: `wayfile 1
installation "House" {
  standard     BS 7671:2018+A2:2022
  stage        design
  premises     dwelling
  supply {
    earthing     TN-S
    Ze           0.30 Ω
  }
  board A "Board" {
    fed-from     supply
    rcd left     BS EN 61008 63 A 30 mA type A
    way 1 ring "Sockets" {
      device       BS EN 60898 B32 6 kA
      behind       left
      serves       sockets
    }
    way 2 radial "Lights" {
      device       BS EN 61009 B6 6 kA 30 mA type A
      serves       lighting
    }
    way 3 radial "Alarms" {
      device       BS EN 60898 B6 6 kA
      serves       alarms
    }
  }
}`,
    },
  ],
  check({ context, studies }, report) {
    const final = studies.filter(({ isFinal }) => isFinal);
    if (final.length < 3 || !homes.includes(premisesOf(context) ?? "")) return;
    const serves = (use: Use): boolean => final.some(({ uses }) => uses.has(use));
    if (!serves("lighting") || !serves("sockets")) return;
    const limit = rcdLimit("additional");
    const shared = rcdsAt(studies).find(
      ({ rcd, ways }) => meets(rcd, limit) && !isOwnRcd(rcd) && final.every((study) => ways.includes(study)),
    );
    if (!shared) return;
    const later = laterRule(context);
    report(factSpot(shared.rcd.fact), {
      message: `The ${rcdName(shared.rcd)} RCD protects all ${final.length} circuits of this home: divide them, so that one fault does not take lights, sockets and alarms together.${later.words}`,
      source: quotedIn("314.1 and 531.3.2"),
      ...(later.severity ? { severity: later.severity } : {}),
    });
  },
});
