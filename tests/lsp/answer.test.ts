import { describe, expect, it } from "vitest";
import { CancellationToken, LSPErrorCodes, ResponseError } from "vscode-languageserver";
import { type Asked, answer } from "../../server/lsp/answer.ts";

const asked: Asked = { name: "textDocument/hover", path: "file:///a.ways", version: () => 7 };
const { None } = CancellationToken;

describe("the wrapper round every request", () => {
  it("passes an answer on", async () => {
    expect(
      await answer(
        asked,
        None,
        "neutral",
        () => undefined,
        undefined,
        () => "answer",
      ),
    ).toBe("answer");
  });

  it("survives a feature that falls over, and says where", async () => {
    const log: string[] = [];
    const fall = (): string => {
      throw new Error("on purpose");
    };
    expect(await answer(asked, None, "neutral", (line) => log.push(line), undefined, fall)).toBe("neutral");
    expect(log).toHaveLength(1);
    expect(log[0]).toContain("textDocument/hover failed on file:///a.ways, version 7: Error: on purpose");
  });

  it("says that it was called off, and never answers with nothing", async () => {
    const token = { ...None, isCancellationRequested: true };
    const result = await answer(
      asked,
      token,
      "neutral",
      () => undefined,
      async () => undefined,
      () => "answer",
    );
    expect(result).toBeInstanceOf(ResponseError);
    expect(result).toMatchObject({ code: LSPErrorCodes.RequestCancelled });
  });

  it("says that the text changed while files were read", async () => {
    let version = 7;
    const moving: Asked = { ...asked, version: () => version };
    const prepare = async (): Promise<void> => {
      version = 8;
    };
    const result = await answer(
      moving,
      None,
      "neutral",
      () => undefined,
      prepare,
      () => "answer",
    );
    expect(result).toMatchObject({ code: LSPErrorCodes.ContentModified });
  });
});
