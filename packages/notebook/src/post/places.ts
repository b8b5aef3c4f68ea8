import { systems, type System, type SystemName, type Marking } from "@meshwright/calc/article";

/** Where a post goes: its name, how the post is handed over, what is said, and the folder that is installed there. */
export interface Destination {
  readonly name: string;
  readonly writing: Marking;
  readonly say: string;
  readonly integration?: string;
}

const ofSystem = ({ name, writing, place, integration }: System): Destination => ({
  name,
  writing,
  say: place,
  ...(integration && { integration }),
});

/** Systems by their names, from the one table of them, and places of every other kind. */
export const places = {
  ...(Object.fromEntries(Object.entries(systems).map(([key, system]) => [key, ofSystem(system)])) as Record<
    SystemName,
    Destination
  >),
  blocks: {
    name: "a block editor",
    writing: "html",
    say: "Paste this as one block of your own HTML. It has no blank line inside: leave it so.",
  },
  html: { name: "a page of my own", writing: "html", say: "Paste this where the post is to stand." },
  markdown: {
    name: "Markdown",
    writing: "markdown",
    say: "Save this as the post. Every element stands on one line, and must.",
  },
  frame: { name: "a site that allows frames", writing: "html", say: "" },
  forum: {
    name: "a forum, or anywhere that takes only text",
    writing: "text",
    say: "The figures read as they are today, and stay so.",
  },
} as const satisfies Readonly<Record<string, Destination>>;
export type Place = keyof typeof places;
