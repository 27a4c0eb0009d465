import { metres, ohms } from "../../calc/result.ts";
import type { WayStudy } from "../../circuit/way.ts";
import type { Quantity } from "../../model/values.ts";
import {
  expectedConductorAt,
  type LengthMismatch,
  lengthMismatch,
  otherMetal,
  unslipped,
} from "../../readings/dead.ts";
import { type RingStudy, studyRing } from "../../readings/ring.ts";
import { ringPattern } from "../../readings/ring-pattern.ts";
import { deadTestPractice } from "../../tables/dead-test-practice.ts";
import { shown } from "../common/dead-words.ts";
import { offLength } from "../common/off-length.ts";
import { misread } from "../common/writing.ts";
import { valueSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "ring/ends-against-length",
  severity: "warning",
  compares: true,
  since: "0.1",
  title: "The ends of a ring do not fit its length.",
  why: "Length and size give what each conductor should read from leg to leg. Far less means a ring that is bridged part-way round, so that a break inside it would stay hidden, or a wrong length; far more means a poor joint, a smaller cable or a misplaced decimal point.",
  opens: true,
  clauses: ["643.2.1"],
  examples: [
    {
      bad: `way 1 ring "Sockets" {
  cable        flat-twin  line 2.5 mm²  cpc 1.5 mm²
  length       60 m
  dead 2026-03-04 {
    ends         r1 0.25 Ω  rn 0.25 Ω  r2 0.41 Ω
                    ^^^^^^
  }
}`,
      good: `way 1 ring "Sockets" {
  cable        flat-twin  line 2.5 mm²  cpc 1.5 mm²
  length       60 m
  dead 2026-03-04 {
    ends         r1 0.44 Ω  rn 0.44 Ω  r2 0.73 Ω
  }
}`,
    },
    {
      bad: `way 1 ring "Sockets" {
  cable        flat-twin  line 2.5 mm²  cpc 1.5 mm²
  run          A 14 m S1 12 m S2 16 m S3 18 m A
  dead 2026-03-04 {
    ends         r1 4.42 Ω  rn 4.43 Ω  r2 7.25 Ω
                    ^^^^^^
  }
}`,
      good: `way 1 ring "Sockets" {
  cable        flat-twin  line 2.5 mm²  cpc 1.5 mm²
  run          A 14 m S1 12 m S2 16 m S3 18 m A
  dead 2026-03-04 {
    temperature  12 °C
    ends         r1 0.42 Ω  rn 0.43 Ω  r2 0.70 Ω
  }
}`,
    },
  ],
  check(study, report) {
    if (!study.isRing) return;
    const { ends, endsTest, values } = studyRing(study);
    if (!ends || !endsTest || !study.length || ringPattern(study)?.kind === "bridged") return;
    const end = sounderEnd(study, values);
    const reading = values[end];
    const expected = expectedConductorAt(study, end === "r1" ? "line" : "neutral", endsTest);
    if (reading?.value === undefined || !expected) return;
    const { quantity } = reading;
    const mismatch = lengthMismatch(quantity, expected.value);
    if (!mismatch) return;
    const { kind, slip } = mismatch;
    report(valueSpot(ends, quantity), {
      message: `${end} reads ${shown(quantity)}; ${metres(study.length.value)} of this cable gives ${ohms(expected.value)}. ${causeOf(study, quantity, mismatch)}`,
      ...offLength(study, quantity, expected, kind),
      fixes: slip === undefined ? [] : [misread(ends, quantity, unslipped(quantity, slip), "Decimal point misread")],
    });
  },
});

/** Where line and neutral disagree the lower one is the sounder, and the other is reported already. */
function sounderEnd({ cable }: WayStudy, { r1, rn }: RingStudy["values"]): "r1" | "rn" {
  const isLineLower = (r1?.value ?? Number.POSITIVE_INFINITY) <= (rn?.value ?? Number.POSITIVE_INFINITY);
  return isLineLower || cable?.neutral !== cable?.line ? "r1" : "rn";
}

function causeOf(study: WayStudy, quantity: Quantity, { kind, slip, ratio }: LengthMismatch): string {
  if (slip !== undefined) return `Check the decimal point: was it ${unslipped(quantity, slip)}?`;
  if (kind === "low") return "Look for a cable that bridges the ring, and check the length.";
  const metal = otherMetal(study);
  const fits = metal && Math.abs(ratio / metal.ratio - 1) <= deadTestPractice.slipShare.value;
  return `Look for a poor joint or a smaller cable, null the leads, and check the length.${fits ? ` It fits ${metal.name}.` : ""}`;
}
