import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { FrameWatch } from "../../server/lsp/frames.ts";

const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);
const frame = (body: string, header = ""): string => `${header}Content-Length: ${bytes(body).length}\r\n\r\n${body}`;

/** What is said of a stream that comes in pieces of these sizes. */
function said(text: string, sizes: readonly number[]): string | undefined {
  const watch = new FrameWatch();
  const all = bytes(text);
  let at = 0;
  for (let piece = 0; at < all.length; piece++) {
    const reason = watch.take(all.subarray(at, at + (sizes[piece % sizes.length] ?? 1)));
    if (reason !== undefined) return reason;
    at += sizes[piece % sizes.length] ?? 1;
  }
  return undefined;
}

const sizes = fc.array(fc.integer({ min: 1, max: 70 }), { minLength: 1, maxLength: 9 });
const bodies = fc.array(fc.string({ unit: "grapheme", maxLength: 60 }), { maxLength: 6 });

describe("frames", () => {
  it("that are sound are let through, whatever they hold and in whatever pieces they come", () => {
    fc.assert(
      fc.property(bodies, sizes, (all, pieces) => {
        const text = all.map((body, at) => frame(body, at % 2 ? "Content-Type: application/json\r\n" : "")).join("");
        expect(said(text, pieces)).toBeUndefined();
      }),
    );
  });

  it.each([
    ["-5", /^Its length of -5 bytes is no length$/],
    ["1e3", /is no length/],
    ["134217729", /is more than any message has/],
    ["1000000000000000000000", /is more than any message has/],
  ])("of length %s are refused behind sound ones, in whatever pieces they come", (length, words) => {
    fc.assert(
      fc.property(bodies, sizes, (all, pieces) => {
        const text = `${all.map((body) => frame(body)).join("")}content-length:  ${length}\r\n\r\n{}`;
        expect(said(text, pieces)).toMatch(words);
      }),
    );
  });

  it("of the greatest length, or with a word for one, are left to the reader", () => {
    expect(said("Content-Length: 134217728\r\n\r\n{}", [9])).toBeUndefined();
    expect(said("Content-Length: many\r\n\r\n{}", [9])).toBeUndefined();
  });

  it("without an end of their header are refused", () => {
    expect(said("x".repeat(4096), [100])).toBeUndefined();
    expect(said("x".repeat(4300), [100])).toMatch(/header has no end/);
  });
});
