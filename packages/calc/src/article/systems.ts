/**
 * How a post is handed to a system: `html` as one block of HTML, `markdown` with elements as tags, `shortcodes` as Markdown whose
 * elements are shortcodes, `text` with every figure as it reads today.
 */
export type Marking = "html" | "markdown" | "shortcodes" | "text";

/** A system that blogs and wikis are kept in. */
export interface System {
  readonly name: string;
  readonly writing: Marking;
  /** The folder of `integrations` that is installed there. */
  readonly integration?: string;
  /** What is handed out where that cannot be installed, if another form. */
  readonly without?: Marking;
  /** Where what is copied goes, in the system's own words. */
  readonly place: string;
}

/** The systems that are tried, as the notebook, the command of figures and the guide know them. */
export const systems = {
  wordpress: {
    name: "WordPress",
    writing: "html",
    integration: "wordpress",
    without: "text",
    place: "Paste it into a Meshwright block, or one of Custom HTML.",
  },
  ghost: {
    name: "Ghost",
    writing: "html",
    place: "Type /html in the editor, press Enter, and paste it into the card.",
  },
  hugo: {
    name: "Hugo",
    writing: "shortcodes",
    integration: "hugo",
    without: "text",
    place: "Put it below the front matter of a file in content.",
  },
  jekyll: {
    name: "Jekyll",
    writing: "markdown",
    integration: "jekyll",
    place: "Put it below the front matter of a file in _posts.",
  },
  eleventy: {
    name: "Eleventy",
    writing: "markdown",
    integration: "eleventy",
    place: "Put it below the front matter of a Markdown file.",
  },
  astro: {
    name: "Astro",
    writing: "markdown",
    integration: "astro",
    place: "Put it below the front matter of a Markdown file in src/pages or src/content.",
  },
  mkdocs: {
    name: "MkDocs",
    writing: "markdown",
    integration: "mkdocs",
    place: "Put it into a Markdown file in docs.",
  },
  pelican: {
    name: "Pelican",
    writing: "markdown",
    place: "Put it below the lines of metadata of a Markdown file in content.",
  },
  dokuwiki: {
    name: "DokuWiki",
    writing: "text",
    place: "Put it into the page’s text. A wiki takes no tags: the figures read as they are today.",
  },
  mediawiki: {
    name: "MediaWiki",
    writing: "text",
    place: "Put it into the page’s text. A wiki takes no tags: the figures read as they are today.",
  },
} as const satisfies Readonly<Record<string, System>>;

/** A system by its key. */
export type SystemName = keyof typeof systems;
