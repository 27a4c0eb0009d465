import { milliohms, squareMillimetres } from "../../calc/result.ts";
import type { Cable, WayStudy } from "../../circuit/way.ts";
import type { Fix } from "../../model/problems.ts";
import type { Span } from "../../model/values.ts";
import { sheathedPair } from "../common/cable-size.ts";
import { inPlaceOf, slipOf } from "../common/writing.ts";
import { factSpot, type Report, type Spot, valueSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "design/cable-does-not-exist",
  severity: "error",
  since: "0.1",
  title: "The conductors of a cable do not go together.",
  why: "A size under the wrong label shifts every expected reading. Check the cable again, and the labels.",
  clauses: ["524.2.1"],
  examples: [
    {
      bad: `way 1 radial "Heater" {
  device       BS EN 60898 B16 6 kA
  cable        singles  line 4 mm²  neutral 2.5 mm²  cpc 2.5 mm²
                                            ^^^^^^^
}`,
      good: `way 1 radial "Heater" {
  device       BS EN 60898 B16 6 kA
  cable        singles  line 4 mm²  neutral 4 mm²  cpc 2.5 mm²
}`,
    },
    {
      bad: `way 1 radial "Heater" {
  device       BS EN 60898 B16 6 kA
  cable        flat-twin  line 1.5 mm²  cpc 2.5 mm²
                                            ^^^^^^^
}`,
      good: `way 1 radial "Heater" {
  device       BS EN 60898 B16 6 kA
  cable        flat-twin  line 2.5 mm²  cpc 1.5 mm²
}`,
    },
    {
      bad: `way 1 radial "Heater" {
  device       BS EN 60898 B16 6 kA
  cable        flat-twin  line 2.5 mm²  cpc-by armour
                                               ^^^^^^
}`,
      good: `way 1 radial "Heater" {
  device       BS EN 60898 B16 6 kA
  cable        armoured 90 °C  line 2.5 mm²  cpc-by armour
}`,
    },
    {
      bad: `way 1 radial "Kiln" {
  device       BS 88-2 100 A 80 kA
  cable        armoured 90 °C  line 16 mm²  cpc 16 mm²  parallel 0
                                                                 ^
}`,
      good: `way 1 radial "Kiln" {
  device       BS 88-2 100 A 80 kA
  cable        armoured 90 °C  line 16 mm²  cpc 16 mm²  parallel 2
}`,
    },
  ],
  check(study, report) {
    const { cable } = study;
    if (!cable) return;
    for (const { at, report: found } of oddities(study, cable)) report(spotOf(cable, at), found);
  },
});

interface Oddity {
  readonly at: Span | undefined;
  readonly report: Report;
}

function oddities(study: WayStudy, cable: Cable): Oddity[] {
  const { neutral, cpc, cpcBy, fire } = cable.described.args;
  const found: Oddity[] = [];
  if (cable.neutral < cable.line && !study.threePhase) {
    found.push({
      at: neutral,
      report: {
        message: `A ${squareMillimetres(cable.neutral)} neutral is too small for a ${squareMillimetres(cable.line)} line: in a single-phase circuit it carries the same current.`,
        fixes:
          neutral && cable.described === cable.fact
            ? [slipOf(inPlaceOf(neutral, `${cable.line} mm²`, "Make the neutral as large as the line"))]
            : [],
      },
    });
  }
  if (cable.cpc !== undefined && cable.cpc > cable.line && cable.construction === "flat-twin") {
    found.push({
      at: cpc,
      report: {
        message: `No flat cable has a cpc (${squareMillimetres(cable.cpc)}) larger than its lines (${squareMillimetres(cable.line)}): are the two swapped?`,
        fixes: swapped(cable),
      },
    });
  }
  found.push(...thinnerThanSold(cable, cpc), ...miscounted(cable), ...colderHot(cable));
  if (cable.fireResisting && (cable.construction === "flat-twin" || cable.construction === "flex")) {
    found.push({
      at: fire,
      report: {
        message: `No ${cable.construction} cable is fire-resisting: such cable is multicore, armoured, singles or mineral.`,
      },
    });
  }
  const wrongMeans =
    (cable.cpcBy === "armour" && cable.construction !== "armoured") ||
    (cable.cpcBy === "sheath" && cable.construction !== "mineral") ||
    (cable.cpcBy === "casing" && cable.construction !== "busbar-trunking");
  if (wrongMeans) {
    const name = { armour: "armour", sheath: "copper sheath", casing: "casing" }[cable.cpcBy];
    found.push({
      at: cpcBy,
      report: { message: `A ${cable.construction} cable has no ${name} to serve as its protective conductor.` },
    });
  }
  return found;
}

