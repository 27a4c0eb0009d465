/** A check that falls over in a way whose title asks for it. Imported before whatever takes the checks over from the list. */
import { rules } from "../../server/rules/list.ts";

const rule = rules.find(({ id }) => id === "loop/zs-over-limit");
if (rule?.scope !== "way") throw new Error("There is no such rule.");
const { check: sound } = rule;
Object.assign(rule, {
  check: (...all: Parameters<typeof sound>) => {
    if (all[0].way.title.includes("stumble")) throw new Error("on purpose");
    sound(...all);
  },
});
