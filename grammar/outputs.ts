import { languageConfiguration } from "./editor.ts";
import { lettersFile } from "./letter-ranges.ts";
import { reference } from "./reference.ts";
import { textmate } from "./textmate.ts";

/** Files derived from the token table and the vocabulary: path from the root, and text. */
export function outputs(): [path: string, text: string][] {
  return [
    ["grammar/generated/wayfile.tmLanguage.json", textmate()],
    ["grammar/generated/language-configuration.json", languageConfiguration()],
    ["grammar/letters.ts", lettersFile()],
    ["grammar/REFERENCE.md", reference()],
  ];
}