/** Flat cable of former years had less than today's, 1 mm² in 2.5 mm², but never half of it. */
function thinnerThanSold({ construction, line, cpc }: Cable, at: Span | undefined): Oddity[] {
  const pair = construction === "flat-twin" ? sheathedPair(line) : undefined;
  if (pair === undefined || cpc === undefined || cpc > pair / 2) return [];
  const message = `Flat cable with lines of ${squareMillimetres(line)} has a cpc of ${squareMillimetres(pair)}, and never had one as small as ${squareMillimetres(cpc)}: read its marking again.`;
  return [{ at, report: { message, severity: "warning" } }];
}

/** As many circuits as Table 4C1 has a column for. */
const most = 20;

/** Counts of conductors in parallel that no cable has. */
function miscounted({ described }: Cable): Oddity[] {
  const { parallel, cpcs, arranged } = described.args;
  const at = (span: Span, message: string): Oddity => ({ at: span, report: { message } });
  if (parallel?.value === 0)
    return [at(parallel, "No conductors in parallel is no cable: write how many there are, or leave parallel out.")];
  if (parallel && parallel.value > most)
    return [at(parallel, `${parallel.value} in parallel are more than any group of cables Table 4C1 knows: a slip?`)];
  if (cpcs?.value === 0) return [at(cpcs, "Without a protective conductor write cpc-by none instead of cpcs 0.")];
  const only = cpcs ?? arranged;
  if (only && !parallel)
    return [at(only, "This is said of conductors in parallel: write how many there are, such as parallel 2.")];
  if (cpcs && parallel && cpcs.value > parallel.value)
    return [
      at(
        cpcs,
        `${cpcs.value} protective conductors are more than the ${parallel.value} in parallel: count them again.`,
      ),
    ];
  return [];
}

/** Figures of a sheet by which a conductor would have less resistance hot than cold. */
function colderHot({ described }: Cable): Oddity[] {
  const { r1, r2, r1Hot, r2Hot } = described.args;
  const pairs = [
    ["r1", r1, r1Hot],
    ["r2", r2, r2Hot],
  ] as const;
  return pairs.flatMap(([word, cold, hot]): Oddity[] =>
    cold && hot && hot.value < cold.value
      ? [
          {
            at: hot,
            report: {
              message: `Hot a conductor has more resistance than cold: ${word}-hot ${milliohms(hot.value)}/m is below ${word} ${milliohms(cold.value)}/m. Are the two swapped?`,
            },
          },
        ]
      : [],
  );
}

function swapped(cable: Cable): Fix[] {
  const { line, cpc } = cable.fact.args;
  if (!line || !cpc || cable.described !== cable.fact || sheathedPair(cpc.value) !== line.value) return [];
  const edits = [
    { start: line.start, end: line.end, text: `${cpc.value} mm²` },
    { start: cpc.start, end: cpc.end, text: `${line.value} mm²` },
  ];
  return [{ title: `Swap them: line ${cpc.value} mm², cpc ${line.value} mm²`, edits, safe: false, slip: true }];
}

/** The value, or the line that names the cable type where the value stands elsewhere. */
const spotOf = (cable: Cable, at: Span | undefined): Spot =>
  at && cable.described === cable.fact ? valueSpot(cable.fact, at) : factSpot(cable.fact);
