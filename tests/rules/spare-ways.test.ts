/** A spare way has no circuit: nothing is missing in it, and no circuit is judged. What is written there is still read. */
import { describe, expect, it } from "vitest";
import { rules } from "../../server/rules/list.ts";
import { findingsOf, inSetting, unmark } from "../helpers/sample.ts";

/** Of these some line contradicts itself or another one, whatever the way is: a slip of the pen, a device that is not made. */
const ofWhatIsWritten = new Set(
  `
  afdd/test-button-missing containment/circuit-divided continuity/highest-not-recorded continuity/too-many-digits
  coordination/device-poles coordination/neutral-harmonics coordination/source-poles demand/line-against-name
  design/cable-does-not-exist design/cable-size-unusual design/conductor-below-minimum design/device-rating-unusual
  design/fused-spur-rating design/load-disagrees design/method-against-route design/neutral-shared
  design/rcbo-without-sensitivity design/setting-above-rating design/singles-outside-containment drift/resistance-fallen
  live/before-dead live/before-installation live/function-failed loop/highest-not-recorded
  loop/max-zs-wrong loop/reading-is-a-limit loop/zs-over-rcd-limit loop/zs-over-written-limit
  network/measure-not-judged protective/outbuilding-bonding protective/separate-below-minimum rcd/charger-dc-detection
  rcd/inverter-direct-current rcd/unidirectional-with-source record/changed-since-tests record/no-kind
  record/polarity-disagrees record/spare-in-use ring/point-twice ring/run-detached
`
    .trim()
    .split(/\s+/),
);

const spared = (text: string): string => text.replace(/^(\s*way \S+) (?:radial|ring|feeder)\b/gm, "$1 spare");

describe("of the bad samples of checks of a circuit, each made spare", () => {
  const cases = rules.flatMap((rule) =>
    rule.scope === "way" && !ofWhatIsWritten.has(rule.id)
      ? rule.examples.map(
          ({ bad, setting }, at) => [rule.id, at + 1, unmark(inSetting(bad, setting).text).text] as const,
        )
      : [],
  );

  it.each(cases)("%s %i", (id, _, text) => {
    const found = (of: string) => findingsOf(of).map(({ check }) => check);
    expect(found(text)).toContain(id);
    expect(found(spared(text))).not.toContain(id);
  });
});
