// What the extension host calls. Runs suite.cjs with mocha, prints its report and,
// for .ci/run, writes the counts as JSON to $WAYFILE_TESTS_RESULT.
const { writeFileSync } = require("node:fs");
const { join } = require("node:path");
const mocha = require("mocha");
const Mocha = mocha.default ?? mocha; // an ES module: require() may give its namespace

exports.run = () =>
  new Promise((resolve, reject) => {
    const suite = new Mocha({ ui: "tdd", timeout: 60_000, slow: 1000, color: false });
    suite.addFile(join(__dirname, "suite.cjs"));
    const runner = suite.run((failures) => {
      const { passes = 0 } = runner.stats ?? {};
      const file = process.env.WAYFILE_TESTS_RESULT;
      if (file) writeFileSync(file, JSON.stringify({ passed: passes, failed: failures }));
      if (failures > 0 || passes === 0)
        reject(new Error(`${failures} of ${passes + failures} tests in the editor failed.`));
      else resolve();
    });
  });
