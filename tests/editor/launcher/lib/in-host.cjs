// The first thing that runs inside the extension host, in front of the real test
// entry. It does two things for bin/code, which waits outside:
//
// - It copies what the tests print into a file. Otherwise that arrives mixed
//   with the log of the window.
// - It leaves a mark beside that file once the tests have passed. The exit code
//   alone does not tell: the workbench reports 0 also when the host was killed.
const { appendFileSync, writeFileSync } = require("node:fs");
const { format } = require("node:util");

const { WAYFILE_TESTS_ENTRY: entry, WAYFILE_TESTS_OUTPUT: output } = process.env;

exports.run = async () => {
  copyOutput();
  await require(entry).run();
  writeFileSync(`${output}.passed`, "");
};

function copyOutput() {
  for (const name of ["log", "info", "debug", "warn", "error"]) {
    // The host has accessors here that ignore an assignment.
    const original = console[name];
    const value = (...args) => {
      appendFileSync(output, `${format(...args)}\n`);
      original.apply(console, args);
    };
    Object.defineProperty(console, name, { value, configurable: true, writable: true });
  }
  process.stdout.write = (chunk, ...rest) => {
    appendFileSync(output, chunk);
    const done = rest.find((argument) => typeof argument === "function");
    if (done) queueMicrotask(done);
    return true;
  };
}
