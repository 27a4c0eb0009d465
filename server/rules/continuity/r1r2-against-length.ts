import { type Calculated, metres, ohms } from "../../calc/result.ts";
import { hasMetalBeside } from "../../circuit/cpc.ts";
import type { Test } from "../../circuit/supply.ts";
import type { WayStudy } from "../../circuit/way.ts";
import { type Quantity, quantityOf } from "../../model/values.ts";
import {
  expectedConductorAt,
  expectedR1R2At,
  type LengthMismatch,
  latestDead,
  lengthMismatch,
  otherMetal,
  unslipped,
} from "../../readings/dead.ts";
import { areInterchanged, loopBearsOut } from "../../readings/loop.ts";
import { studyRing } from "../../readings/ring.ts";
import { uncertaintyOnWay } from "../../readings/uncertainty.ts";
import { deadTestPractice } from "../../tables/dead-test-practice.ts";
import { lengthRelated, relatedFact, shown, timesWords } from "../common/dead-words.ts";
import { offLength } from "../common/off-length.ts";
import { beyondTolerance } from "../common/uncertainty-words.ts";
import { misread } from "../common/writing.ts";
import { valueSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "continuity/r1r2-against-length",
  severity: "warning",
  compares: true,
  since: "0.1",
  title: "R1+R2 does not fit the length and the sizes of the cable.",
  why: "Length and sizes give what the conductors should read at the far point. Far more means a poor joint, a smaller cable or a misplaced decimal point; far less means bonded metal in parallel, or a reading taken short of the far point.",
  opens: true,
  clauses: ["643.2.1"],
  examples: [
    {
      bad: `way 1 radial "Water heater" {
  cable        flat-twin  line 2.5 mm²  cpc 1.5 mm²
  length       20 m
  dead 2026-03-04 {
    R1+R2        3.90 Ω
                 ^^^^^^
  }
}`,
      good: `way 1 radial "Water heater" {
  cable        flat-twin  line 2.5 mm²  cpc 1.5 mm²
  length       20 m
  dead 2026-03-04 {
    R1+R2        0.39 Ω
  }
}`,
    },
    {
      bad: `way 1 radial "Lights" {
  cable        flat-twin  line 1.5 mm²  cpc 1.0 mm²
  length       30 m
  serves       lighting
  dead 2026-03-04 {
    R1+R2        0.31 Ω
                 ^^^^^^
  }
}`,
      good: `way 1 radial "Lights" {
  cable        flat-twin  line 1.5 mm²  cpc 1.0 mm²
  length       30 m
  serves       lighting
  dead 2026-03-04 {
    temperature  8 °C
    R1+R2        0.86 Ω
  }
}`,
    },
    {
      bad: `way 1 feeder "Annexe" {
  cable        armoured  line 10 mm²  cpc-by armour  cores 3
  length       60 m
  dead 2026-03-04 {
    R1+R2        0.04 Ω
                 ^^^^^^
  }
}`,
      good: `way 1 feeder "Annexe" {
  cable        armoured  line 10 mm²  cpc-by armour  cores 3
  length       60 m
  dead 2026-03-04 {
    R1+R2        0.31 Ω
  }
}`,
    },
  ],
  check(study, report) {
    const latest = latestDead(study, "R1+R2");
    const quantity = quantityOf(latest?.fact.args.value);
    if (study.isSpare || !latest || !quantity || quantity.sign === ">" || quantity.value <= 0) return;
    const { fact, test } = latest;
    if (readsLikeNoRing(study) || areInterchanged(study)) return;
    const standard = standardFor(study, test, quantity);
    const mismatch = standard && lengthMismatch(quantity, standard.expected.value);
    if (!standard || !mismatch || !study.length) return;
    const { expected, line, byWhole, beside } = standard;
    if (mismatch.kind === "high" && (!byWhole || hasSpurs(study))) return;
    const length = metres(study.length.value);
    const given = byWhole ? `${length} of this cable gives` : `the line alone over ${length} gives`;
    const isBelowLine = line && quantity.value < line.value * deadTestPractice.lowShare.value;
    const below =
      isBelowLine && byWhole && mismatch.kind === "low" && mismatch.slip === undefined
        ? " (Less than its line alone.)"
        : "";
    const borneOut = mismatch.slip !== undefined && loopBearsOut(study, expected.value);
    const meant = mismatch.slip === undefined || borneOut || beside ? undefined : unslipped(quantity, mismatch.slip);
    const meter = uncertaintyOnWay(study, fact, quantity);
    report(valueSpot(fact, quantity), {
      message: `R1+R2 reads ${shown(quantity)}; ${given} ${ohms(expected.value)}. ${reason(study, quantity, mismatch, { beside, borneOut })}${below}${beyondTolerance(meter, mismatch.by)}`,
      ...offLength(study, quantity, expected, mismatch.kind, meter),
      related: [...lengthRelated(study), relatedFact(test.header, "The test with this reading.")],
      fixes: meant === undefined ? [] : [misread(fact, quantity, meant, "Decimal point misread")],
    });
  },
});

