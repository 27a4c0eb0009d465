import { describe, expect, it } from "vitest";
import { CancellationToken, LSPErrorCodes, ResponseError } from "vscode-languageserver";
import { type Asked, answer, askAgain, overtaken } from "../../server/lsp/answer.ts";

const asked: Asked<string> = {
  name: "textDocument/hover",
  path: "file:///a.ways",
  version: () => 7,
  failed: () => "neutral",
  overtaken,
};
const { None } = CancellationToken;
const quiet = (): void => {};
const work = (): string => "answer";

describe("the wrapper round every request", () => {
  it("passes an answer on", async () => {
    expect(await answer(asked, None, quiet, undefined, work)).toBe("answer");
  });

  it("survives a feature that falls over, and says where", async () => {
    const log: string[] = [];
    const fall = (): string => {
      throw new Error("on purpose");
    };
    expect(await answer(asked, None, (line) => log.push(line), undefined, fall)).toBe("neutral");
    expect(log).toHaveLength(1);
    expect(log[0]).toContain("textDocument/hover failed on file:///a.ways, version 7: Error: on purpose");
  });

  it("says that it was called off, and never answers with nothing", async () => {
    const token = { ...None, isCancellationRequested: true };
    const result = await answer(asked, token, quiet, async () => "ready", work);
    expect(result).toBeInstanceOf(ResponseError);
    expect(result).toMatchObject({ code: LSPErrorCodes.RequestCancelled });
  });

  it("says that the text changed while files were read, or while it was checked", async () => {
    let version = 7;
    const prepare = async (): Promise<"ready"> => {
      version = 8;
      return "ready";
    };
    const moving = await answer({ ...asked, version: () => version }, None, quiet, prepare, work);
    expect(moving).toMatchObject({ code: LSPErrorCodes.ContentModified });
    const outdated = await answer(asked, None, quiet, async () => "outdated", work);
    expect(outdated).toMatchObject({ code: LSPErrorCodes.ContentModified });
  });

  it("has findings asked for again, where any other word would blank the file", async () => {
    const result = await answer({ ...asked, overtaken: askAgain }, None, quiet, async () => "outdated", work);
    expect(result).toMatchObject({ code: LSPErrorCodes.ServerCancelled, data: { retriggerRequest: true } });
  });
});
