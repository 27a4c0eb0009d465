/** Writes the recorded figures anew: `node tests/boards/recorded/write.ts`. Read the difference: each figure is to be right by its table. */
import { writeFileSync } from "node:fs";
import { pathOf, records } from "./record.ts";

for (const { name, text } of records) writeFileSync(pathOf(name), `${text()}\n`);