/** The ends of a ring tell more about it than its length does, and an open ring does not read as a ring. */
function readsLikeNoRing(study: WayStudy): boolean {
  if (!study.isRing) return false;
  const { quarter, values } = studyRing(study);
  return quarter["L-E"] !== undefined || Object.values(values).some(({ open }) => open);
}

interface Standard {
  readonly expected: Calculated;
  /** What the line by itself should read. */
  readonly line: Calculated | undefined;
  /** Whether that is line and protective conductor, and not the line alone. */
  readonly byWhole: boolean;
  /** Whether metal in parallel may take from the reading. */
  readonly beside: boolean;
}

/** Metal in parallel takes from the protective conductor alone: less than the line by itself nothing can read. */
function standardFor(study: WayStudy, test: Test<"dead">, quantity: Quantity): Standard | undefined {
  const whole = expectedR1R2At(study, test);
  const line = study.isRing ? undefined : expectedConductorAt(study, "line", test);
  const beside = hasMetalBeside(study) && (!whole || lengthMismatch(quantity, whole.value)?.kind === "low");
  const expected = beside ? line : (whole ?? line);
  return expected && { expected, line, byWhole: expected === whole, beside };
}

function reason(
  study: WayStudy,
  quantity: Quantity,
  mismatch: LengthMismatch,
  { beside, borneOut }: { readonly beside: boolean; readonly borneOut: boolean },
): string {
  if (beside) return "No metal in parallel lowers the line: read it again, or correct the length.";
  if (borneOut) return "Zs agrees with the reading: check the length and the sizes recorded here.";
  return suspicion(study, mismatch, quantity.unit);
}

/** A spur of a ring whose length nobody wrote can read anything above the quarter value. */
const hasSpurs = (study: WayStudy): boolean =>
  study.isRing &&
  ((study.facts.one("spurs")?.args.count.value ?? 0) > 0 ||
    [...(study.runs?.places.values() ?? [])].some(({ spur }) => spur));

function suspicion(study: WayStudy, { kind, ratio, slip }: LengthMismatch, unit: string): string {
  if (slip !== undefined && unit !== "mΩ") {
    return `About ${timesWords(slip)}: check the decimal point${slip > 1 ? ", or for a poor joint" : ""}.`;
  }
  const metal = otherMetal(study);
  if (metal && Math.abs(ratio / metal.ratio - 1) <= deadTestPractice.slipShare.value)
    return `It fits ${metal.name} of that size: check the material, then the joints.`;
  if (kind === "high") return "Look for a poor joint, a smaller cable or a longer run, and null the leads.";
  return study.uses.has("lighting")
    ? "Read it at the farthest luminaire and switch."
    : "Look for a parallel path, and check the length and where it was read.";
}
