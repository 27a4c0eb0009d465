import { practiceOf } from "../../calc/practice.ts";
import { deviceName } from "../../circuit/describe.ts";
import { amount, amountOf, factSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "design/too-many-drivers",
  severity: "warning",
  since: "0.1",
  title: "More LED drivers are on a device than their maker allows.",
  why: "All of them charge in the same instant, and the device takes that for a fault: it trips when the lights are switched on, not when they burn. Divide them, switch them in turn, or fit a type C device if the loop allows.",

  clauses: ["512.1.1", "533.2.1"],
  examples: [
    {
      bad: `way 1 radial "Workshop lights" {
  device       BS EN 61009 B10 6 kA 30 mA type A
  serves       lighting
  drivers      40 at-most 23
  ^^^^^^^^^^^^^^^^^^^^^^^^^^
}`,
      good: `way 1 radial "Workshop lights" {
  device       BS EN 61009 B10 6 kA 30 mA type A
  serves       lighting
  drivers      20 at-most 23
}`,
    },
  ],
  check({ facts, device, isFinal }, report) {
    const drivers = facts.one("drivers");
    if (!drivers || !isFinal || !device) return;
    const { count, most } = drivers.args;
    const limit = practiceOf("drivers");
    if (count.value <= (most?.value ?? limit.value)) return;
    report(factSpot(drivers), {
      message: most
        ? `${count.value} drivers are on this circuit, and their maker allows ${most.value}: divide them.`
        : `${count.value} drivers charge at the same instant: look up how many their maker allows on a ${deviceName(device)} device, and write at-most.`,
      value: amount(count.value, ""),
      limit: most ? amount(most.value, "") : amountOf(limit),
      source: most ? { ref: "The maker's figure, as stated", standing: "quoted" } : limit.source,
      ...(most ? {} : { severity: "information" as const }),
      related: [{ spot: factSpot(device.fact), message: `Protective device: ${deviceName(device)}.` }],
    });
  },
});
