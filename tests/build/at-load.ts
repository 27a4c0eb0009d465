/** Libraries without what they prepare, as they load, for programs other than ours. */
import { readFile } from "node:fs/promises";
import type { Plugin } from "esbuild";

/**
 * The parser's library learns a grammar from eighty methods that it lends the parser and takes away again, which leaves an
 * object that every later look-up is slow on. They stand on an object between it and its class instead, and only those
 * that the grammar has: its statements bear no numbers.
 */
export const recordedAside: Plugin = {
  name: "recorded-aside",
  setup({ onLoad }) {
    onLoad(
      { filter: /[\\/]chevrotain[\\/]lib[\\/]src[\\/]parse[\\/]parser[\\/]traits[\\/]gast_recorder\.js$/ },
      async ({ path }) => {
        const [before, lent, taken, after] = partsOf(await readFile(path, "utf8"), [
          "enableRecording() {",
          "disableRecording() {",
          "//   Parser methods are called inside an ACTION?",
        ]);
        const aside = lent
          .replaceAll("this[`", "aside[`")
          .replaceAll(/this\.(?=(?:ACTION|BACKTRACK|LA) = )/g, "aside.")
          .replace("i < 10", "i < 1")
          .replace("{", "{ const aside = Object.create(Object.getPrototypeOf(this));")
          .replace(/\}\s*$/, "Object.setPrototypeOf(this, aside); }\n");
        if (!aside.includes("aside.LA = ") || !aside.includes("i < 1;") || !taken.includes("delete that.LA"))
          throw new Error(`${path} records in another way.`);
        const back =
          "disableRecording() { this.RECORDING_PHASE = false; Object.setPrototypeOf(this, Object.getPrototypeOf(Object.getPrototypeOf(this))); }\n";
        return { contents: `${before}${aside}${back}${after}` };
      },
    );
  },
};

function partsOf(text: string, marks: readonly [string, string, string]): [string, string, string, string] {
  const [first, second, third] = marks.map((mark) => {
    const at = text.indexOf(mark);
    if (at < 0) throw new Error(`There is no ${mark} any more.`);
    return at;
  });
  return [text.slice(0, first), text.slice(first, second), text.slice(second, third), text.slice(third)];
}

/** The reader of settings comes with what lays JSON out, which makes four hundred texts of blanks as it loads. */
export const withoutLayoutOfJson: Plugin = {
  name: "without-layout-of-json",
  setup({ onLoad }) {
    onLoad(
      { filter: /[\\/]jsonc-parser[\\/]lib[\\/]esm[\\/]impl[\\/](?:format|string-intern)\.js$/ },
      async ({ path }) => {
        const contents = await readFile(path, "utf8");
        const names = [...contents.matchAll(/^export (?:function|const) (\w+)/gm)].map(([, name]) => name);
        return { contents: names.map((name) => `export const ${name} = undefined;`).join("\n") };
      },
    );
  },
};
