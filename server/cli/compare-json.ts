/** A comparison for programs. Its shape is `compareSchema`; a change of it needs a new `version`. */
import { type Change, gravities, type Side } from "../reports/compare/change.ts";
import { changeKinds } from "../reports/compare/changes.ts";
import { type Comparison, isSame } from "../reports/compare/comparison.ts";
import type { FindingChange } from "../reports/compare/findings.ts";
import type { PlaceChanges } from "../reports/compare/place.ts";
import { differs, type VersionComparison } from "./compare-pairs.ts";
import { count, dialect, exactly, list, number, one, orNull, text, truth } from "./json-shapes.ts";

export const compareJson = (all: readonly VersionComparison[]) => ({
  version: 1,
  comparisons: all.map((one) => ({
    before: one.before,
    after: one.after,
    differs: differs(one),
    installationsCompared: one.compared,
    installations: one.comparisons.map(({ path, was, comparison }) => ({
      path,
      formerPath: was ?? null,
      ...comparisonJson(comparison),
    })),
    came: one.came,
    went: one.went,
  })),
});

const comparisonJson = (comparison: Comparison) => ({
  title: comparison.title,
  same: isSame(comparison),
  compared: comparison.compared,
  judged: !comparison.isPart,
  found: comparison.found,
  places: comparison.places.map(placeJson),
  unread: comparison.unread,
});

const placeJson = ({
  of,
  where,
  title,
  was,
  state,
  spare,
  content,
  lost,
  gravity,
  changes,
  findings,
}: PlaceChanges) => ({
  of,
  where,
  title,
  formerly: was ?? null,
  state,
  spare: spare ?? false,
  content: content ?? null,
  readingsLost: lost,
  gravity,
  changes: changes.map(changeJson),
  findings: findings.map(findingJson),
});

const changeJson = ({ kind, at, name, on, old, now, last, effect, signed, gravity }: Change) => ({
  kind,
  address: at,
  name,
  day: on ?? null,
  before: sideJson(old),
  after: sideJson(now),
  last: last ? { text: last.text, day: last.on } : null,
  signed: signed ? { by: signed.by, day: signed.on } : null,
  effect: effect ?? null,
  gravity,
});

function sideJson(side: Side | undefined) {
  if (!side) return null;
  const { text, judged } = side;
  if (!judged) return { text, limit: null };
  const { bound, limit, left, passes } = judged;
  return { text, limit: { text: limit, sense: bound.sense, value: bound.value, left, passes } };
}

const findingJson = ({ kind, check, old, now, departure }: FindingChange) => ({
  kind,
  check,
  before: old ? { severity: old.severity, message: old.message } : null,
  after: now ? { severity: now.severity, message: now.message } : null,
  departure: departure ?? null,
});

const textOrNull = { type: ["string", "null"] } as const;

const side = orNull(
  exactly({
    text,
    limit: orNull(
      exactly({
        text,
        sense: one("most", "least"),
        value: number,
        left: text,
        passes: truth,
      }),
    ),
  }),
);
const found = exactly({ error: count, warning: count, suppressed: count });
const finding = orNull(exactly({ severity: one("error", "warning", "information"), message: text }));
const schedule = exactly({ path: text, title: text, boards: count, ways: count });

/** The shape of `compare --format json`, as JSON Schema. Limits are in base units: Ω, A, s. */
export const compareSchema = {
  $schema: dialect,
  title: "wayfile compare",
  ...exactly({
    version: { const: 1 },
    comparisons: list(
      exactly({
        before: text,
        after: text,
        differs: truth,
        installationsCompared: count,
        installations: list(
          exactly({
            path: text,
            formerPath: textOrNull,
            title: text,
            same: truth,
            compared: exactly({ readings: count, lines: count }),
            judged: truth,
            found: exactly({ before: found, after: found }),
            places: list(
              exactly({
                of: one("way", "board", "installation"),
                where: text,
                title: text,
                formerly: textOrNull,
                state: one("stays", "came", "went"),
                spare: truth,
                content: textOrNull,
                readingsLost: count,
                gravity: one(...gravities, "none"),
                changes: list(
                  exactly({
                    kind: one(...changeKinds),
                    address: text,
                    name: text,
                    day: textOrNull,
                    before: side,
                    after: side,
                    last: orNull(exactly({ text, day: text })),
                    signed: orNull(exactly({ by: text, day: text })),
                    effect: { enum: ["now fails", "now passes", null] },
                    gravity: one(...gravities),
                  }),
                ),
                findings: list(
                  exactly({
                    kind: one("comes", "goes", "graver", "milder", "suppressed", "unsuppressed"),
                    check: text,
                    before: finding,
                    after: finding,
                    departure: orNull(exactly({ rule: text, reason: text })),
                  }),
                ),
              }),
            ),
            unread: exactly({ before: list(text), after: list(text) }),
          }),
        ),
        came: list(schedule),
        went: list(schedule),
      }),
    ),
  }),
} as const;
