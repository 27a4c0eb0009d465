/** Mutants that no test can kill, each with the reason: what they change makes no difference to anybody. */
interface Kept {
  readonly file: string;
  /** The line as it stands, without its indentation. */
  readonly line: string;
  readonly by: string;
  readonly reason: string;
}

const kept: readonly Kept[] = [
  {
    file: "server/calc/packing.ts",
    line: "const rounded = (value: number): number => Math.round(value * 1e6) / 1e6;",
    by: "1000001",
    reason:
      "Two places that differ by less than a thousandth of a micrometre are one, however finely they are rounded.",
  },
  {
    file: "server/calc/margin.ts",
    line: "const shown = times < 10 ? Math.floor(times * 10 + 1e-6) / 10 : Math.floor(times + 1e-6);",
    by: "0.0000011",
    reason: "It takes back what a division is out by, and any figure far below a tenth does.",
  },
  {
    file: "server/boards/fault-levels.ts",
    line: "!neutral || !lines ? (neutral ?? lines) : lines.value < neutral.value ? lines : neutral;",
    by: "<=",
    reason: "Two that are equal are each the smaller.",
  },
  {
    file: "server/circuit/way.ts",
    line: "device: 2,",
    by: "3",
    reason:
      "Who asks for one of them then counts as asking for both: more is worked out anew, and nothing else comes out.",
  },
  {
    file: "server/rules/insulation/low-on-new.ts",
    line: "return latest !== undefined && first !== undefined && daysBetween(first, latest) > 365;",
    by: "||",
    reason: "Where there is a latest day there is a first, and where there is none there is neither.",
  },
  {
    file: "server/circuit/protective.ts",
    line: "certain: true,",
    by: "false",
    reason: "Of an RCD nobody asks whether its time is certain: it is the longest that its standard allows.",
  },
  {
    file: "server/rules/frame/check-way.ts",
    line: 'if (from > 0) yield "rules";',
    by: ">=",
    reason: "A pause before the first of them changes no finding.",
  },
  {
    file: "server/calc/network-survey.ts",
    line: ".filter(({ ohms }) => ohms > 0 && Number.isFinite(ohms))",
    by: ">=",
    reason: "What has no resistance has made its two ends one, and leads from there to itself: it is left out below.",
  },
  {
    file: "server/rules/ring/too-many-spurs.ts",
    line: "const limit = count.onRing * rule.value;",
    by: "/",
    reason: "One spur a point is usual: times one and over one are the same.",
  },
  {
    file: "server/rules/common/writing.ts",
    line: "if (brace < 0 || (header.inner && brace >= header.end)) return blockFor(header, line, title);",
    by: "1",
    reason: "A brace is looked for behind the words of its statement, so it is never the first sign.",
  },
  {
    file: "server/calc/capacity-factors.ts",
    line: 'return { value, unit: "", steps: [step("Cf for a BS 3036 fuse", "", plain(value, 3))], source };',
    by: "4",
    reason: "The one figure it shows, 0.725, has three decimals.",
  },
  {
    file: "server/rules/ring/legs-swapped-between-rings.ts",
    line: "const [conductor] = both[0]?.which ?? [];",
    by: "1",
    reason: "The two rings are open in the same conductors: that is why they are put together.",
  },
  {
    file: "server/calc/network-survey.ts",
    line: "const cut = 1e-9;",
    by: "1.1e-9",
    reason: "It tells a share from the noise of a sum, and any figure far below a reading's last digit does.",
  },
  {
    file: "server/calc/packing.ts",
    line: 'if (enclosure.shape === "round") return Math.hypot(x, y) + radius <= enclosure.radius + slack;',
    by: "<",
    reason:
      "A slack of a ten-millionth of a millimetre lies behind it: what touches does so by more or by less than that.",
  },
  {
    file: "server/calc/packing.ts",
    line: "return Math.abs(x) + radius <= enclosure.width / 2 + slack && Math.abs(y) + radius <= enclosure.depth / 2 + slack;",
    by: "<",
    reason:
      "A slack of a ten-millionth of a millimetre lies behind it: what touches does so by more or by less than that.",
  },
  {
    file: "server/calc/network-tree.ts",
    line: "if (known < 0 || (behind[node] ?? 0) > (behind[known] ?? 0)) heavy[above] = node;",
    by: "<=",
    reason: "The walk begins at node 0, so that it lies behind no other.",
  },
  {
    file: "server/circuit/protective.ts",
    line: "const ownTime = settings && releasesOf(settings).find((release) => release.time <= longest)?.time;",
    by: "<",
    reason: "A release that takes just the time is taken for the time where it is not found, which is the same.",
  },
  {
    file: "server/circuit/parallel.ts",
    line: "const parts = of.map((which) => ({ r: conductorPerMetre(cable, which)?.value ?? 1, times: times[which] }));",
    by: "2",
    reason: "Where the resistance of one of them is not known no loop is calculated, and no place on it asked for.",
  },
  {
    file: "server/readings/ring-r1r2.ts",
    line: 'if (known !== undefined) return known > 0 ? (allRead(study) ? "above" : undefined) : "below";',
    by: ">=",
    reason: "What is within the tolerance of the highest point, and so no difference at all, has been passed before.",
  },
  ...["<", "-"].map((by) => ({
    file: "server/readings/ring-points.ts",
    line: "Math.abs(difference) <= deadTestPractice.meterUncertainty.value + hair;",
    by,
    reason:
      "Readings have hundredths: a billionth of an ohm more or less decides nothing where it is taken off for them.",
  })),
  {
    file: "server/readings/ring-points.ts",
    line: "if (!expected || amount === undefined) continue;",
    by: "&&",
    reason: "Without an expectation there is no excess, and what is missing is no number and beyond nothing.",
  },
  {
    file: "server/readings/ring-points.ts",
    line: "if (!line || !cpc || !LN || !LE) return undefined;",
    by: "&&",
    reason: "Where one of them is missing the difference is no number, which is within nothing.",
  },
  {
    file: "server/readings/ring-points.ts",
    line: "if (beyond > tolerance) over[round] = amount;",
    by: ">=",
    reason: "A hair is added to the tolerance, so that no difference of readings meets it.",
  },
  {
    file: "server/readings/ring-points.ts",
    line: 'if (off.some((round) => (over[round] ?? 0) < 0)) return { kind: "low", rounds: off, excess: over, spur: undefined };',
    by: "<=",
    reason: "What is within its tolerance has been left out, and so is every excess of nothing.",
  },
  {
    file: "server/readings/entries.ts",
    line: "const own = facts.list.filter((fact) => fact.segment === segment && fact.start > header.args.id.end);",
    by: ">=",
    reason: "No line begins where the number of its way ends.",
  },
  {
    file: "server/calc/loop-limit.ts",
    line: 'standing: breakerLoopD5s.rows[0]?.standing ?? "memory",',
    by: "1",
    reason: "All rows of the table are of one standing.",
  },
  ...["2", "+"].map((by) => ({
    file: "server/circuit/kept.ts",
    line: "kept.set(place.board, [fresh, ...all.filter((one) => one.parts !== fresh.parts).slice(0, mostKept - 1)]);",
    by,
    reason: "How many answers are kept of a board: one more or fewer is worked out again, and comes to the same.",
  })),
  {
    file: "server/circuit/kept.ts",
    line: "const mostKept = 6;",
    by: "7",
    reason: "How many answers are kept of a board: one more or fewer is worked out again, and comes to the same.",
  },
  {
    file: "server/calc/network-tree.ts",
    line: "if (known < 0 || (behind[node] ?? 0) > (behind[known] ?? 0)) heavy[above] = node;",
    by: ">=",
    reason: "Of two branches with as much behind them either may go on: what two nodes have in common is the same.",
  },
  {
    file: "server/calc/network-tree.ts",
    line: "const at = (numbers: Int32Array | Float64Array, node: number): number => numbers[node] ?? 0;",
    by: "1",
    reason: "Every node has a number in each of these lists.",
  },
  {
    file: "server/readings/population.ts",
    line: "const [low, high] = [sorted[Math.ceil(middle) - 1] ?? 0, sorted[Math.floor(middle)] ?? 0];",
    by: "1",
    reason: "A list without figures has no middle, and whoever asks has four figures or more.",
  },
  {
    file: "server/calc/network-survey.ts",
    line: "for (let next = place + 1; next < count; next++) {",
    by: "<=",
    reason: "Beyond its end a list of numbers keeps nothing that is written there.",
  },
  ...["||", ">=", "<="].map((by) => ({
    file: "server/readings/instruments.ts",
    line: "used.until > after && used.from < before",
    by,
    reason: "It only spares looking into boards none of whose tests lie there: the days themselves decide below.",
  })),
  {
    file: "server/calc/network-tree.ts",
    line: "if (known < 0 || (behind[node] ?? 0) > (behind[known] ?? 0)) heavy[above] = node;",
    by: "&&",
    reason: "Whichever branch goes on, or none of them: what two nodes have in common is the same.",
  },
  {
    file: "server/calc/packing.ts",
    line: "const slack = 1e-7;",
    by: "1.1e-7",
    reason: "Any slack far below a hundredth of a millimetre tells what touches from what overlaps.",
  },
  {
    file: "server/calc/network-survey.ts",
    line: "branches.flatMap((branch) => ports.map((port) => (port.apart ? 0 : survey.transfer(port, branch)))),",
    by: "1",
    reason: "What is apart reads no end of ohms, of which no share of a branch takes anything away.",
  },
  ...[
    "...[-y, y].flatMap((level) => along(level - one.y).map((dx) => ({ x: one.x + dx, y: level }))),",
    "...[-x, x].flatMap((side) => along(side - one.x).map((dy) => ({ x: side, y: one.y + dy }))),",
  ].map((line) => ({
    file: "server/calc/packing.ts",
    line,
    by: "-",
    reason: "Of each distance both signs are taken: the places are the same ones in another order.",
  })),
  {
    file: "server/calc/margin.ts",
    line: "const up = (share: number): number => inHundredths(share, (of) => Math.ceil(of - 1e-6));",
    by: "0.0000011",
    reason: "It keeps binary noise from making another hundredth, and any figure far below one does.",
  },
  {
    file: "server/circuit/cpc.ts",
    line: "const counted = (cores: number | undefined): cores is (typeof listed)[number] => listed.some((one) => one === cores);",
    by: "!==",
    reason: "The tables have no column for any other number of cores: nothing is found of them either way.",
  },
  {
    file: "server/readings/earthing.ts",
    line: 'return mainBondingPme(supply.one("tails")?.args.size.value ?? 1);',
    by: "2",
    reason: "The first row of the table is for every neutral up to 35 mm².",
  },
  {
    file: "server/circuit/drop.ts",
    line: "const share = placed > current ? current / placed : 1;",
    by: ">=",
    reason: "Where they are the same, the one over the other is 1.",
  },
  {
    file: "server/rules/demand/unbalanced.ts",
    line: "if (!least || !most) return;",
    by: "&&",
    reason: "A board of three lines has a demand on each: there is a least and a most, or neither.",
  },
  {
    file: "server/boards/greatest-length.ts",
    line: "return stated === undefined || used <= 0 ? undefined : { stated, value: Math.max(0, (stated * room) / used) };",
    by: "<",
    reason: "No length is 0 m, and a cable of some length adds to the loop.",
  },
  {
    file: "server/calc/network-survey.ts",
    line: "const none = new Float64Array(0);",
    by: "1",
    reason: "A loop that nothing flows in adds nothing, whether it is there or not.",
  },
  {
    file: "server/circuit/protective.ts",
    line: "const last = atMost && !device.settings ? operatingCurrent(device, time.value) : undefined;",
    by: "||",
    reason:
      "Of a time between the points of a curve no current is kept that operates in just that: the fault's own stands.",
  },
  {
    file: "server/readings/ring-points.ts",
    line: "LN !== undefined && LE !== undefined && isWithinUncertainty(LN - LE);",
    by: "||",
    reason: "Where one of them is undefined, what they differ by is no number, and within nothing.",
  },
  {
    file: "server/circuit/way.ts",
    line: "expectedR1R2: 14,",
    by: "15",
    reason: "Two fields under one number are asked again together, which is more than need be and never less.",
  },
  {
    file: "server/circuit/way.ts",
    line: "boardThree: 18,",
    by: "19",
    reason: "Any number serves that no other field has.",
  },
  {
    file: "server/calc/network-tree.ts",
    line: "const above = parent[node] ?? -1;",
    by: "2",
    reason:
      "Every node has a parent or the sign for none, so that nothing stands in for it; and any number below 0 is that sign.",
  },
  {
    file: "server/rules/common/loop-uncertainty.ts",
    line: "return number && quantity && uncertaintyOnWay(study, number.fact, quantity);",
    by: "||",
    reason: "An exact reading has a quantity, and what is no reading has neither.",
  },
  {
    file: "server/readings/entry-text.ts",
    line: "reading.end <= start && !others.some((other) => other.start >= reading.end && other.end <= start);",
    by: ">",
    reason: "No value begins where another ends: there is a blank between them.",
  },
  {
    file: "server/calc/protective-size.ts",
    line: "const value = fixed ?? (share ?? 1) * line;",
    by: "2",
    reason: "Each row of the table has a share or a fixed size.",
  },
  {
    file: "server/calc/compare.ts",
    line: "const noise = 1e-9;",
    by: "1.1e-9",
    reason: "Binary noise is a millionth of it, and the last digit of a figure a million times as much.",
  },
  {
    file: "server/boards/energy.ts",
    line: "const fault = short && (electrode || short.value < earth.value) ? short : electrode ? undefined : earth;",
    by: "<=",
    reason: "Where both currents are the same they heat the same, and either may be named.",
  },
  {
    file: "server/readings/loop.ts",
    line: "if (X <= 0 && start.parts.X <= 0) return (limit - start.value) / (loop.value - start.value);",
    by: "<",
    reason: "Without reactance the square that is solved below comes to the same.",
  },
  {
    file: "server/calc/network-tree.ts",
    line: "return at(ohms, at(level, one) < at(level, other) ? one : other);",
    by: "<=",
    reason: "On one stretch without branches two nodes of the same level are one.",
  },
];

export const reasonFor = (file: string, line: string, by: string): string | undefined =>
  kept.find((one) => one.file === file && one.line === line && one.by === by)?.reason;
