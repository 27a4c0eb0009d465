import { fallsShort } from "../../calc/compare.ts";
import { amps, squareMillimetres } from "../../calc/result.ts";
import { capacityWith, conventionalRow, radialShortfall, sizeFor } from "../../circuit/overload.ts";
import { resizeCable } from "../common/cable-size.ts";
import { inPlaceOf } from "../common/writing.ts";
import { amount, amountOf, factSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "design/socket-radial-cable",
  severity: "error",
  since: "0.1",
  title: "A radial of sockets has the device and the cable of a ring.",
  why: "In a ring each leg of 2.5 mm² carries a part of the 32 A. In a radial it carries all of it and overheats. Fit a 20 A device, use 4 mm², or close the ring and test it as one.",
  clauses: ["433.1.1"],
  examples: [
    {
      bad: `way 1 radial "Sockets" {
  device       BS EN 60898 B32 6 kA
  ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
  cable        flat-twin  line 2.5 mm²  cpc 1.5 mm²
  serves       sockets
}`,
      good: `way 1 radial "Sockets" {
  device       BS EN 60898 B20 6 kA
  cable        flat-twin  line 2.5 mm²  cpc 1.5 mm²
  serves       sockets
}`,
    },
  ],
  check(study, report) {
    const { cable, device } = study;
    const limit = radialShortfall(study);
    if (!limit || !cable || !device?.rating) return;
    const { curve } = device.fact.args;
    const smaller = Number(conventionalRow("A3 radial")?.facts.rating);
    // The convention supposes an ordinary route: on a worse one its size does not carry its device.
    const carries = capacityWith(study, limit.value);
    const size =
      carries && fallsShort(carries.value, device.rating)
        ? sizeFor(study, device.rating, { from: limit.value })
        : limit.value;
    const serves = !study.capacity || !fallsShort(study.capacity.value.value, smaller);
    const remedies = [
      ...(serves ? [`a ${amps(smaller)} device`] : []),
      ...(size === undefined ? [] : [squareMillimetres(size)]),
    ];
    const remedy = remedies.length === 0 ? "change the route" : `fit ${remedies.join(", or ")}`;
    report(factSpot(device.fact), {
      message: `${squareMillimetres(cable.line)} with ${amps(device.rating)} is allowed only for a ring; this is a radial: ${remedy}.`,
      value: amount(cable.line, "mm²"),
      limit: amountOf(limit),
      least: true,
      steps: limit.steps,
      source: limit.source,
      related: [{ spot: factSpot(cable.fact), message: `Cable: ${squareMillimetres(cable.line)}.` }],
      fixes: [
        ...(curve && serves
          ? [inPlaceOf(curve, `${curve.curve}${smaller}`, `Make the device ${curve.curve}${smaller}`)]
          : []),
        ...resizeCable(cable, size),
      ],
    });
  },
});
