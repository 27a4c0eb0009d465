import { describe, expect, it } from "vitest";
import type { DisconnectionQuestion } from "../../server/calc/disconnection-time.ts";
import { disconnectionTime } from "../../server/calc/disconnection-time.ts";
import { edition, recent } from "./helpers.ts";

const base = { system: "TN-S", U0: 230, final: true, sockets: true, rating: 32, edition: recent } as const;

describe("disconnection times", () => {
  // NICEIC, 18th Edition changes, part 4; Electricians Blog on TT; a reference copy of Table 41.1.
  it.each<[string, Partial<DisconnectionQuestion>, number | undefined]>([
    ["TN sockets 32 A", {}, 0.4],
    ["TN-C-S sockets 63 A", { system: "TN-C-S", rating: 63 }, 0.4],
    ["TN sockets above 63 A", { rating: 80 }, 5],
    ["TN fixed 32 A", { sockets: false }, 0.4],
    ["TN fixed 40 A", { sockets: false, rating: 40 }, 5],
    ["TN distribution", { final: false }, 5],
    ["TT sockets", { system: "TT" }, 0.2],
    ["TT distribution", { system: "TT", final: false }, 1],
    ["TT fixed 40 A", { system: "TT", sockets: false, rating: 40 }, 1],
    ["TN at 110 V", { U0: 110 }, 0.8],
    ["TN at 277 V", { U0: 277 }, 0.2],
    ["TT at 400 V", { system: "TT", U0: 400 }, 0.07],
    ["TN above 400 V", { U0: 690 }, 0.1],
    ["a supply written as 240 V", { U0: 240 }, 0.4],
    ["SELV voltages", { U0: 25 }, undefined],
    ["IT", { system: "IT" }, undefined],
    ["17th Edition sockets 40 A", { rating: 40, edition: edition("BS 7671:2008") }, 5],
    ["16th Edition fixed equipment", { sockets: false, rating: 6, edition: edition("BS 7671:2001") }, 5],
    ["16th Edition sockets of any rating", { rating: 63, edition: edition("BS 7671:2001") }, 0.4],
  ])("%s", (_, change, expected) => {
    expect(disconnectionTime({ ...base, ...change })?.value).toBe(expected);
  });

  it("say which rule was taken, and how well it is known", () => {
    const time = disconnectionTime({ ...base, sockets: false, rating: 40 });
    expect(time?.steps[0]).toMatchObject({
      formula: "final circuit of fixed equipment, 40 A, above 32 A: outside Table 41.1",
    });
    expect(time?.source.standing).toBe("quoted");
    expect(disconnectionTime({ ...base, edition: edition("BS 7671:2001") })?.source.standing).toBe("memory");
  });
});
