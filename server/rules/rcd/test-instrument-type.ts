import { factsOf } from "../../readings/instruments.ts";
import { latestRcdTests } from "../../readings/rcd-tests.ts";
import { boardRule, factSpot, wordSpot } from "../frame/rule.ts";

export default boardRule({
  id: "rcd/test-instrument-type",
  severity: "warning",
  since: "0.1",
  title: "The instrument cannot test an RCD of this type.",
  why: "The time was read with a test current that the device may respond to differently. Since 2022 an a.c. test is made for every type; before, a type A or B device was tested as one.",
  clauses: ["643.7.1", "643.8"],
  examples: [
    {
      setting: {
        stage: "tested",
        standard: "BS 7671:2018",
        before: 'instrument M1 "RCD tester" {\ntests AC\n}',
      },
      bad: `way 1 radial "Bench sockets" {
  device       BS EN 61009 B20 6 kA 30 mA type A
  live 2026-03-05 with M1 {
    rcd          30 mA 1x 24.1 ms
    ^^^
  }
}`,
      good: `way 1 radial "Bench sockets" {
  device       BS EN 61009 B20 6 kA 30 mA type AC
  live 2026-03-05 with M1 {
    rcd          30 mA 1x 24.1 ms
  }
}`,
    },
  ],
  check({ context, studies }, report) {
    const { edition, names } = context;
    if (!edition || edition.rcdTest === "single") return;
    const told = new Set<unknown>();
    for (const { fact, device, test, time } of latestRcdTests(context, studies)) {
      const type = device?.type;
      // Whatever tests an RCD at all can test type AC.
      if (!type || type === "AC" || !time || told.has(test)) continue;
      const used = test.with.flatMap((name) => names.instruments.get(name)?.[0] ?? []);
      const able = used.flatMap((instrument) => factsOf(instrument)?.all("tests") ?? []);
      const types = able.flatMap(({ args }) => args.types.map(({ value }) => value));
      // An instrument that does not say what it can test is not questioned.
      const unsaid = able.length < used.length || used.length === 0;
      if (unsaid || types.includes(type)) continue;
      told.add(test);
      report(wordSpot(fact), {
        message: `${test.with.join(" and ")} tests RCDs of type ${types.join(", ")}; this is a type ${type}, which ${edition.id} requires to be tested as such.`,
        related: [
          { spot: factSpot(device.fact), message: `RCD tested: type ${type}.` },
          ...used.map((instrument) => ({
            spot: wordSpot(instrument),
            message: "The types of RCD the instrument can test.",
          })),
        ],
      });
    }
  },
});
