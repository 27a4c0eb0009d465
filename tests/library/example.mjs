// Checks a schedule, lays it out and compares it with its revision.
import { check, compare, format } from "wayfile";

const text = process.argv[2] ?? "";
const { files, errors } = check([{ path: "site/house.ways", text }], {
  read: (path) =>
    path === "site/shared/meters.ways" ? 'wayfile 1\ninstrument M1 "Tester" {\n  due  2026-11-03\n}\n' : undefined,
});
const changes = compare(text, text.replace("1.52 Ω", "0.52 Ω")).flatMap((one) => one.changes);
console.log(
  JSON.stringify({ paths: files.map(({ path }) => path), errors, changes, laidOut: format(text).text === text }),
);
