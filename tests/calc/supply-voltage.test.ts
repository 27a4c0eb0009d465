import { expect, it } from "vitest";
import { working } from "../../server/calc/result.ts";
import { supplyVoltage } from "../../server/calc/supply-voltage.ts";

// Electricity Safety, Quality and Continuity Regulations 2002, regulation 27, as distributors publish it: 230 V +10 % and
// −6 %, which is 216.2 V to 253.0 V.
it("a supply of 230 V is kept between 216.2 V and 253.0 V", () => {
  const { least, greatest } = supplyVoltage(230);
  expect(least.value).toBeCloseTo(216.2, 9);
  expect(greatest.value).toBeCloseTo(253, 9);
  expect(working(least.steps)).toBe("U0 − 6 % = 230 V − 6 % = 216.2 V");
  expect(working(greatest.steps)).toBe("U0 + 10 % = 230 V + 10 % = 253 V");
});
