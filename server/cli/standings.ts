/** How well a figure is known, as a terminal says it. */
export const standings = {
  published: "published",
  computed: "computed",
  practice: "common practice",
  memory: "from memory: check your copy",
} as const;
