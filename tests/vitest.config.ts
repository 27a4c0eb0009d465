import { defineConfig } from "vitest/config";

export default defineConfig({
  test: {
    root: `${import.meta.dirname}/..`,
    include: ["tests/**/*.test.ts"],
    testTimeout: 60_000,
  },
});
