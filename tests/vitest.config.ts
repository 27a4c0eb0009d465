import { defineConfig } from "vitest/config";

export default defineConfig({
  test: {
    root: `${import.meta.dirname}/..`,
    include: ["tests/**/*.test.ts"],
    globalSetup: ["tests/helpers/temporary.ts"],
    setupFiles: ["tests/helpers/seed.ts"],
    // It ends a test that hangs, and says nothing of one that a busy machine makes slow.
    testTimeout: 300_000,
    hookTimeout: 300_000,
    // Many tests wait for a process of their own, so a second one at work costs little even on two cores.
    maxWorkers: 2,
    // The core keeps nothing that one file of tests could spoil for the next, so modules are read once and not 200 times.
    isolate: false,
    // A test in which nothing is compared proves nothing: a loop over an empty list passes, too. What is polled for comes
    // late on a busy machine, and then it passes.
    expect: { requireAssertions: true, poll: { timeout: 120_000 } },
  },
});
