import type { Board, Way } from "../../model/file.ts";
import type { FieldFact, Installation } from "../../model/installation.ts";
import { nearest } from "../../model/suggestions.ts";
import { asBlock, asLiteral, type Fact, type FactOf, type Facts, type Val } from "../../model/values.ts";
import { listed } from "../../text/words.ts";
import { inPlaceOf } from "../common/writing.ts";
import { installationRule, type Reporter, valueSpot, wordSpot } from "../frame/rule.ts";

type Place = FieldFact["args"]["blocks"][number]["value"];

type DetailFact = FactOf<"board", "detail">;

const detailsIn = (facts: Facts): readonly DetailFact[] => asBlock<"board">(facts).all("detail");

const sample = (board: string) => `wayfile 1
installation "Sample" {
  standard     BS 7671:2018+A2:2022
  field        asset  in board required "The number on the asset label"
  field        phase-label  in way  one-of "brown" "black" "grey"
  board A "Main" {
    fed-from     supply
${board}  }
}`;

/** What may be recorded, by the kind a field says. */
const shapes = { text: /^/, number: /^-?\d+(?:\.\d+)?$/, date: /^\d{4}-\d{2}-\d{2}$/ } as const;

function wrongValue(field: FieldFact, { value }: Val<string>): string | undefined {
  const { kind, values } = field.args;
  const allowed = values?.map((one) => one.value);
  if (allowed && !allowed.includes(value)) return `is one of ${listed(allowed, "or")}`;
  if (kind && !shapes[kind.value].test(value))
    return kind.value === "date" ? "is a day, such as 2026-03-05" : "is a number";
  return undefined;
}

/** The details of one block, compared with what the schedule declares. */
function checkBlock(fields: readonly FieldFact[], place: Place, header: Fact, facts: Facts, report: Reporter): void {
  const details = detailsIn(facts);
  for (const detail of details) checkDetail(fields, place, detail, report);
  for (const field of fields) {
    const { name, required, blocks } = field.args;
    const here = blocks.some(({ value }) => value === place);
    if (!required || !here || facts.isUnread("detail")) continue;
    if (details.some(({ args }) => args.name.value === name.value)) continue;
    report(wordSpot(header), {
      message: `The detail “${name.value}” is not recorded here, and this schedule requires it: write detail ${name.value} "…".`,
      related: [{ spot: valueSpot(field, name), message: "The field is declared as required here." }],
    });
  }
}

function checkDetail(fields: readonly FieldFact[], place: Place, detail: DetailFact, report: Reporter): void {
  const { name, text } = detail.args;
  const field = fields.find(
    ({ args }) => args.name.value === name.value && args.blocks.some(({ value }) => value === place),
  );
  if (!field) {
    const names = fields.map(({ args }) => args.name.value);
    const near = nearest(
      name.value,
      names.filter((one) => one !== name.value),
    );
    const fixes = near ? [inPlaceOf(name, near)] : [];
    const message = `This schedule declares no field “${name.value}” for this place${near ? `: did you mean “${near}”?` : "."}`;
    return report(valueSpot(detail, name), { message, fixes });
  }
  const wrong = wrongValue(field, text);
  if (wrong === undefined) return;
  const related = [{ spot: valueSpot(field, field.args.name), message: "The field is declared here." }];
  report(valueSpot(detail, text), { message: `The detail “${name.value}” ${wrong}; “${text.value}” is not.`, related });
}

function checkTests(fields: readonly FieldFact[], facts: Facts, report: Reporter): void {
  for (const fact of facts.list) {
    if ((fact.word === "dead" || fact.word === "live") && fact.inner)
      checkBlock(fields, "tests", fact, fact.inner, report);
  }
}

/** Of a spare way nothing has to be recorded. */
const withoutNeed = (field: FieldFact): FieldFact => {
  const { required: _, ...args } = field.args;
  return { ...asLiteral(field), args };
};

function checkWay(fields: readonly FieldFact[], { kind, header, facts }: Way, report: Reporter): void {
  const asked = kind === "spare" ? fields.map((field) => withoutNeed(field)) : fields;
  checkBlock(asked, "way", header, facts, report);
  checkTests(fields, facts, report);
}

function checkBoard(fields: readonly FieldFact[], { head, ways }: Board, report: Reporter): void {
  checkBlock(fields, "board", head.header, head.facts, report);
  checkTests(fields, head.facts, report);
  for (const way of ways) checkWay(fields, way, report);
}

function checkOwn({ head, names, files }: Installation, report: Reporter): void {
  const { fields } = names;
  checkBlock(fields, "installation", head.header, head.facts, report);
  const supply = head.facts.one("supply");
  if (supply?.inner) {
    checkBlock(fields, "supply", supply, supply.inner, report);
    checkTests(fields, supply.inner, report);
  }
  const instruments = [...files.flatMap(({ facts }) => facts.all("instrument")), ...head.facts.all("instrument")];
  for (const instrument of instruments)
    if (instrument.inner) checkBlock(fields, "instrument", instrument, instrument.inner, report);
}

export default installationRule({
  id: "record/detail-against-field",
  severity: "warning",
  since: "0.1",
  title: "A detail does not agree with the field that declares it.",
  why: "Fields are the schedule's own agreement on what is recorded where. A misspelt name or a missing number is found by nobody once it is needed.",
  clauses: [],
  examples: [
    {
      bad: sample(
        '    detail       asset "DB-014"\n    way 1 spare {\n      detail       phase-label "red"\n                               ^^^^^\n    }\n',
      ),
      good: sample(
        '    detail       asset "DB-014"\n    way 1 spare {\n      detail       phase-label "grey"\n    }\n',
      ),
    },
    {
      bad: sample("").replace('  board A "Main" {\n', '  board A "Main" {\n  ^^^^^\n'),
      good: sample('    detail       asset "DB-014"\n'),
    },
  ],
  check(installation, report) {
    if (installation.names.fields.length > 0) checkOwn(installation, report);
  },
  checkBoard({ board, context }, report) {
    if (context.names.fields.length > 0) checkBoard(context.names.fields, board, report);
  },
});
