import { signatoryOf } from "../../circuit/signatories.ts";
import { partWorkOf } from "../../circuit/supply.ts";
import type { WayStudy } from "../../circuit/way.ts";
import { covers, inspectionsOf, isOlder } from "../../model/inspections.ts";
import { inOrder } from "../../text/order.ts";
import { wayRule, wordSpot } from "../frame/rule.ts";

export default wayRule({
  id: "record/changed-since-tests",
  severity: "warning",
  since: "0.1",
  title: "A circuit was changed since its readings were taken.",
  why: "Readings prove the device, the cable and the length they were taken on. Where the circuit was altered since, they are of the old one: test it again, in a new block.",
  clauses: ["641.5", "643.1"],
  examples: [
    {
      bad: `wayfile 1
installation "Kiln house" {
  work         existing
  inspection minor 2026-03-05 {
    covers       board A  way 1
  }
  board A {
    way 1 radial "Oven" {
    ^^^
      work         altered
      dead 2024-02-11 { R1+R2 0.22 Ω }
    }
  }
}`,
      good: `wayfile 1
installation "Kiln house" {
  work         existing
  inspection minor 2026-03-05 {
    covers       board A  way 1
  }
  board A {
    way 1 radial "Oven" {
      work         altered
      dead 2024-02-11 { R1+R2 0.22 Ω }
      dead 2026-03-05 { R1+R2 0.31 Ω }
    }
  }
}`,
    },
    {
      bad: `way 1 radial "Oven" {
^^^
  work         altered
  installed    by "D.O." 2026-03-01
  dead 2024-02-11 { R1+R2 0.22 Ω }
}`,
      good: `way 1 radial "Oven" {
  work         altered
  installed    by "D.O." 2026-03-01
  dead 2026-03-05 { R1+R2 0.31 Ω }
}`,
    },
  ],
  check(study, report) {
    const { way, context, deadTests, liveTests, facts } = study;
    const work = partWorkOf(study);
    if (work !== "altered" && work !== "new") return;
    const latest = [...deadTests, ...liveTests].toSorted((a, b) => inOrder(b.on, a.on))[0];
    if (!latest || latest.on === "") return;
    const changed = signatoryOf("installed", facts, context)?.args.on?.value ?? inspected(study, latest.on);
    if (changed === undefined || latest.on >= changed) return;
    report(wordSpot(way.header), {
      message: `Way ${way.id} is ${work} work of ${changed}, and its latest readings are of ${latest.on}: they prove what was there before. Test it again.`,
      related: [{ spot: wordSpot(latest.header), message: `Its latest tests, of ${latest.on}.` }],
    });
  },
});

/** The first day of the inspection of the work, where the tests are older than what is tested for it. */
function inspected({ way, context }: WayStudy, tested: string): string | undefined {
  const circuit = { board: context.board, way };
  const inspection = inspectionsOf(context.installation).findLast(
    (one) => one.kind !== "periodic" && covers(one, circuit),
  );
  return inspection && isOlder(tested, inspection.from) ? inspection.from : undefined;
}
