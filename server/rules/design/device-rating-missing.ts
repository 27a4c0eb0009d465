import { factSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "design/device-rating-missing",
  severity: "warning",
  since: "0.1",
  title: "The rated current of a device is not stated.",
  why: "Without it neither the cable nor the loop impedance can be judged. It is printed on the front of the device.",
  clauses: ["433.1.1"],
  examples: [
    {
      bad: `way 1 radial "Heater" {
  device       BS 88-3
  ^^^^^^^^^^^^^^^^^^^^
}`,
      good: `way 1 radial "Heater" {
  device       BS 88-3 16 A
}`,
    },
  ],
  check(study, report) {
    const { device } = study;
    if (!device || device.rating !== undefined || study.isSpare) return;
    report(factSpot(device.fact), {
      message:
        "The rated current is not stated, so neither cable nor Zs can be judged: write it as B16, or 16 A for a fuse.",
    });
  },
});
