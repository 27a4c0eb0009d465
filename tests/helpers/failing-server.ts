/** The language server with a check that falls over wherever a text says so. */
import { Project } from "../../server/workspace/project.ts";

const { check } = Project.prototype;

Project.prototype.check = function* (this: Project): ReturnType<typeof check> {
  if (this.root.document.segments.some(({ text }) => text.includes("fall over"))) throw new Error("on purpose");
  return yield* check.call(this);
};

await import("../../server/main.node.ts");
