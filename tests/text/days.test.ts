import { expect, test } from "vitest";
import { isDay } from "../../server/text/days.ts";

test.each([
  ["2026-03-05", true],
  // Leap days by the rule of the Gregorian calendar: 1900 has none, 2000 has one.
  ["2000-02-29", true],
  ["1900-02-29", false],
  ["2026-02-31", false],
  ["2026-13-01", false],
  ["0000-01-01", false],
  ["2026-3-5", false],
  ["2026-03-05T00:00", false],
])("%s is a day: %s", (text, is) => expect(isDay(text)).toBe(is));
