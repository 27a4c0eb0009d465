/**
 * The language server with faults of its own, wherever a text asks for one: its check falls over, one of its rules does,
 * something fails that nobody waits for, or the whole process ends.
 */
import "./stumbling-rule.ts";
import "../../server/main.node.ts";
import { Project } from "../../server/workspace/project.ts";

const { check } = Project.prototype;

Project.prototype.check = function* (this: Project): ReturnType<typeof check> {
  const says = (words: string): boolean => this.root.document.segments.some(({ text }) => text.includes(words));
  if (says("fall over")) throw new Error("on purpose");
  if (says("fall dead")) process.exit(70);
  if (says("fall astray")) void Promise.reject(new Error("on purpose"));
  return yield* check.call(this);
};
